import { describe, expect, it } from 'vitest';
import { clinic, csv, type Eye, keratometer, later, letter, theatreList } from '../propose/clinic.js';
import { formOf, mappingOf, proposedFor } from '../propose/proposed.js';
import { auditOf } from '../whole/audit.js';

const eyes = clinic(12);
const list = theatreList(eyes);

/** Sphere, cylinder, axis as cells. */
const refraction = ({ sphere, cylinder, axis }: Eye): readonly (string | number)[] => [
  sphere,
  cylinder.toFixed(2),
  axis,
];

describe('one file a kind of row', () => {
  const lane = csv('Patient,Eye,Visit date,Sph,Cyl,Axis', eyes, (eye) => [
    eye.patient,
    letter(eye),
    later(eye.operated, 30),
    ...refraction(eye),
  ]);

  it('gives a source for each, and a run with the eyes of the list', async () => {
    const files = { 'list.csv': list, 'kerato.csv': keratometer(eyes), 'lane.csv': lane };
    const { text, plan } = await proposedFor(files);
    expect(plan?.sources.map(({ blocks }) => blocks.map(({ holds }) => holds))).toEqual([
      ['surgery'],
      ['exam'],
      ['exam'],
    ]);
    const { results } = await auditOf(text, files);
    expect(results.get('eyes_operated', 'all', 'count').value).toBe(12);
    // Every eye ended on its aim: sphere + cylinder / 2 = aim.
    expect(results.get('target_error', 'all', 'mean').value).toBeCloseTo(0, 12);
  });

  it('files with the same headers are one source', async () => {
    const halves = { 'lane-a.csv': lane, 'lane-b.csv': lane.replaceAll('Q1', 'Z1') };
    const { plan } = await proposedFor({ 'list.csv': list, ...halves });
    expect(plan?.sources.map(({ file }) => file)).toEqual([['list.csv'], ['lane-a.csv', 'lane-b.csv']]);
  });
});

