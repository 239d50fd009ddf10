import { header, type Peculiar, rows, usual, usualBut, withCells, written } from './corpus.js';

/** The usual rows with the refraction in one cell. */
const inOneCell = (write: (sphere: string, cylinder: string, axis: string) => string): string =>
  [
    [...header.slice(0, 3), 'Rx', 'VA'],
    ...rows.map(([a, b, c, s = '', y = '', x = '', v]) => [a, b, c, write(s, y, x), v]),
  ]
    .map((cells) => `${cells.join(',')}\n`)
    .join('');

const oneCell: NonNullable<Peculiar['columns']> = {
  sphere: undefined,
  cylinder: undefined,
  axis: undefined,
  refraction: 'Rx',
};

/** Refractions in every notation. */
export const refractionCases: readonly Peculiar[] = [
  {
    name: 'one-cell',
    peculiarity: 'the refraction in one cell',
    bytes: inOneCell((s, c, a) => `${s} ${c} x ${a}`),
    columns: oneCell,
  },
  {
    name: 'one-cell-strokes',
    peculiarity: 'strokes between its parts',
    bytes: inOneCell((s, c, a) => `${s}/${c}x${a}`),
    columns: oneCell,
  },
  {
    name: 'one-cell-at',
    peculiarity: 'an at sign and a degree sign',
    bytes: inOneCell((s, c, a) => `${s}DS ${c}DC @ ${a}°`),
    columns: oneCell,
  },
  {
    name: 'one-cell-french',
    peculiarity: 'sphere, and cylinder and axis in brackets, as French records have it',
    bytes: inOneCell((s, c, a) => `${s} (${c} à ${a}°)`),
    columns: oneCell,
  },
  {
    name: 'one-cell-axis-first',
    peculiarity: 'the axis first, as French prescriptions have it',
    bytes: inOneCell((s, c, a) => `${a}° (${c}) ${s}`),
    columns: oneCell,
  },
  {
    name: 'one-cell-sphere-only',
    peculiarity: 'a sphere alone, said to be one, and a number alone',
    bytes: 'ID,Eye,Date,Rx,VA\nA1,R,2025-02-20,-1.25 DS,6/9\nA1,L,2025-02-21,+0.50,6/6\n',
    columns: oneCell,
    reads: {
      'A1 right': 'day 41: -1.25 +0 × NaN, corrected 0.1761',
      'A1 left': 'day 42: corrected 0',
    },
  },
  {
    name: 'one-cell-unsigned',
    peculiarity: 'cylinders without a sign in one cell',
    bytes: inOneCell((s, c, a) => `${s} ${c.replace('-', '')} x ${a}`),
    columns: oneCell,
    reads: 'nothing',
    finds: [{ rule: 'notation-open', row: 2, column: 'Rx', detail: 4 }],
    lines: ['refraction: { column: Rx, notation: plus }', 'refraction: { column: Rx, notation: minus }'],
  },
  {
    name: 'one-cell-unsigned-minus',
    peculiarity: 'the same, settled: minus cylinders',
    bytes: inOneCell((s, c, a) => `${s} ${c.replace('-', '')} x ${a}`),
    columns: { ...oneCell, refraction: { column: 'Rx', notation: 'minus' } },
  },
  {
    name: 'plus-cylinders',
    peculiarity: 'the same eyes in plus notation, with signs',
    // Transposed by hand: sphere + cylinder, the sign changed, the axis turned by 90.
    bytes: [
      header.join(','),
      'A1,R,2025-02-20,-1.75,+0.50,180,6/9',
      'A1,L,2025-02-21,-0.25,+0.75,95,6/6',
      'A2,R,2025-02-24,-1.25,+1.00,85,6/12',
      'A3,L,2025-02-25,-0.25,+0.25,10,6/7.5',
    ].join('\n'),
  },
  {
    name: 'unsigned-plus',
    peculiarity: 'cylinders without a sign, said to be plus',
    bytes: withCells({ '2 Cyl': '0.50', '3 Cyl': '0.75', '4 Cyl': '1.00', '5 Cyl': '0.25' }),
    columns: { cylinder: { column: 'Cyl', notation: 'plus' } },
    reads: {
      'A1 right': 'day 41: -1.25 +0.5 × 90, corrected 0.1761',
      'A1 left': 'day 42: 0.5 +0.75 × 5, corrected 0',
      'A2 right': 'day 45: -0.25 +1 × 175, corrected 0.301',
      'A3 left': 'day 46: 0 +0.25 × 100, corrected 0.0969',
    },
  },
  {
    name: 'unsigned-open',
    peculiarity: 'cylinders without a sign, of which audit.yaml says nothing',
    bytes: withCells({ '2 Cyl': '0.50', '3 Cyl': '0.75', '4 Cyl': '1.00', '5 Cyl': '0.25' }),
    reads: 'nothing',
    finds: [{ rule: 'notation-open', row: 2, column: 'Cyl', detail: 4, written: '0.50' }],
    lines: ['cylinder: { column: Cyl, notation: plus }', 'cylinder: { column: Cyl, notation: minus }'],
  },
  {
    name: 'unsigned-zero',
    peculiarity: 'cylinders of zero alone need no sign',
    bytes: withCells({ '2 Cyl': '0', '3 Cyl': '0.00', '4 Cyl': 'DS', '5 Cyl': '' }),
    reads: {
      'A1 right': 'day 41: -1.25 +0 × NaN, corrected 0.1761',
      'A1 left': 'day 42: 0.5 +0 × NaN, corrected 0',
      'A2 right': 'day 45: -0.25 +0 × NaN, corrected 0.301',
      'A3 left': 'day 46: corrected 0.0969',
    },
  },
  {
    name: 'blank-sphere',
    peculiarity: 'a blank sphere beside a cylinder is missing',
    bytes: withCells({ '5 Sph': '' }),
    reads: usualBut({ 'A3 left': 'day 46: NaN +0.25 × 10, corrected 0.0969' }),
  },
  {
    name: 'blank-sphere-declared',
    peculiarity: 'a blank sphere that the source declares to be plano',
    bytes: withCells({ '5 Sph': '' }),
    source: { blank_means: { sphere: 0 } },
  },
  {
    name: 'blank-refraction-declared',
    peculiarity: 'an eye without any refraction is not plano, whatever a blank means beside a cylinder',
    bytes: withCells({ '5 Sph': '', '5 Cyl': '', '5 Axis': '' }),
    source: { blank_means: { sphere: 0, cylinder: 0 } },
    reads: usualBut({ 'A3 left': 'day 46: corrected 0.0969' }),
  },
  {
    name: 'device-rows',
    peculiarity: 'rows of two kinds in one file, of which one is asked for',
    bytes: `${written(',', (cell, row, column) => (column === 6 ? `${cell},${row < 0 ? 'Kind' : 'REF'}` : cell))}A1,R,2025-02-20,-1.50,-0.75,92,,AUTO\n`,
    source: { only: [{ where: 'Kind', at: undefined, operator: 'is', value: 'REF', and: [] }] },
    reads: usual,
  },
];
