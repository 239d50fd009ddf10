import { describe, expect, it } from 'vitest';
import type { Choice } from '../../src/propose/choices.js';
import type { Plan } from '../../src/records/plan.js';
import { clinic, csv, type Eye, keratometer, later, letter, theatreList } from '../propose/clinic.js';
import { answering, type Files, outcomeOf, proposedFor } from '../propose/proposed.js';
import { auditOf } from '../whole/audit.js';

const eyes = clinic(24);
const list = theatreList(eyes);
const base = (eye: Eye) => [eye.patient, letter(eye), later(eye.operated, 30)];

/** The list without the refraction aimed at. */
const aimless = csv('ID,Eye,Op date,Lens', eyes, (eye) => [eye.patient, letter(eye), eye.operated, 'A1']);

/** The column of a field in the last source. */
function column(plan: Plan | undefined, field: string) {
  return plan?.sources
    .at(-1)
    ?.blocks.flatMap(({ columns }) => columns)
    .find((one) => one.field === field);
}

/** The one choice that comes up, what is said for its options, and what the data settle. */
async function asked(
  files: Files,
): Promise<{ kind: string; likelier: string | undefined; evidence: Record<string, string> }> {
  const choices: Choice[] = [];
  await proposedFor(files, { ask: async (choice) => void choices.push(choice) });
  const [only, ...others] = choices;
  if (!only || others.length > 0)
    throw new RangeError(`asked ${choices.length} times: ${choices.map(({ kind }) => kind)}`);
  const evidence = Object.fromEntries(only.options.map((option) => [option.value, option.evidence]));
  return { kind: only.kind, likelier: only.likelier, evidence };
}