describe('several visits in one row', () => {
  const row = (eye: Eye) => [
    eye.patient,
    letter(eye),
    eye.operated,
    eye.power,
    eye.flat.toFixed(2),
    eye.axis,
    eye.steep.toFixed(2),
    eye.steepAxis,
    ...refraction(eye),
    '0.8',
    ...refraction(eye),
    '1.0',
  ];

  it.each([
    [
      'prefixes',
      'ID,Eye,Op date,Power,pre_K1,pre_A1,pre_K2,pre_A2,m1_sph,m1_cyl,m1_axis,m1_BCVA decimal,m3_sph,m3_cyl,m3_axis,m3_BCVA decimal',
    ],
    [
      'suffixes',
      'ID,Eye,Op date,Power,K1 pre,A1 pre,K2 pre,A2 pre,sph 1m,cyl 1m,axis 1m,BCVA decimal 1m,sph 3m,cyl 3m,axis 3m,BCVA decimal 3m',
    ],
    [
      'whole words',
      'ID,Eye,Op date,Power,preop K1,preop A1,preop K2,preop A2,1 month sph,1 month cyl,1 month axis,1 month BCVA decimal,3 months sph,3 months cyl,3 months axis,3 months BCVA decimal',
    ],
    [
      'German suffixes',
      'Fall,Auge,OP-Datum,Brechkraft,K1 präop,Achse K1 präop,K2 präop,Achse K2 präop,Sphäre 1 Monat,Zylinder 1 Monat,Achse 1 Monat,Visus cc dezimal 1 Monat,Sphäre 3 Monate,Zylinder 3 Monate,Achse 3 Monate,Visus cc dezimal 3 Monate',
    ],
    [
      'French suffixes',
      'Cas,Œil,Date opératoire,Puissance,K1 préop,Axe K1 préop,K2 préop,Axe K2 préop,Sphère 1 mois,Cylindre 1 mois,Axe 1 mois,AVAC décimale 1 mois,Sphère 3 mois,Cylindre 3 mois,Axe 3 mois,AVAC décimale 3 mois',
    ],
  ])('are told apart by %s', async (_, header) => {
    const files = { 'wide.csv': csv(header, eyes, row) };
    const { text, plan, faults } = await proposedFor(files);
    expect(faults).toEqual([]);
    const blocks = plan?.sources[0]?.blocks ?? [];
    expect(blocks.map(({ holds, visit }) => `${holds} ${visit ?? ''}`.trim())).toEqual([
      'surgery',
      'exam before',
      'exam 1 month',
      'exam 3 months',
    ]);
    const names = header.split(',');
    expect(mappingOf(plan)).toMatchObject({
      surgery_date: names[2],
      lens_power: names[3],
      'before: k1': names[4],
      'before: k2_axis': names[7],
      '1 month: sphere': names[8],
      '1 month: cdva': names[11],
      '3 months: axis': names[14],
    });
    const { results } = await auditOf(text, files);
    expect(results.get('eyes_operated', 'all', 'count').value).toBe(12);
  });

  it('are told apart by a row of groups above the headers', async () => {
    const groups = ',,,,Before,,,,1 month,,,,3 months,,,';
    const header = 'ID,Eye,Op date,Power,K1,A1,K2,A2,sph,cyl,axis,BCVA,sph,cyl,axis,BCVA';
    const { plan } = await proposedFor({ 'wide.csv': `${groups}\n${csv(header, eyes, row)}` });
    expect(plan?.sources[0]?.reading.header_row).toBe(2);
    const forms = plan?.sources[0]?.blocks.map(({ visit, columns }) => [
      visit,
      columns.filter(({ field }) => field === 'sphere').map(formOf),
    ]);
    expect(forms).toContainEqual(['1 month', [{ field: 'sphere', column: 'sph', occurrence: 1 }]]);
    expect(forms).toContainEqual(['3 months', [{ field: 'sphere', column: 'sph', occurrence: 2 }]]);
  });

  it('a keratometry without a visit beside operations is that of the planning, and marked', async () => {
    const header = 'ID,Eye,Op date,Power,K1,A1,K2,A2,m1 sph,m1 cyl,m1 axis,m1 BCVA,m3 sph,m3 cyl,m3 axis,m3 BCVA';
    const { plan, doubts } = await proposedFor({ 'wide.csv': csv(header, eyes, row) });
    expect(mappingOf(plan)).toMatchObject({ 'before: k1': 'K1', 'before: k2_axis': 'A2' });
    expect(doubts).toContain('assumed visit');
  });
});

