/** Which rule of the de-identification gate a header breaks; the header itself may be shown, its cells may not. */
export type HeaderIdentifier =
  | 'header-name'
  | 'header-birth'
  | 'header-address'
  | 'header-contact'
  | 'header-number'
  | 'header-photo';

interface HeaderRule {
  rule: HeaderIdentifier;
  /** Single words, and groups of words that must stand together, in lower case, without accents. */
  phrases: readonly string[];
  /** The rule gives way where a trade word stands beside it: a lens has a name too. */
  unlessTrade: boolean;
}

/**
 * English, German and French. The kinds follow the Safe Harbor list, 45 CFR 164.514(b)(2): names, places, dates of
 * birth, telephone, fax, e-mail, numbers of insurance, record, account, licence, vehicle and device, addresses in
 * networks, photographs.
 */
const rules: readonly HeaderRule[] = [
  {
    rule: 'header-name',
    unlessTrade: true,
    phrases: list(
      `name, names, surname, forename, firstname, lastname, fullname, initials, maiden, patientname, nachname,
       vorname, familienname, geburtsname, patientenname, initialen, nom, prenom, noms, initiales, next of kin,
       spouse, mother, father, employer, arbeitgeber, employeur`,
    ),
  },
  {
    rule: 'header-birth',
    unlessTrade: false,
    phrases: list(
      `birth, dob, birthdate, birthday, born, dateofbirth, geburtsdatum, geburtstag, geburt, geboren, geb,
       gebdat, gebdatum, naissance, ddn, ne le, nee le, ne e le`,
    ),
  },
  {
    rule: 'header-contact',
    unlessTrade: false,
    phrases: list(
      `phone, telephone, tel, mobile, cellphone, cell phone, fax, email, mail, url, website, web, ip, telefon,
       telefonnummer, handy, mobil, portable, courriel, telecopie`,
    ),
  },
  {
    rule: 'header-address',
    unlessTrade: true,
    phrases: list(
      `address, street, road, city, town, village, county, postcode, post code, postal, zip, zipcode, adresse,
       anschrift, strasse, hausnummer, wohnort, plz, postleitzahl, rue, ville, commune`,
    ),
  },
  {
    rule: 'header-number',
    unlessTrade: false,
    phrases: list(
      `ssn, social security, nhs, mrn, hospital number, hospital no, hospital id, record number, record no,
       record id, medical record, chart number, chart no, national number, national id, insurance, account,
       licence, license, passport, vehicle, plate, certificate number, serial, serialnumber, lot number,
       fingerprint, kvnr, versichertennummer, versicherungsnummer, versicherung, krankenkasse,
       sozialversicherungsnummer, fallnummer, aktennummer, ausweis, konto, kontonummer, fuhrerschein,
       seriennummer, ahv, ahvn, nir, ipp, insee, securite sociale, num secu, assurance, numero de dossier,
       no dossier, compte, permis, numero de serie, bsn, pesel, dni, personnummer`,
    ),
  },
  {
    rule: 'header-photo',
    unlessTrade: true,
    phrases: list('photo, photograph, picture, image, foto, bild, photographie'),
  },
];

/** Words that make a name, a place or a picture one of the trade: the lens's name, the axis on a photo. */
const tradeWords = new Set(
  list(
    `lens, iol, formula, model, device, machine, product, brand, manufacturer, technique, procedure, visit, file,
     column, study, site, test, axis, drug, complication, linse, iols, formel, modell, gerat, geraet, hersteller,
     verfahren, lentille, implant, formule, modele, appareil, fabricant, incision, fichier, datei`,
  ),
);

/**
 * Whether a header says that its column identifies a person. Whole words only: `photopic`, `cells`, `shipping` and
 * `geblockt` say nothing; `FirstName`, `first_name` and `Vor-Name` do.
 *
 * @param header  as written
 * @returns the rule broken; undefined where the header breaks none
 * @source 45 CFR 164.514(b)(2) for the kinds; the words in common practice, no source
 * @example headerIdentifier('Date of birth') // 'header-birth'
 */
export function headerIdentifier(header: string): HeaderIdentifier | undefined {
  const words = wordsOf(header);
  const text = ` ${words.join(' ')} `;
  const joined = ` ${words.join('')} `;
  const ofTrade = words.some((word) => tradeWords.has(word));
  const broken = rules.find(
    ({ phrases, unlessTrade }) =>
      !(unlessTrade && ofTrade) && phrases.some((phrase) => text.includes(` ${phrase} `) || joined === ` ${phrase} `),
  );
  return broken?.rule;
}

/** The parts of a text between commas. */
function list(text: string): string[] {
  return text.split(/,\s+/);
}

/** Words in lower case without accents; a change from small to capital letter begins a word too. */
function wordsOf(header: string): string[] {
  return header
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .split(/[^a-z]+/)
    .filter((word) => word !== '');
}