describe('minus or plus', () => {
  const header = 'ID,Eye,Date,Sph,Cyl,Axis';
  const minus = csv(header, eyes, (eye) => [...base(eye), eye.sphere, -eye.cylinder, eye.axis]);
  // The same refractions, transposed by hand: sphere + cylinder, the cylinder without its sign, the axis turned by 90.
  const plus = csv(header, eyes, (eye) => [...base(eye), eye.sphere + eye.cylinder, -eye.cylinder, eye.steepAxis]);
  const kerato = keratometer(eyes);

  // The axis of a plus cylinder is the steep meridian: definition of the power cross.
  it('is told by the keratometer', async () => {
    const ofMinus = await asked({ 'list.csv': aimless, 'k.csv': kerato, 'lane.csv': minus });
    expect(ofMinus).toMatchObject({ kind: 'notation', likelier: 'minus' });
    expect(ofMinus.evidence).toEqual({
      minus: "fits the keratometer's axis in 100 % of 24 eyes",
      plus: "fits the keratometer's axis in 0 % of 24 eyes",
    });
    expect(await asked({ 'list.csv': aimless, 'k.csv': kerato, 'lane.csv': plus })).toMatchObject({ likelier: 'plus' });
  });

  it('is told by a spherical equivalent beside it, before anything else', async () => {
    const text = csv(`${header},SE`, eyes, (eye) => [
      ...base(eye),
      eye.sphere,
      -eye.cylinder,
      eye.axis,
      eye.sphere + eye.cylinder / 2,
    ]);
    const { likelier, evidence } = await asked({ 'list.csv': list, 'k.csv': kerato, 'lane.csv': text });
    expect(likelier).toBe('minus');
    expect(evidence.minus).toBe('gives the spherical equivalent beside it in 100 % of 24 rows');
  });

  it('is told by the refraction aimed at, where there is no keratometer', async () => {
    expect(await asked({ 'list.csv': list, 'lane.csv': minus })).toMatchObject({ likelier: 'minus' });
    expect(await asked({ 'list.csv': list, 'lane.csv': plus })).toMatchObject({ likelier: 'plus' });
  });

  it('both readings of the same eyes give the same results', async () => {
    const means = [];
    for (const lane of [minus, plus]) {
      const files = { 'list.csv': list, 'k.csv': kerato, 'lane.csv': lane };
      const { results } = await auditOf((await proposedFor(files)).text, files);
      means.push(results.get('refractive_cylinder_after', 'all', 'centroid_x').value);
    }
    expect(means[0]).toBe(means[1]);
    expect(means[0]).not.toBe(0);
  });

  it('unasked the likelier is taken, and marked', async () => {
    const { plan, doubts } = await proposedFor({ 'list.csv': list, 'k.csv': kerato, 'lane.csv': minus });
    expect(column(plan, 'cylinder')?.notation).toBe('minus');
    expect(doubts).toContain('choice taken: Cyl');
  });

  it('an answer wins, and leaves no doubt', async () => {
    const ask = answering({ notation: 'plus' });
    const { plan, doubts } = await proposedFor({ 'list.csv': list, 'k.csv': kerato, 'lane.csv': minus }, { ask });
    expect(column(plan, 'cylinder')?.notation).toBe('plus');
    expect(doubts).not.toContain('choice taken: Cyl');
  });

  it('where nothing tells, the line stays a comment and a run stops', async () => {
    const { text, faults, open } = await proposedFor({ 'list.csv': aimless, 'lane.csv': minus });
    expect(open).toEqual(['notation']);
    expect(text).toContain('# cylinder: { column: Cyl, notation: minus }');
    expect(text).toContain('# cylinder: { column: Cyl, notation: plus }');
    expect(faults.join()).toMatch(/sphere.*cylinder/);
  });

  it.each([
    ['signs', csv(header, eyes, (eye) => [...base(eye), eye.sphere, eye.cylinder, eye.axis]), 'signed'],
    ['the header', minus.replace('Cyl', '-Cyl'), 'minus'],
    ['the header', plus.replace('Cyl', 'Cyl (+)'), 'plus'],
  ])('is not asked where %s tell it', async (_, lane, notation) => {
    const { plan } = await proposedFor({ 'list.csv': list, 'lane.csv': lane }, { ask: answering({}) });
    expect(column(plan, 'cylinder')?.notation).toBe(notation);
  });

  it('is asked of refractions in one cell, too', async () => {
    const text = csv('ID,Eye,Date,Refraction', eyes, (eye) => [
      ...base(eye),
      `${eye.sphere.toFixed(2)} ${(-eye.cylinder).toFixed(2)} x ${eye.axis}`,
    ]);
    const { kind, likelier } = await asked({ 'list.csv': aimless, 'k.csv': kerato, 'lane.csv': text });
    expect([kind, likelier]).toEqual(['notation', 'minus']);
  });
});