describe('both eyes in one row', () => {
  it('become blocks that say which eye', async () => {
    const header = 'ID,Op date,Lens,OD sph,OD cyl,OD axis,OS sph,OS cyl,OS axis,Visit date';
    const text = csv(header, eyes, (eye) => [
      eye.patient,
      eye.operated,
      'A1',
      ...refraction(eye),
      ...refraction(eye),
      later(eye.operated, 30),
    ]);
    const { plan } = await proposedFor({ 'list.csv': list, 'both.csv': text.replace('Op date,Lens,', 'x,y,') });
    const blocks = plan?.sources[1]?.blocks ?? [];
    expect(blocks.map(({ constants }) => constants.eye)).toEqual(['right', 'left']);
    expect(blocks.map(({ columns }) => columns.find(({ field }) => field === 'sphere')?.column)).toEqual([
      'OD sph',
      'OS sph',
    ]);
    // Where operations themselves do not say which eye, that is left to be said, not guessed.
    const open = await proposedFor({ 'both.csv': text });
    expect(open.doubts.filter((kind) => kind === 'open eye')).toHaveLength(2);
    expect(open.plan?.sources[0]?.blocks.map(({ holds }) => holds)).toEqual(['exam', 'exam']);
    await expect(auditOf(open.text, { 'both.csv': text })).rejects.toThrow('operations-none');
  });

  // By hand: of eyes 0 and 1 the right one was operated, of eye 2 the left one, of eye 3 both.
  const operated = (at: number): readonly [boolean, boolean] => [at !== 2, at === 2 || at === 3];
  const sided = eyes.slice(0, 4).map((eye) => ({ ...eye, patient: eye.patient.slice(0, 5) }));
  it.each([
    [
      'a date of each eye',
      'ID,OD op date,OS op date,OD IOL power,OS IOL power,OD post sph,OD post cyl,OD post axis,OS post sph,OS post cyl,OS post axis',
      (date: string, [right, left]: readonly [boolean, boolean]) => [right ? date : '', left ? date : ''],
    ],
    [
      'a date of both eyes, and a lens of each',
      'ID,Op date,OD IOL power,OS IOL power,OD post sph,OD post cyl,OD post axis,OS post sph,OS post cyl,OS post axis',
      (date: string) => [date],
    ],
  ])('%s: each eye that was operated is one, with its own refraction', async (_, header, dates) => {
    const text = csv(header, sided, (eye, at) => {
      const [right, left] = operated(at);
      const blank = ['', '', ''];
      return [
        `S${at}`,
        ...dates(eye.operated, [right, left]),
        right ? '21.0' : '',
        left ? '22.5' : '',
        ...(right ? [-0.25, -0.5, 90] : blank),
        ...(left ? [0.5, -0.75, 10] : blank),
      ];
    });
    const { text: audit, faults } = await proposedFor({ 'both.csv': text });
    expect(faults).toEqual([]);
    const { derived, findings } = await auditOf(audit, { 'both.csv': text });
    const { tables, eyes: found } = derived;
    const column = (name: string) => found.column(name) as { at(eye: number): number };
    const names = Array.from({ length: found.numRows() }, (__, eye) => {
      const side = column('laterality').at(eye) === 0 ? 'right' : 'left';
      return `${tables.patients[column('patient').at(eye)]} ${side} ${column('lens_power').at(eye)} ${column('spherical_equivalent').at(eye)}`;
    });
    // S + C/2 by hand: −0.25 − 0.25 and +0.50 − 0.375.
    expect(names).toEqual([
      'S0 right 21 -0.5',
      'S1 right 21 -0.5',
      'S2 left 22.5 0.125',
      'S3 right 21 -0.5',
      'S3 left 22.5 0.125',
    ]);
    expect(findings.filter(({ severity }) => severity !== 'note').map(({ rule }) => rule)).toEqual([]);
  });
});

describe('predictions', () => {
  const bases = (eye: Eye) => [eye.patient, letter(eye)];

  it('in long form name their formula row by row', async () => {
    const rows = eyes.flatMap((eye) => [
      [...bases(eye), 'SRK/T', '-0.21'],
      [...bases(eye), 'Haigis', '-0.33'],
    ]);
    const text = `ID,Eye,Formula,Predicted SE\n${rows.map((row) => row.join(',')).join('\n')}\n`;
    const { plan, faults, open } = await proposedFor({ 'list.csv': list, 'pred.csv': text });
    expect(open).toEqual(['primary-formula']);
    expect(faults).toEqual([]);
    const [block] = plan?.sources[1]?.blocks ?? [];
    expect(block?.holds).toBe('prediction');
    expect(mappingOf(plan, 1)).toEqual({ 'planned: formula': 'Formula', 'planned: predicted_se': 'Predicted SE' });
  });

  it('in wide form are a block a formula, by the name that the header gives it', async () => {
    const text = csv('ID,Eye,Pred SRK/T,Haigis,Hoffer Q prediction,Pred 4', eyes, (eye) => [
      ...bases(eye),
      '-0.21',
      '-0.33',
      '-0.10',
      '-0.08',
    ]);
    const { text: yaml, open } = await proposedFor({ 'list.csv': list, 'pred.csv': text });
    expect(open).toEqual(['primary-formula']);
    for (const name of ['SRK/T', 'Haigis', 'Hoffer Q', 'Pred 4']) expect(yaml).toContain(`formula: ${name}\n`);
  });

  it('that repeat those of the list of operations are left, and said', async () => {
    const withPlan = csv('ID,Eye,Op date,Lens,Predicted', eyes, (eye, at) => [
      ...bases(eye),
      eye.operated,
      'A1',
      (-0.1 - at / 100).toFixed(2),
    ]);
    const text = csv('ID,Eye,Pred 1,Pred 2', eyes, (eye, at) => [
      ...bases(eye),
      (-0.1 - at / 100).toFixed(2),
      (0.2 - at / 50).toFixed(2),
    ]);
    const { plan, text: yaml } = await proposedFor({ 'list.csv': withPlan, 'pred.csv': text });
    expect(mappingOf(plan, 1)).toEqual({ 'Pred 2: predicted_se': 'Pred 2' });
    expect(yaml).toContain('# left: "Pred 1": the same predictions');
  });
});

