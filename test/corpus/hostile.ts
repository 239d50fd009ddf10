/** One export as a clinic might send it, of which nobody has written an audit.yaml. Everything in it is invented. */
export interface Hostile {
  name: string;
  /** What is peculiar, in a sentence. */
  peculiarity: string;
  bytes: string | Uint8Array;
  /** What keeps `propose` from writing anything: rules of the gate, or that no row says whose eye it is of. */
  unfit?: readonly string[];
  nothing?: true;
  /** Doubts that `propose` must raise, among others. */
  doubts?: readonly string[];
  /** What the proposed audit.yaml leaves open: faults that point to its commented lines. */
  faults?: readonly string[];
  /** Lines whose # is then taken away, by their text. */
  take?: readonly string[];
  /** Rules that stop the run. */
  stops?: readonly string[];
  /** What is asked for beside it, once. */
  queries?: readonly string[];
  /** Of the first eye: laterality, days, sphere, cylinder, axis in plus notation, logMAR; what of it is there. */
  reads?: { eyes: number; first: string };
}

const count = 30;
const day = (i: number) => [2025, 1 + (i % 9), 1 + ((i * 3) % 28)] as const;
const two = (n: number): string => String(n).padStart(2, '0');
const iso = (i: number, months = 0): string => {
  const [y, m, d] = day(i);
  return `${y}-${two(m + months)}-${two(d)}`;
};
const code = (i: number): string => `K${100 + i}`;
const side = (i: number): string => 'RL'.charAt(i % 2);
const sphere = (i: number): number => [-1.25, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75][(i * 5) % 8] as number;
const cylinder = (i: number): number => [-0.75, -0.5, -0.25][i % 3] as number;
const axis = (i: number): number => 5 + 5 * i;
const german = (value: number): string => `${value < 0 ? '' : '+'}${value.toFixed(2)}`.replace('.', ',');

function table(header: string, row: (i: number) => readonly (string | number)[], separator = ','): string {
  const rows = Array.from({ length: count }, (_, i) => row(i).join(separator));
  return `${[header, ...rows].join('\n')}\n`;
}

const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0));
const refraction = (i: number) => [sphere(i).toFixed(2), cylinder(i), axis(i)];

