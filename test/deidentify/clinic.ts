import { createRequire } from 'node:module';

const iconv = createRequire(import.meta.url)('iconv-lite') as { encode(text: string, encoding: string): Buffer };

/** An invented patient with everything that identifies one. */
export interface Person {
  number: string;
  national: string;
  surname: string;
  first: string;
  /** yyyy-mm-dd. */
  born: string;
  street: string;
  post: string;
  phone: string;
  mail: string;
}

/** One invented operation. */
export interface Case {
  person: Person;
  eye: 'R' | 'L';
  /** yyyy-mm-dd. */
  day: string;
  /** Visits, yyyy-mm-dd. */
  visits: readonly string[];
}

const surnames =
  `Quillfeather Brambleworth Thistledown Marrowgate Pendlewick Ashenford Wrenbury Hollowmere Tanglewood Foxgrove
  Silverdale Mossington Kettleby Larkspurre Oakhampton Dunwich Merriweather Cobblestone Fernsby Galloway Nettleship
  Rookwood Bellwether Crabtree`.split(/\s+/);
const firsts = 'Aldara Bertil Corvina Dagobert Elowen Fenwick Gisela Hartmut Isolde Jorvik Kestrel Ludmilla'.split(' ');

const iso = (days: number): string => new Date(Date.UTC(2024, 0, 1) + 86_400_000 * days).toISOString().slice(0, 10);
const two = (n: number): string => String(n).padStart(2, '0');

export const persons: readonly Person[] = surnames.map((surname, at) => ({
  number: `00${4711 + 137 * at}`,
  // Ten digits of the shape of a national number.
  national: `943 476 ${5919 - at}`,
  surname,
  first: firsts[at % firsts.length] as string,
  born: `${at === 3 ? 1931 : 1940 + at}-${two(1 + (at % 12))}-${two(3 + at)}`,
  street: `${3 + at} ${surname} Crescent`,
  post: `QX${at} 7ZZ`,
  phone: `07700 ${900_100 + at}`,
  mail: `${surname.toLowerCase()}@clinic-mail.example`,
}));

export const cases: readonly Case[] = persons.flatMap((person, at): readonly Case[] => {
  const first = 20 + 29 * at;
  const one = {
    person,
    eye: 'R',
    day: iso(first),
    visits: [iso(first - 12), iso(first + 31), iso(first + 90)],
  } as const;
  const other = { person, eye: 'L', day: iso(first + 9), visits: [iso(first - 12), iso(first + 40)] } as const;
  return at % 3 === 0 ? [one, other] : [one];
});

/** 31.12.2024 */
export const german = (day: string): string => day.split('-').reverse().join('.');
/** 12/31/2024 */
const american = (day: string): string => day.replace(/^(\d+)-(\d+)-(\d+)$/, '$2/$3/$1');

/** A remark with a name in it, as people write them. */
const remark = ({ person }: Case): string =>
  `Spoke to Mrs ${person.surname} on the ward; daughter ${person.first} collects her, ring ${person.phone}`;

/** The surgery list: semicolons, decimal commas, Western letters. */
function theatreFile(): Buffer {
  const header =
    `Hospital No;NHS number;Surname;First name;Date of birth;Street;Post code;Phone;E-mail;Side;Op date;Surgeon name;
    Method;IOL;Power;IOL serial;Predicted;Compl;Comorbidity;Site;Ref;Größe;Remarks`.replace(/\n\s+/g, '');
  const rows = cases.map((one, at) => {
    const { person, eye, day } = one;
    const complication = at === 5 ? 'PCR, Mrs Quillfeather upset' : at === 7 ? 'VL' : '';
    const power = at === 9 ? `${person.surname}` : `${18 + (at % 8)},5`;
    return [
      person.number,
      person.national,
      person.surname,
      person.first,
      german(person.born),
      person.street,
      person.post,
      person.phone,
      person.mail,
      eye,
      german(day),
      at % 2 === 0 ? 'Dr Emmeline Staveley' : 'Mr Orsino Pellworth',
      at % 2 === 0 ? 'manual' : 'laser',
      at % 5 === 0 ? 'A1T' : 'B2',
      power,
      `SN${88_120_000 + at}`,
      `-0,${two(10 + at)}`,
      complication,
      at % 4 === 0 ? 'GL' : 'none',
      at % 2 === 0 ? 'North' : 'South',
      70_431 + 17 * at,
      `1${60 + (at % 9)}`,
      `"${remark(one)}"`,
    ].join(';');
  });
  return iconv.encode([header, ...rows, ''].join('\r\n'), 'windows-1252');
}