describe('columns of keratometry', () => {
  const k = (eye: Eye) => [eye.patient, letter(eye), later(eye.operated, -9)];

  it('two axes under one header are told by their place', async () => {
    const text = csv('ID,Eye,Date,K1,Axis,K2,Axis', eyes, (eye) => [
      ...k(eye),
      eye.flat.toFixed(2),
      eye.axis,
      eye.steep.toFixed(2),
      eye.steepAxis,
    ]);
    const { plan } = await proposedFor({ 'list.csv': list, 'k.csv': text });
    const axes = plan?.sources[1]?.blocks[0]?.columns.filter(({ field }) => field.endsWith('axis')).map(formOf);
    expect(axes).toEqual([
      { field: 'k1_axis', column: 'Axis', occurrence: 1 },
      { field: 'k2_axis', column: 'Axis', occurrence: 2 },
    ]);
  });

  it('two powers before two axes are paired in order', async () => {
    const text = csv('ID,Eye,Date,K1,K2,Axis,Axis', eyes, (eye) => [
      ...k(eye),
      eye.flat.toFixed(2),
      eye.steep.toFixed(2),
      eye.axis,
      eye.steepAxis,
    ]);
    const { plan } = await proposedFor({ 'list.csv': list, 'k.csv': text });
    const axes = plan?.sources[1]?.blocks[0]?.columns
      .filter(({ field }) => field.endsWith('axis'))
      .map(({ field, occurrence }) => [field, occurrence]);
    expect(axes).toEqual([
      ['k1_axis', 1],
      ['k2_axis', 2],
    ]);
  });

  it('one axis behind two powers is not guessed', async () => {
    const text = csv('ID,Eye,Date,K1,K2,Axis', eyes, (eye) => [
      ...k(eye),
      eye.flat.toFixed(2),
      eye.steep.toFixed(2),
      eye.axis,
    ]);
    const { plan, text: yaml } = await proposedFor({ 'list.csv': list, 'k.csv': text });
    expect(Object.keys(mappingOf(plan, 1))).toEqual(['exam_date', 'k1', 'k2']);
    expect(yaml).toContain('# left: "Axis": an axis; nothing says of what');
  });

  it('a flat and a steep meridian with an axis each become both meridians', async () => {
    const text = csv('ID,Eye,Date,K flat,Flat axis,K steep,Steep axis', eyes, (eye) => [
      ...k(eye),
      eye.flat.toFixed(2),
      eye.axis,
      eye.steep.toFixed(2),
      eye.steepAxis,
    ]);
    const { plan } = await proposedFor({ 'list.csv': list, 'k.csv': text });
    expect(mappingOf(plan, 1)).toMatchObject({
      k1: 'K flat',
      k1_axis: 'Flat axis',
      k2: 'K steep',
      k2_axis: 'Steep axis',
    });
  });

  it('radii are told by their size, whether or not a unit is written', async () => {
    const text = csv('ID,Eye,Date,R1 (mm),A1,R2 (mm),A2', eyes, (eye) => [
      ...k(eye),
      (337.5 / eye.flat).toFixed(2),
      eye.axis,
      (337.5 / eye.steep).toFixed(2),
      eye.steepAxis,
    ]);
    const { plan } = await proposedFor({ 'list.csv': list, 'k.csv': text });
    const radii = plan?.sources[1]?.blocks[0]?.columns
      .filter(({ field }) => /^k\d$/.test(field))
      .map(({ field, unit }) => [field, unit]);
    expect(radii).toEqual([
      ['k1', 'mm'],
      ['k2', 'mm'],
    ]);
  });
});

