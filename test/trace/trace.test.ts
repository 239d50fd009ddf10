// The trace of eyes: every number it prints is what a pocket calculator gives, and what it says an eye adds to a table
// adds up to the table.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tabulate } from '../../pipeline/6-tabulate.js';
import { findEye, traceEye } from '../../pipeline/trace.js';
import { numbersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { TraceText } from '../../src/screens/trace.js';
import { en } from '../../src/words/index.js';
import { type Audit, auditOf } from '../whole/audit.js';
import { auditText, committedFiles } from '../whole/sample.js';
import { calculated } from './calculator.js';

function tracer({ plan, raw, derived, results }: Audit): (patient: string, side: 'right' | 'left') => TraceText {
  const tables = tabulate(results, plan, en);
  return (patient, side) => {
    const eye = findEye(derived, patient, side);
    if (eye === undefined) throw new Error(`no eye ${patient} ${side}`);
    return traceEye({ derived, raw, results, tables, plan, words: en, eye }, patient, side);
  };
}

const folder = new URL('../hand-audit/', import.meta.url);
const text = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const exported = readdirSync(folder).filter((name) => name.endsWith('.csv'));
const small = await auditOf(text('audit.yaml'), Object.fromEntries(exported.map((name) => [name, text(name)])));
const large = await auditOf(auditText(), committedFiles());
const [ofSmall, ofLarge] = [tracer(small), tracer(large)];

/** A line of a block, tables by their name: their numbers follow from the others. */
const lineOf = (trace: TraceText, block: string, label: string) =>
  trace.blocks
    .find(({ title }) => title === block || title.endsWith(`, ${block}`))
    ?.lines.find((line) => line.label === label);

describe('the trace of a toric eye of the sample', () => {
  const trace = ofLarge('P1247', 'left');

  it('begins with the cells: file, row, column, text', () => {
    const [surgery] = trace.blocks;
    expect(surgery?.lines[0]?.label).toBe('theatre-list.csv row 2');
    expect(surgery?.lines[0]?.notes[0]).toContain('"Lens cyl" ‘1.50’  "Lens axis" ‘43’');
    const refraction = lineOf(trace, 'outcome, 1 month', 'refraction');
    expect(refraction?.value).toBe('lane-north.csv row 24, day 30');
    expect(refraction?.notes[0]).toBe('"Sphäre" ‘0,00’  "Zylinder" ‘-0,25’  "Achse °" ‘100’  "HSA mm" ‘12’');
  });

  // By hand: 0.00 − 0.25 = −0.25; 100 − 90 = 10; 337.5/8.19 = 41.2088, 337.5/8.41 = 40.1308, difference 1.0780;
  // −log10 0.7 = 0.1549.
  it('transposes, turns radii into powers and acuities into logMAR, with their numbers', () => {
    expect(lineOf(trace, 'outcome, 1 month', 'refraction')?.notes[1]).toBe(
      '0.00 −0.25 × 100 in plus notation: sphere 0.00 − 0.25, axis 100 − 90: −0.25 +0.25 × 10',
    );
    expect(lineOf(trace, 'before surgery', 'keratometry')?.notes.slice(1)).toEqual([
      '337.5 / 8.19 mm = 41.209 D',
      '337.5 / 8.41 mm = 40.131 D',
      'flat 40.131 D; steep 41.209 D, meridian 30',
    ]);
    expect(lineOf(trace, 'outcome, 1 month', 'corrected acuity')?.notes[1]).toBe(
      '−log10 of decimal 0.700 = 0.155 logMAR',
    );
  });

  // By hand: −0.25/1.003 = −0.24925, 0/1 less that is 0.24925; at 10°: 0.24925 cos 20° = 0.2342, sin 20° = 0.0852.
  it('moves each meridian to the cornea and shows the vector', () => {
    const block = 'astigmatism, at the cornea';
    expect(lineOf(trace, block, 'corneal plane sphere after')).toEqual({
      label: 'corneal plane sphere after',
      value: '−0.249 D',
      notes: ['F / (1 − d F), F = sphere in plus notation, d in metres', '= −0.25 / (1 − 12 / 1000 × (−0.25))'],
    });
    expect(lineOf(trace, block, 'refractive cylinder after')).toMatchObject({
      value: '0.249 D @ 10°',
      notes: [expect.anything(), 'x = 0.249 × cos(2 × 10°) = 0.234', 'y = 0.249 × sin(2 × 10°) = 0.085'],
    });
    expect(lineOf(trace, 'toric lens', 'lens misalignment')?.notes[1]).toBe('= 38° − 43°');
  });

  it('says what is not known, where a quantity is missing', () => {
    expect(lineOf(trace, 'induced astigmatism', 'induced along incision')).toEqual({
      label: 'induced along incision',
      value: 'missing',
      notes: ['not known: induced corneal cylinder'],
    });
    // Below 0.25 D of achieved cylinder there is no best axis; nothing is unknown.
    expect(lineOf(trace, 'toric lens', 'best axis')?.notes[0]).toContain('none below 0.25 D of achieved cylinder');
  });

  it('has a block for every table of the report, and says what the eye adds', () => {
    const titles = trace.blocks.map(({ title }) => title).filter((title) => title.startsWith('adds to'));
    expect(titles).toEqual(
      tabulate(large.results, large.plan, en).map(
        ({ number, id }) => `adds to table ${number}, ${id.replaceAll('-', ' ')}`,
      ),
    );
    const error = lineOf(trace, 'refractive accuracy', 'prediction error');
    expect(error?.value).toBe('0.195 D');
    expect(error?.notes.at(-1)).toBe('counted in: ≤ 0.25 D, ≤ 0.50 D, ≤ 0.75 D, ≤ 1.00 D, ≤ 1.50 D, ≤ 2.00 D');
    const missing = lineOf(trace, 'toric alignment', 'residual at best axis');
    expect(missing?.notes).toEqual(['counted among the missing of technique=manual, all']);
  });
});

/** Workings and the values printed beside them, of one trace: scalars '= …', components 'x = … = …'. */
function workings(trace: TraceText): readonly (readonly [label: string, working: string, value: string])[] {
  return trace.blocks.flatMap(({ lines }) =>
    lines.flatMap(({ label, value, notes }) =>
      notes.flatMap((note) => {
        const component = /^[xy] = (.+) = (\S+)$/.exec(note);
        if (component) return [[label, component[1] as string, component[2] as string] as const];
        return note.startsWith('= ') ? [[label, note.slice(2), value] as const] : [];
      }),
    ),
  );
}

describe('every working of a trace', () => {
  const eyes = [
    [ofLarge, 'P1247', 'left'],
    [ofLarge, 'P1004', 'right'],
    [ofSmall, 'H2', 'right'],
    [ofSmall, 'H8', 'left'],
  ] as const;

  it.each(eyes)('gives the value beside it, to what three decimals leave: %#', (of, patient, side) => {
    const all = workings(of(patient, side));
    expect(all.length).toBeGreaterThan(15);
    for (const [label, working, value] of all) {
      if (working.includes('none')) continue;
      const shown = Number(value.replace('−', '-').replace(/[ °].*$/, ''));
      const gap = Math.abs(calculated(working) - shown);
      const circular = value.includes('°') ? Math.min(gap, 180 - gap) : gap;
      // Axes are printed in whole degrees, turns to a tenth; of quotients three decimals leave a hundredth.
      const tolerance = value.includes('°') ? 0.6 : /\//.test(working) ? 0.01 : 0.004;
      expect(circular, `${label}: ${working} = ${value}`).toBeLessThan(tolerance);
    }
  });
});

describe('what the eyes of an audit add to its tables', () => {
  const { derived, results } = small;
  const patients = [...derived.tables.patients];
  const traces = patients.flatMap((patient) =>
    (['right', 'left'] as const).flatMap((side) =>
      findEye(derived, patient, side) === undefined ? [] : [ofSmall(patient, side)],
    ),
  );
  const linesOf = (table: string, label: string) =>
    traces.flatMap((trace) => {
      const block = trace.blocks.find(({ title }) => title.endsWith(`, ${table}`));
      return block?.lines.find((line) => line.label === label) ?? [];
    });

  it.each([
    ['refractive accuracy', 'prediction error', 'mean', 'prediction_error'],
    ['refractive accuracy', 'target error', 'mean without sign', 'target_error'],
    ['residual cylinder', 'refractive cylinder after recorded', 'mean', 'refractive_cylinder_after_recorded'],
    ['visual acuity', 'cdva', 'mean', 'cdva'],
  ])('%s: %s sums to n times the %s', (table, label, statistic, measure) => {
    const adds = linesOf(table, label).map(({ notes }) => {
      const all = notes.find((note) => note.startsWith('all: ')) ?? '';
      const found = new RegExp(`([−\\d.]+) / (\\d+) of the ${statistic} `).exec(all);
      expect(Number(found?.[2])).toBe(results.get(measure, 'all', 'n').value);
      return Number(found?.[1]?.replace('−', '-'));
    });
    const row = results.get(measure, 'all', statistic === 'mean' ? 'mean' : 'mean_absolute');
    expect(adds.length).toBe(row.n);
    expect(adds.reduce((sum, one) => sum + one, 0)).toBeCloseTo((row.value as number) * row.n, 2);
  });

  it('counts each share as often as its table does', () => {
    const lines = linesOf('refractive accuracy', 'prediction error');
    for (const limit of ['0.25', '0.50', '0.75', '1.00']) {
      const counted = lines.filter(({ notes }) =>
        notes.some((note) => note.startsWith('counted in') && note.includes(`≤ ${limit} D`)),
      );
      expect(counted.length).toBe(results.get('prediction_error', 'all', `count_within_${limit}`).value);
    }
  });

  it('adds nothing where the eye is not analysed', () => {
    const analysed = analysedIn(derived.membership.refraction);
    const eye = [...analysed.keys()].find(
      (one) => !analysed[one] && !Number.isNaN(numbersOf(derived.eyes, 'axial_length')[one]),
    ) as number;
    const code = (derived.eyes.column('patient') as Int32Array)[eye] as number;
    const side = (derived.eyes.column('laterality') as Int32Array)[eye] === 0 ? 'right' : 'left';
    const trace = ofSmall(patients[code] as string, side);
    expect(lineOf(trace, 'refractive accuracy', 'prediction error')).toBeUndefined();
    const flow = trace.blocks.find(({ title }) => title.endsWith('eye flow'));
    expect(flow?.lines.find(({ label }) => label === 'refraction')?.value).not.toBe('counted under: analysed');
  });
});
