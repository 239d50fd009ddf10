import { expect, it } from 'vitest';
import { headerIdentifier } from '../../src/intake/identifier-header.js';

// Kinds of 45 CFR 164.514(b)(2); words in English, German and French, common practice, no source.
it.each([
  [
    'header-name',
    [
      'Name',
      'PATIENT_NAME',
      'patientName',
      'First name',
      'FirstName',
      'Surname',
      'Last-Name',
      'Initials',
      'Vorname',
      'Nachname',
      'Nom',
      'Prénom',
    ],
  ],
  [
    'header-birth',
    ['DOB', 'Date of birth', 'Birth date', 'Geburtsdatum', 'geb.', 'Geb.-Dat.', 'Date de naissance', 'Né(e) le'],
  ],
  [
    'header-address',
    ['Address', 'Street', 'Post code', 'ZIP', 'Straße', 'PLZ', 'Wohnort', 'Rue', 'Code postal', 'City'],
  ],
  [
    'header-contact',
    ['Phone', 'Tel.', 'Fax no', 'E-mail', 'eMail', 'URL', 'IP address', 'Handy', 'Téléphone', 'Courriel'],
  ],
  [
    'header-number',
    [
      'SSN',
      'Social security no',
      'NHS number',
      'Hospital number',
      'Record number',
      'MRN',
      'Insurance',
      'Account',
      'Licence',
      'Versichertennummer',
      'Fallnummer',
      'Numéro de dossier',
      'Lens serial number',
    ],
  ],
  ['header-photo', ['Photo', 'Image', 'Foto']],
] as const)('%s', (rule, headers) => {
  for (const header of headers) expect([header, headerIdentifier(header)]).toEqual([header, rule]);
});

it.each([
  'Lens name',
  'Formula name',
  'Model number',
  'IOL name',
  'Linsenmodell',
  'Device name',
  'Axis on photo',
  'Nom de la lentille',
  'Patient',
  'Patient ID',
  'Case',
  'Eye',
  'Age',
  'Sex',
  'Site',
  'Surgeon',
  'Op date',
  'Photopic pupil',
  'Cells',
  'Cell count',
  'Biometry',
  'Telescope',
  'Streak',
  'Zipped',
  'K1',
  'A1',
  'Sph',
  'm1_sph',
  'Nominal power',
  'Renamed',
  'ECD',
  'Axis plan',
  'Remarks',
  '',
])('finds nothing in %j: whole words only, and trade words excuse a name', (header) => {
  expect(headerIdentifier(header)).toBeUndefined();
});

it('excuses no birth date and no serial number for a trade word beside it', () => {
  expect(headerIdentifier('Lens serial')).toBe('header-number');
  expect(headerIdentifier('Birth date site')).toBe('header-birth');
});