describe('rows above and below the headers', () => {
  it('titles above, units below, and a separator line are seen', async () => {
    const body = keratometer(eyes).replace('\n', '\n,,yyyy-mm-dd,D,deg,D,deg\n');
    const { plan, text } = await proposedFor({
      'list.csv': list,
      'k.csv': `Keratometer\nall examinations, in dioptres\n${body}`,
    });
    expect(plan?.sources[1]?.reading).toMatchObject({ header_row: 3, delimiter: 'comma' });
    expect(mappingOf(plan, 1)).toMatchObject({ k1: 'K1', k2_axis: 'A2' });
    const files = { 'list.csv': list, 'k.csv': `Keratometer\nall examinations, in dioptres\n${body}` };
    expect((await auditOf(text, files)).derived.tables.books[1]).toMatchObject({ read: 12, used: 12 });
  });

  it('a file without headers is said to have none', async () => {
    await expect(proposedFor({ 'list.csv': 'Q1,1,20.5\nQ2,2,21.0\nQ3,1,22.5\n' })).rejects.toThrow('header-missing');
  });
});

describe('visits', () => {
  const exam = (eye: Eye, label: string, days: number) =>
    [eye.patient, letter(eye), later(eye.operated, days), label, ...refraction(eye)].join(',');

  it('are those that the labels of a column name', async () => {
    const rows = eyes.flatMap((eye) => [
      exam(eye, 'preop', -20),
      exam(eye, '1M', 31),
      exam(eye, '4w', 29),
      exam(eye, '3 months', 92),
      exam(eye, 'extra', 50),
    ]);
    const text = `ID,Eye,Date,Visit,Sph,Cyl,Axis\n${rows.join('\n')}\n`;
    const { plan, doubts } = await proposedFor({ 'list.csv': list, 'lane.csv': text });
    expect(plan?.follow_up.before.labels).toEqual(['preop']);
    expect(plan?.follow_up.visits.map(({ name, labels }) => [name, labels])).toEqual([
      ['4 weeks', ['4w']],
      ['1 month', ['1M']],
      ['3 months', ['3 months']],
    ]);
    expect(doubts).toContain('visit labels');
    expect(doubts).toContain('outcome');
  });

  it('are those that the days show, where nothing names them', async () => {
    const at = [1, 8, 30, 95, 370];
    const rows = eyes.flatMap((eye) =>
      at.map((days) => [eye.patient, letter(eye), later(eye.operated, days), ...refraction(eye)].join(',')),
    );
    const { plan } = await proposedFor({
      'list.csv': list,
      'lane.csv': `ID,Eye,Date,Sph,Cyl,Axis\n${rows.join('\n')}\n`,
    });
    expect(plan?.follow_up.visits.map(({ name }) => name)).toEqual([
      '1 day',
      '1 week',
      '1 month',
      '3 months',
      '1 year',
    ]);
    for (const [i, { days = [0, 0] }] of (plan?.follow_up.visits ?? []).entries()) {
      expect(at[i]).toBeGreaterThanOrEqual(days[0]);
      expect(at[i]).toBeLessThanOrEqual(days[1]);
    }
    expect(plan?.follow_up.outcome).toEqual(['3 months', '1 month']);
  });

  it('days from surgery serve where dates were taken out', async () => {
    const rows = eyes.map((eye) => [eye.patient, letter(eye), 33, ...refraction(eye)].join(','));
    const years = csv('ID,Eye,Surgery year,Lens', eyes, (eye) => [eye.patient, letter(eye), 2025, 'A1']);
    const { plan } = await proposedFor({
      'list.csv': years,
      'lane.csv': `ID,Eye,Days,Sph,Cyl,Axis\n${rows.join('\n')}\n`,
    });
    expect(mappingOf(plan, 1)).toMatchObject({ days: 'Days', sphere: 'Sph' });
    expect(plan?.follow_up.visits.map(({ name }) => name)).toEqual(['1 month']);
    expect(plan?.period).toEqual({ from: '2025', to: '2025' });
  });
});