/** Fifteen exports of thirty eyes. Of the first: −1.25 −0.75 × 5 is −2.00 +0.75 × 95. */
export const hostileExports: readonly Hostile[] = [
  {
    name: 'german-wide',
    peculiarity: 'windows-1252, semicolons, decimal commas, three visits in one row',
    bytes: latin1(
      table(
        'Patientennummer;Auge;OP-Datum;Alter;Sphäre präop;Zylinder präop;Achse präop;Visus präop;Sphäre 1M;Zylinder 1M;Achse 1M;Visus cc 1M;Sphäre 3M;Zylinder 3M;Achse 3M;Visus cc 3M',
        (i) => {
          const [y, m, d] = day(i);
          const written = [german(sphere(i)), german(cylinder(i)), axis(i)];
          const head = [code(i), side(i), `${two(d)}.${two(m)}.${y}`, 60 + (i % 25)];
          return [...head, ...written, '0,4', ...written, '0,9', ...written, '1,0'];
        },
        ';',
      ),
    ),
    doubts: ['outcome'],
    reads: { eyes: 30, first: 'right, -2 +0.75 × 95, 0' },
  },
  {
    name: 'french-one-cell',
    peculiarity: 'the refraction in one cell, cylinder and axis in brackets; tenths',
    bytes: table(
      "N° patient;Œil;Date d'intervention;Puissance implant;Réfraction à 1 mois;AV corrigée 1 mois",
      (i) => {
        const [y, m, d] = day(i);
        const cell = `${german(sphere(i))} (${german(cylinder(i))} à ${axis(i)}°)`;
        return [code(i), i % 2 ? 'OG' : 'OD', `${two(d)}/${two(m)}/${y}`, `${20 + (i % 5)},5`, cell, '10/10'];
      },
      ';',
    ),
    reads: { eyes: 30, first: 'right, -2 +0.75 × 95, 0' },
  },
  {
    name: 'units-below-header',
    peculiarity: 'a second header row with units, and no examination after surgery',
    bytes: table('Case,Eye,Surgery date,AL,K1,K2,ACD,IOL power\n,,,mm,D,D,mm,D', (i) => [
      code(i),
      side(i),
      iso(i),
      (22 + i / 10).toFixed(2),
      (42 + i / 10).toFixed(2),
      (43 + i / 10).toFixed(2),
      (3 + i / 100).toFixed(2),
      `${20 + (i % 5)}.0`,
    ]),
    doubts: ['assumed visit'],
    queries: ['outcome-none'],
    reads: { eyes: 30, first: 'right' },
  },
  {
    name: 'eye-codes',
    peculiarity: 'eyes called 1 and 2',
    bytes: table('Pat,Eye,Op date,Sph post,Cyl post,Axis post', (i) => [
      code(i),
      1 + (i % 2),
      iso(i),
      ...refraction(i),
    ]),
    doubts: ['choice open: Eye'],
    faults: ['"eye" is open: its lines are still a comment'],
    take: ['eye: { column: Eye, words: { right: [1], left: [2] } }'],
    reads: { eyes: 30, first: 'right, -2 +0.75 × 95' },
  },
  {
    name: 'serial-dates',
    peculiarity: 'dates as a spreadsheet counts them',
    bytes: table('ID,Eye,Surgery Date,Exam Date,Sphere,Cylinder,Axis', (i) => [
      code(i),
      side(i),
      45_700 + i,
      45_740 + i,
      ...refraction(i),
    ]),
    stops: ['dates-serial', 'dates-serial'],
  },
  {
    name: 'acuity-as-dates',
    peculiarity: 'acuities that a spreadsheet made into dates',
    bytes: table('ID,Eye,Surgery Date,Exam Date,Sphere,Cylinder,Axis,BCVA', (i) => [
      code(i),
      side(i),
      iso(i),
      iso(i, 1),
      ...refraction(i),
      ['06-Sep', '06-Jun', '06-Dec', '6/18'][i % 4] as string,
    ]),
    stops: ['column-unreadable'],
  },
  {
    name: 'dates-either-way',
    peculiarity: 'dates that may be day first or month first, and refractions of no said time',
    bytes: table('ID,Eye,Surgery Date,Sphere,Cylinder,Axis', (i) => [
      code(i),
      side(i),
      `${two(1 + (i % 12))}/${two(1 + ((i * 5) % 12))}/2025`,
      ...refraction(i),
    ]),
    doubts: ['choice open', 'open visit'],
    faults: ['"visit" is open: its lines are still a comment'],
    take: ['visit: outcome'],
    stops: ['date-order-open'],
  },
  {
    name: 'two-decimal-marks',
    peculiarity: 'a decimal point in one row, a comma in the next',
    bytes: table(
      'ID;Eye;Surgery Date;Sphere;Cylinder;Axis',
      (i) => {
        const power = sphere(i).toFixed(2);
        return [code(i), side(i), iso(i), i % 2 ? power.replace('.', ',') : power, cylinder(i), axis(i)];
      },
      ';',
    ),
    doubts: ['decimal mark', 'open visit'],
    faults: ['"visit" is open: its lines are still a comment'],
    take: ['visit: outcome'],
    stops: ['decimal-mixed'],
  },
  {
    name: 'predictions-alone',
    peculiarity: 'predictions in rows, and no operation',
    bytes: table('ID,Eye,Formula,Predicted SE', (i) => [
      code(i),
      side(i),
      `F1,0.25\n${code(i)},${side(i)},F2,-0.25\n${code(i)},${side(i)},F3,0.50`,
    ]),
    doubts: ['choice open'],
    stops: ['operations-none'],
  },
  {
    name: 'predictions-wide',
    peculiarity: 'three predictions in three columns, and no examination',
    bytes: table('ID,Eye,Surgery Date,IOL,Target,SRK/T pred,Haigis pred,Hoffer Q pred', (i) => [
      code(i),
      side(i),
      iso(i),
      'A1',
      '0.00',
      sphere(i) / 2,
      sphere(i + 1) / 2,
      sphere(i + 2) / 2,
    ]),
    doubts: ['choice open'],
    faults: ['several formulas predict, and none is the primary one'],
    take: ['predictions:', 'primary_formula: SRK/T'],
    queries: ['constant-column', 'outcome-none'],
    reads: { eyes: 30, first: 'right' },
  },
  {
    name: 'both-eyes-in-a-row',
    peculiarity: 'columns for the right eye and for the left, one date of surgery',
    bytes: table('Patient ID,Surgery date,OD Sph,OD Cyl,OD Axis,OS Sph,OS Cyl,OS Axis', (i) => [
      code(i),
      iso(i),
      ...refraction(i),
      ...refraction(i + 1),
    ]),
    doubts: ['open eye', 'open eye', 'open visit', 'open visit'],
    faults: Array.from({ length: 2 }, () => '"visit" is open: its lines are still a comment'),
    take: [
      '- holds: surgery',
      'columns:',
      'surgery_date: Surgery date',
      'constants:',
      'eye: right',
      'eye: left',
      'visit: outcome',
    ],
    reads: { eyes: 60, first: 'right, -2 +0.75 × 95' },
  },
  {
    name: 'no-patient',
    peculiarity: 'no column says whose eye it is',
    bytes: table('Eye,Surgery date,Sphere,Cylinder,Axis', (i) => [side(i), iso(i), ...refraction(i)]),
    nothing: true,
  },
  {
    name: 'identities',
    peculiarity: 'names and birth dates',
    bytes: table('Surname,First name,DOB,Eye,Surgery date,Sphere,Cylinder,Axis', (i) => [
      'Muster',
      'Max',
      '1950-01-01',
      side(i),
      iso(i),
      ...refraction(i),
    ]),
    unfit: ['identifier-present', 'identifier-present', 'identifier-present'],
  },
  {
    name: 'record-number',
    peculiarity: 'a record number for a code, powers in hundredths, letters for acuity',
    bytes: table('MRN code,Laterality,DOS,Days post op,SPH,CYL,AX,UCVA,BCVA', (i) => [
      code(i),
      i % 2 ? 'Left' : 'Right',
      iso(i),
      30 + i,
      100 * sphere(i),
      -50,
      axis(i),
      85 - (i % 5),
      90 - (i % 4),
    ]),
    unfit: ['identifier-present'],
  },
  {
    name: 'tabs-and-clock',
    peculiarity: 'tabs, month first, radii in millimetres, a signed header, an incision by the clock',
    bytes: table(
      'pt\teye\tsx date\tincision (clock)\tR flat\tR flat ax\tR steep\tR steep ax\tpost sph\tpost +cyl\tpost ax\tpost VA cc (logMAR)',
      (i) => {
        const [y, m, d] = day(i);
        const flat = (5 * i) % 180;
        const cornea = ['7.90', flat, '7.70', (flat + 90) % 180];
        const head = [code(i), side(i), `${m}/${d}/${y}`, [10, 12, 2][i % 3] as number];
        return [
          ...head,
          ...cornea,
          sphere(i).toFixed(2),
          `+0.${i % 2 ? '75' : '50'}`,
          axis(i),
          [0, 0.1, -0.1][i % 3] as number,
        ];
      },
      '\t',
    ),
    doubts: ['choice open: incision (clock)', 'assumed visit'],
    queries: [],
    reads: { eyes: 30, first: 'right, -1.25 +0.5 × 5, 0' },
  },
];