describe('day first or month first', () => {
  /** Working days on which day and month may be exchanged. */
  const days = Array.from({ length: 365 }, (_, i) => later('2025-01-01', i)).filter((day) => {
    const [, month = 0, date = 0] = day.split('-').map(Number);
    const weekday = new Date(`${day}T00:00:00Z`).getUTCDay();
    return date <= 12 && date !== month && weekday > 0 && weekday < 6;
  });
  const written = (day: string, order: 'dmy' | 'mdy'): string => {
    const [year, month, date] = day.split('-');
    return order === 'dmy' ? `${date}/${month}/${year}` : `${month}/${date}/${year}`;
  };
  const operations = (order: 'dmy' | 'mdy', shown = days) =>
    `ID,Eye,Op date,Lens\n${shown.map((day, at) => `Q${at},R,${written(day, order)},A1`).join('\n')}\n`;

  it.each([
    ['dmy', 'day-first'],
    ['mdy', 'month-first'],
  ] as const)('is told by weekends: %s', async (order, likelier) => {
    const found = await asked({ 'list.csv': operations(order) });
    expect(found).toMatchObject({ kind: 'date-order', likelier });
    expect(found.evidence[likelier]).toBe(`puts 0 of ${days.length} dates on a weekend`);
  });

  it('is told by the other files, where weekends do not', async () => {
    const lane = 'ID,Eye,Date,BCVA\nQ0,R,25/03/2025,6/6\nQ1,R,26/03/2025,6/9\n';
    const found = await asked({ 'list.csv': operations('dmy', days.slice(0, 3)), 'lane.csv': lane });
    expect(found).toMatchObject({ kind: 'date-order', likelier: 'day-first' });
    expect(found.evidence['day-first']).toContain('the other files are written so');
  });

  it('where nothing tells, the line stays a comment and a run stops', async () => {
    const files = { 'list.csv': operations('dmy', days.slice(0, 3)) };
    const { text, open } = await proposedFor(files);
    expect(open).toEqual(['date-order']);
    expect(text).toContain('# date_order: day-first');
    await expect(auditOf(text, files)).rejects.toThrow('date-order-open');
  });

  it('an answer is written down, and the run reads by it', async () => {
    const files = { 'list.csv': operations('dmy', days.slice(0, 3)) };
    const { text, plan } = await proposedFor(files, { ask: answering({ 'date-order': 'month-first' }) });
    expect(plan?.sources[0]?.reading.date_order).toBe('month-first');
    expect((await auditOf(text, files)).raw[0]?.read.dateOrder).toBe('month-first');
  });
});

describe('decimal or logMAR', () => {
  const corrected = ['1.0', '0.8', '0.9', '1.25', '0.63', '0.7'];
  const uncorrected = ['0.5', '0.63', '0.4', '1.0', '0.3', '0.6'];
  const lane = (udva: readonly string[], cdva: readonly string[], header = 'UCVA,BCVA') =>
    csv(`ID,Eye,Date,${header}`, eyes, (eye, at) => [...base(eye), udva[at % 6] ?? '', cdva[at % 6] ?? '']);

  it('is told by which of corrected and uncorrected is the larger number', async () => {
    const decimal = await asked({ 'list.csv': list, 'lane.csv': lane(uncorrected, corrected) });
    expect(decimal).toMatchObject({ kind: 'acuity-scale', likelier: 'decimal' });
    expect(decimal.evidence).toEqual({
      decimal: 'corrected is the larger number in 100 % of 24 rows',
      logmar: 'corrected is the smaller number in 0 % of 24 rows',
    });
    expect(
      await asked({
        'list.csv': list,
        'lane.csv': lane(['0.4', '0.5', '0.3', '0.6', '0.8', '0.5'], ['0.1', '0.2', '0.05', '0.2', '0.3', '0.1']),
      }),
    ).toMatchObject({ likelier: 'logmar' });
  });

  it('is told by how well most eyes see, where one column stands alone', async () => {
    const one = csv('ID,Eye,Date,BCVA', eyes, (eye, at) => [...base(eye), corrected[at % 6] ?? '']);
    expect(await asked({ 'list.csv': list, 'lane.csv': one })).toMatchObject({ likelier: 'decimal' });
  });

  it.each([
    ['a negative number', 'UCVA,BCVA', ['0.1', '-0.1'], 'logmar'],
    ['letters of a chart', 'UCVA,BCVA', ['70', '85'], 'letters'],
    ['the header', 'UCVA logMAR,BCVA logMAR', ['0.1', '0.3'], 'logmar'],
  ])('is not asked where %s tells it', async (_, header, cells, scale) => {
    const all = Array.from({ length: 6 }, (__, at) => cells[at % 2] as string);
    const { plan } = await proposedFor(
      { 'list.csv': list, 'lane.csv': lane(all, all, header) },
      { ask: answering({}) },
    );
    expect([column(plan, 'udva')?.numbers, column(plan, 'cdva')?.numbers]).toEqual([scale, scale]);
  });

  it('fractions need no scale', async () => {
    const all = ['6/6', '6/9', '20/40', 'CF', '6/12', '6/5'];
    const { plan } = await proposedFor({ 'list.csv': list, 'lane.csv': lane(all, all) }, { ask: answering({}) });
    expect(column(plan, 'cdva')?.numbers).toBeUndefined();
  });

  it('one impossible number does not hide what the others are', async () => {
    const text = lane(uncorrected, corrected).replace('1.25', '10');
    expect(await asked({ 'list.csv': list, 'lane.csv': text })).toMatchObject({ likelier: 'decimal' });
  });

  it('where nothing tells, the run stops and asks', async () => {
    const middling = ['0.4', '0.5', '0.3', '0.6', '0.5', '0.4'];
    const files = {
      'list.csv': list,
      'lane.csv': csv('ID,Eye,Date,BCVA', eyes, (eye, at) => [...base(eye), middling[at % 6] ?? '']),
    };
    const { text, open, faults } = await proposedFor(files);
    expect(open).toEqual(['acuity-scale']);
    expect(faults).toEqual([]);
    await expect(auditOf(text, files)).rejects.toThrow('acuity-scale-open');
  });
});