/** The lane: UTF-16, tabs, American dates with a time of day, what people write into the wrong cell. */
function laneFile(): Buffer {
  const header = ['MRN', 'Patient name', 'DOB', 'Eye', 'Visit date', 'Sph', 'Cyl', 'Ax', 'UCVA', 'BCVA', 'Comment'];
  const rows = cases.flatMap((one, at) =>
    one.visits.map((visit, n) => [
      one.person.number,
      `${one.person.surname}, ${one.person.first}`,
      american(one.person.born),
      one.eye === 'R' ? 'OD' : 'OS',
      `${american(visit)} 09:${two(10 + at)}`,
      at === 2 && n === 1 ? `see Mrs ${one.person.surname}` : '+0.50',
      at === 4 && n === 1 ? american(one.person.born) : '-0.75',
      at === 6 && n === 1 ? one.person.phone : String(10 + at),
      '6/12',
      at === 8 && n === 1 ? one.person.mail : '6/9-2',
      n === 2 ? `told ${one.person.first} ${one.person.surname}` : '',
    ]),
  );
  // An eye that nobody operated on, of a patient who was, and a patient of whom nothing else is known.
  rows.push([persons[1]?.number ?? '', 'x', '', 'OS', '05/20/2024', '1.00', '-0.25', '5', '6/6', '6/6', '']);
  rows.push(['0099999', 'Stray, Person', '', 'OD', '11/03/2023', '1.00', '-0.25', '5', '6/6', '6/6', '']);
  return iconv.encode(`\ufeff${[header, ...rows].map((row) => row.join('\t')).join('\r\n')}\r\n`, 'utf-16le');
}

/** The keratometer: a title with a name above the header, blanks inside the numbers. */
function keratometerFile(): Buffer {
  const spaced = (number: string): string => ` ${number.slice(0, 3)} ${number.slice(3)}`;
  const rows = cases.map(({ person, eye, visits }, at) =>
    [
      spaced(person.number),
      eye,
      `${visits[0]} 08:15`,
      (7.5 + at / 100).toFixed(2),
      10 + at,
      (7.7 + at / 100).toFixed(2),
      100 + at,
    ].join(','),
  );
  return Buffer.from(['Keratometer of Dr Staveley, Room 4', '', 'ID,Eye,Taken,R1,A1,R2,A2', ...rows, ''].join('\n'));
}

export const files = {
  'theatre.csv': theatreFile(),
  'Quillfeather_lane.csv': laneFile(),
  'keratometer.csv': keratometerFile(),
} as const;

/** Everything that may stand in no output: each as it is written somewhere, and its telling parts. */
export const secrets: readonly string[] = [
  ...persons.flatMap((one) => [
    one.number,
    one.number.replace(/^0+/, ''),
    `${one.number.slice(0, 3)} ${one.number.slice(3)}`,
    one.national,
    one.national.replaceAll(' ', ''),
    one.surname,
    one.surname.toLowerCase(),
    one.first,
    one.born,
    german(one.born),
    american(one.born),
    one.street,
    one.post,
    one.phone,
    one.phone.slice(-6),
    one.mail,
  ]),
  ...cases.flatMap(({ day, visits }) => [day, ...visits].flatMap((each) => [each, german(each), american(each)])),
  ...cases.map((_, at) => String(70_431 + 17 * at)),
  ...cases.map((_, at) => String(88_120_000 + at)),
  ...['Emmeline', 'Staveley', 'Orsino', 'Pellworth', 'Crescent', 'example', 'Spoke to', 'upset', 'Stray', '99999'],
];

/** Days between two dates, by the clock of the language. */
export const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;