describe('headers and cells that disagree', () => {
  const dated = (eye: Eye) => [eye.patient, letter(eye), later(eye.operated, 30)];

  it('cells win over the headers of cylinder and axis, and it is said', async () => {
    const text = csv('ID,Eye,Date,Sph,Axis,Cyl', eyes, (eye) => [
      ...dated(eye),
      eye.sphere.toFixed(2),
      eye.cylinder.toFixed(2),
      eye.axis,
    ]);
    const { plan, doubts } = await proposedFor({ 'list.csv': list, 'lane.csv': text });
    expect(mappingOf(plan, 1)).toMatchObject({ sphere: 'Sph', cylinder: 'Axis', axis: 'Cyl' });
    expect(doubts).toEqual(expect.arrayContaining(['header against cells: Axis', 'header against cells: Cyl']));
  });

  it('columns without a known header are filled by their cells, and marked', async () => {
    const text = csv('ID,col2,when seen by us,x1,x2,x3', eyes, (eye) => [
      ...dated(eye),
      eye.sphere.toFixed(2),
      eye.cylinder.toFixed(2),
      eye.axis,
    ]);
    const { plan, doubts } = await proposedFor({ 'list.csv': list, 'lane.csv': text });
    expect(mappingOf(plan, 1)).toMatchObject({ exam_date: 'when seen by us', cylinder: 'x2' });
    expect(doubts).toEqual(expect.arrayContaining(['by cells: col2', 'by cells: when seen by us', 'by cells: x2']));
  });

  it('a column without a header is named by its number', async () => {
    const text = csv('ID,Eye,Date,Sph,,Axis', eyes, (eye) => [...dated(eye), ...refraction(eye)]);
    const { plan } = await proposedFor({ 'list.csv': list, 'lane.csv': text });
    expect(plan?.sources[1]?.blocks[0]?.columns.find(({ field }) => field === 'cylinder')).toMatchObject({
      position: 5,
    });
  });

  it('a file that names no patient stands as a comment, with its headers', async () => {
    const { text, plan } = await proposedFor({ 'list.csv': list, 'odd.csv': 'Colour,Size\nred,1\nblue,2\n' });
    expect(plan?.sources).toHaveLength(1);
    expect(text).toContain('# - file: odd.csv');
    expect(text).toContain('Colour, Size');
  });
});

// Worked on paper: a sphere without its cylinder is left, so that the acuity alone is taken as from before; one row an
// eye without an operation then makes it the outcome, beside a file whose header names a month.
it('rows taken as outcomes beside a file that names its visit: both visits are declared', async () => {
  const undated = ['Patient;Eye;BCVA;1 month sphere', 'P1;R;6/6;-0.50', 'P2;R;6/9;+0.25', 'P3;L;6/6;0.00'];
  const monthly = ['Patient;Eye;1 month BCVA', 'P1;R;6/6', 'P2;R;6/9', 'P3;L;6/6'];
  const { text, faults } = await proposedFor({ 'a.csv': undated.join('\n'), 'b.csv': monthly.join('\n') });
  expect(faults).toEqual([]);
  expect(text).toContain('- { name: after surgery');
  expect(text).toContain('- { name: 1 month');
});