describe('which code is which eye', () => {
  const coded = (right: string, left: string) =>
    csv('ID,Eye,Date,BCVA', eyes, (eye) => [
      eye.patient,
      eye.side === 'right' ? right : left,
      later(eye.operated, 30),
      '6/9',
    ]);

  it.each([
    ['D', 'S'],
    ['D', 'G'],
    ['D', 'I'],
    ['dx', 'sin'],
    ['re.', 'li.'],
  ])('is known of %s and %s as a pair', async (right, left) => {
    const files = { 'list.csv': list, 'lane.csv': coded(right, left) };
    const { text, plan } = await proposedFor(files, { ask: answering({}) });
    // What is known to every export needs no words.
    expect({ right: [right], left: [left] }).toMatchObject(column(plan, 'eye')?.words ?? {});
    expect((await auditOf(text, files)).derived.tables.books[1]).toMatchObject({ read: 24, used: 24 });
  });

  it.each([
    ['1', '2', 'right'],
    ['2', '1', 'left'],
    ['A', 'B', 'right'],
  ])('is told of %s (right) and %s by patients of whom other files know one eye', async (right, left, first) => {
    const files = { 'list.csv': list, 'lane.csv': coded(right, left) };
    const found = await asked(files);
    expect(found).toMatchObject({ kind: 'eye-code', likelier: first });
    expect(found.evidence[first]).toBe('fits 24 of 24 patients of whom other files know one eye');
    expect(column((await proposedFor(files)).plan, 'eye')?.words).toEqual({ right: [right], left: [left] });
  });

  it('where nothing tells, the line stays a comment and a run stops', async () => {
    const coded12 = csv('ID,Eye,Op date,Lens', eyes, (eye) => [
      eye.patient,
      eye.side === 'right' ? 1 : 2,
      eye.operated,
      'A1',
    ]);
    const { text, faults, open } = await proposedFor({ 'list.csv': coded12 });
    expect(open).toEqual(['eye-code']);
    expect(text).toContain('# eye: { column: Eye, words: { right: [1], left: [2] } }');
    expect(faults.join()).toContain('eye');
  });
});

