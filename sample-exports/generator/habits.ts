import type { Sheet } from './sheet.js';

/** What a whole file does alike in many rows: it would drown the sample, so it is planted in a copy, one at a time. */
export interface Habit {
  readonly rule: string;
  readonly file: string;
  /** Header that the rule names. */
  readonly column: string;
  readonly habit: string;
  /** A row as the habit writes it. @param index  of the row, from 0 */
  rewrite(row: Readonly<Record<string, string>>, index: number): Readonly<Record<string, string>>;
}

const comma = (value: number): string => `${value > 0 ? '+' : ''}${value.toFixed(2)}`.replace('.', ',');
const numberOf = (text: string): number => Number(text.replace(',', '.'));

/** The same refraction with the other sign: sphere + cylinder, −cylinder, axis + 90. */
function otherNotation(row: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const [sphere = '', cylinder = '', axis = ''] = [row.Sphäre, row.Zylinder, row['Achse °']];
  if (sphere === '' || axis === '') return {};
  const turned = (Number(axis) + 90) % 180;
  return {
    Sphäre: comma(numberOf(sphere) + numberOf(cylinder)),
    Zylinder: comma(-numberOf(cylinder)),
    'Achse °': String(turned),
  };
}

export const HABITS: readonly Habit[] = [
  {
    rule: 'column-blank',
    file: 'theatre-list.csv',
    column: 'Comorbidity',
    habit: 'nobody fills the column in',
    rewrite: () => ({ Comorbidity: '' }),
  },
  {
    rule: 'constant-column',
    file: 'theatre-list.csv',
    column: 'Age',
    habit: 'the first age was filled down',
    rewrite: () => ({ Age: '71' }),
  },
  {
    rule: 'prediction-is-target',
    file: 'theatre-list.csv',
    column: 'Predicted',
    habit: 'the aim was copied into the prediction',
    rewrite: ({ Aim = '' }) => ({ Predicted: Aim }),
  },
  {
    rule: 'refraction-half-blank',
    file: 'lane-north.csv',
    column: 'Zylinder',
    habit: 'a cylinder of nothing is left blank',
    rewrite: ({ Zylinder = '' }) => (Zylinder === '0,00' ? { Zylinder: '' } : {}),
  },
  {
    rule: 'cylinder-notation-file',
    file: 'lane-north.csv',
    column: 'Zylinder',
    habit: 'one of three examiners writes plus cylinders',
    rewrite: (row, index) => (index % 3 === 0 ? otherNotation(row) : {}),
  },
  {
    rule: 'refraction-grid-file',
    file: 'lane-north.csv',
    column: 'Sphäre',
    habit: 'an autorefractor writes the sphere, to a hundredth',
    rewrite: ({ Sphäre = '' }, index) =>
      Sphäre === '' ? {} : { Sphäre: comma(numberOf(Sphäre) + 0.01 * ((index % 9) - 4)) },
  },
  {
    rule: 'acuity-columns-exchanged',
    file: 'lane-north.csv',
    column: 'Visus c.c.',
    habit: 'before surgery the two acuities stand in each other’s column',
    rewrite: (row) =>
      row.Termin === 'vor OP' ? { 'Visus s.c.': row['Visus c.c.'] ?? '', 'Visus c.c.': row['Visus s.c.'] ?? '' } : {},
  },
];

/** A sheet whose every row is written by a habit. */
export function habitual(sheet: Sheet, { rewrite }: Habit): Sheet {
  const rows = sheet.rows.map((cells, index) => {
    const row = Object.fromEntries(sheet.header.map((header, i) => [header, cells[i] ?? '']));
    const written = rewrite(row, index);
    return sheet.header.map((header, i) => written[header] ?? cells[i] ?? '');
  });
  return { ...sheet, rows };
}