describe('blank cells', () => {
  const header = 'ID,Eye,Date,Sph,Cyl,Axis';
  const lane = (
    sphere: (eye: Eye, at: number) => string | number,
    cylinder = (eye: Eye): string | number => eye.cylinder,
  ) =>
    csv(header, eyes, (eye, at) => [
      ...base(eye),
      sphere(eye, at),
      cylinder(eye),
      cylinder(eye) === '' ? '' : eye.axis,
    ]);
  const blanks = (plan: Plan | undefined) => plan?.sources.at(-1)?.blocks[0]?.blank_means;

  it('a sphere is zero where zero is written nowhere else', async () => {
    const text = lane((_, at) => (at % 4 === 0 ? '' : at % 2 === 0 ? '+0.25' : '-0.25'));
    const found = await asked({ 'list.csv': list, 'lane.csv': text });
    expect(found).toMatchObject({ kind: 'blank-sphere', likelier: '0' });
    expect(found.evidence['0']).toBe('zero is written 0 times, its neighbours ±0.25 18 times');
    const { plan, doubts } = await proposedFor({ 'list.csv': list, 'lane.csv': text });
    expect(blanks(plan)).toEqual({ sphere: 0 });
    expect(doubts).toContain('choice taken: Sph');
  });

  it('a sphere stays missing where zeros are written too', async () => {
    const text = lane((_, at) => (at % 8 === 0 ? '' : at % 2 === 0 ? '0.00' : '-0.25'));
    const { plan, text: yaml, open } = await proposedFor({ 'list.csv': list, 'lane.csv': text });
    expect(blanks(plan)).toEqual({});
    expect(open).toEqual(['blank-sphere']);
    expect(yaml).toContain('# sphere: 0');
  });

  it('one slip is no habit, and is not asked about', async () => {
    const text = lane((eye, at) => (at === 5 ? '' : eye.sphere));
    const { plan } = await proposedFor({ 'list.csv': list, 'lane.csv': text }, { ask: answering({}) });
    expect(blanks(plan)).toEqual({});
  });

  it('a cylinder is zero where its axis is blank, too', async () => {
    const text = csv(header, eyes, (eye, at) => [
      ...base(eye),
      eye.sphere,
      ...(at % 4 === 0 ? ['', ''] : [eye.cylinder, eye.axis]),
    ]);
    const { plan } = await proposedFor({ 'list.csv': list, 'lane.csv': text });
    expect(blanks(plan)).toEqual({ cylinder: 0 });
  });

  it.each([
    ['says none nowhere', ['', '', '', '', '', 'PCR'], 'none', true],
    ['says none elsewhere', ['none', '', '', '', '', 'PCR'], undefined, false],
  ])('a complication column that %s', async (_, cells, meaning, isAsked) => {
    const text = csv('ID,Eye,Op date,Lens,Complications', eyes, (eye, at) => [
      eye.patient,
      letter(eye),
      eye.operated,
      'A1',
      cells[at % 6] ?? '',
    ]);
    const choices: Choice[] = [];
    const ask = async (choice: Choice) => void choices.push(choice);
    const { plan } = await proposedFor({ 'list.csv': text }, { ask });
    expect(choices.map(({ kind }) => kind)).toEqual(isAsked ? ['blank-complication'] : []);
    expect(blanks(plan)?.complication).toBe(meaning);
  });

  it('a lens without cylinder and axis is not toric', async () => {
    const text = csv('ID,Eye,Op date,Lens cyl,Lens axis', eyes, (eye, at) => [
      eye.patient,
      letter(eye),
      eye.operated,
      ...(at % 3 === 0 ? ['1.50', 90] : ['', '']),
    ]);
    const { plan, doubts } = await proposedFor({ 'list.csv': text });
    expect(blanks(plan)).toEqual({ lens_cylinder: 0 });
    expect(doubts).toContain('blank lens cylinder: Lens cyl');
  });
});

describe('what no export says', () => {
  const operations = (header: string, cell: (at: number) => string) =>
    csv(`ID,Eye,Op date,${header}`, eyes, (eye, at) => [eye.patient, letter(eye), eye.operated, cell(at)]);

  it('from where an incision’s hour was read stays open; an answer is written down', async () => {
    const files = { 'list.csv': operations('Incision', (at) => ['9:30', '10', '11:15'][at % 3] ?? '') };
    const { text, open, faults } = await proposedFor(files);
    expect(open).toEqual(['clock-view']);
    expect(faults).toEqual([]);
    expect(text).toContain('# incision_axis: { column: Incision, unit: clock, view: facing }');
    const { plan } = await proposedFor(files, { ask: answering({ 'clock-view': 'surgeon-superior' }) });
    expect(column(plan, 'incision_axis')).toMatchObject({ unit: 'clock', view: 'surgeon-superior' });
  });

  it('the plane of a predicted cylinder stays open, and its axis with it', async () => {
    const text = csv('ID,Eye,Op date,Pred cyl,Pred axis', eyes, (eye) => [
      eye.patient,
      letter(eye),
      eye.operated,
      '0.25',
      '90',
    ]);
    const { plan, open } = await proposedFor({ 'list.csv': text });
    expect(open).toEqual(['residual-form']);
    expect(column(plan, 'predicted_axis')).toBeUndefined();
    const answered = await proposedFor({ 'list.csv': text }, { ask: answering({ 'residual-form': 'spectacle plus' }) });
    expect(column(answered.plan, 'predicted_cylinder')).toMatchObject({ plane: 'spectacle', notation: 'plus' });
    expect(column(answered.plan, 'predicted_axis')).toMatchObject({ column: 'Pred axis' });
  });

  it('which formula counts is asked', async () => {
    const predictions = csv('ID,Eye,Haigis,SRK/T', eyes, (eye) => [eye.patient, letter(eye), '-0.2', '-0.3']);
    const files = { 'list.csv': aimless, 'pred.csv': predictions };
    expect((await proposedFor(files)).faults.join()).toContain('several formulas predict');
    const { plan } = await proposedFor(files, { ask: answering({ 'primary-formula': 'Haigis' }) });
    expect(plan?.predictions.primary_formula).toBe('Haigis');
  });

  it('numbers for a sex stay a comment', async () => {
    const files = { 'list.csv': operations('Sex', (at) => String(at % 2)) };
    const { text, plan } = await proposedFor(files);
    expect(column(plan, 'sex')).toBeUndefined();
    expect(text).toContain('# sex: { column: Sex, words: { F: [0], M: [1] } }');
  });

  it('an acuity that may be corrected or not is left, with what to write', async () => {
    const lane = csv('ID,Eye,Date,VA', eyes, (eye) => [...base(eye), '6/9']);
    const { text } = await proposedFor({ 'list.csv': list, 'lane.csv': lane });
    expect(text).toContain('"VA": an acuity; map it to cdva if it is corrected, to udva if it is not');
  });

  it('an answer may leave a choice open', async () => {
    const lane = csv('ID,Eye,Date,Sph,Cyl,Axis', eyes, (eye) => [...base(eye), eye.sphere, -eye.cylinder, eye.axis]);
    const { open, text } = await proposedFor(
      { 'list.csv': list, 'lane.csv': lane },
      { ask: answering({ notation: '' }) },
    );
    expect(open).toEqual(['notation']);
    expect(text).toContain('# cylinder: { column: Cyl, notation: minus }');
  });
});

describe('what a run would stop at all the same', () => {
  it('is told before the run: a unit in a header that is not the one of its field', async () => {
    const text = csv('ID,Eye,Op date,Lens,Operating time (s)', eyes, (eye, at) => [
      eye.patient,
      letter(eye),
      eye.operated,
      'A1',
      300 + at,
    ]);
    const outcome = await outcomeOf({ 'list.csv': text });
    if (outcome.kind !== 'proposed') throw new RangeError(outcome.kind);
    expect(outcome.ahead.flatMap(({ findings }) => findings.map(({ rule, column: header }) => [rule, header]))).toEqual(
      [['unit-differs', 'Operating time (s)']],
    );
    await expect(auditOf(outcome.proposal.text, { 'list.csv': text })).rejects.toThrow('unit-differs');
  });

  it('is nothing for exports that run', async () => {
    const outcome = await outcomeOf({ 'list.csv': list, 'k.csv': keratometer(eyes) });
    expect(outcome).toMatchObject({ kind: 'proposed', ahead: [] });
  });
});
