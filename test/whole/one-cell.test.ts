// One cell of the sample changes: what it enters moves by the amount worked out here, and nothing else moves.
import { describe, expect, it } from 'vitest';
import { atCornea } from '../../sample-exports/generator/devices.js';
import { excess } from '../../sample-exports/generator/power-matrix.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Kind } from '../../src/records/canonical.js';
import type { ResultRow } from '../../src/records/result.js';
import { resultKey } from '../../src/results/index.js';
import { auditOfExports, columnIndex, type Exports, sampleExports, sheetNamed } from './exports.js';

const original = await auditOfExports(sampleExports());
const { tables, assembly, membership } = original.derived;

/** Where a measurement of an eye stands: its file and row. */
function placeOf(kind: Kind, at: 'before' | 'outcome', eye: number): { file: string; row: number } | undefined {
  const row = assembly[at][kind][eye] as number;
  if (row < 0) return undefined;
  const table = tables.measurements[kind];
  const file = tables.files[integersOf(table, 'source')[row] as number] as string;
  return { file, row: integersOf(table, 'row')[row] as number };
}

const analysed = analysedIn(membership.astigmatism);
const distance = analysedIn(membership.uncorrected);
const corrected = numbersOf(original.derived.eyes, 'cdva');
const cylinder = numbersOf(original.derived.eyes, 'refractive_cylinder_after_recorded');
const isManual = (eye: number): boolean => original.derived.cohorts?.code[eye] === 1;

/** An eye of the northern lane with everything that is changed below; the first one in the order of codes. */
const chosen = [...analysed.keys()].findIndex(
  (eye) =>
    analysed[eye] === 1 &&
    distance[eye] === 1 &&
    isManual(eye) &&
    (cylinder[eye] as number) > 0.5 &&
    (corrected[eye] as number) >= 0 &&
    placeOf('refractions', 'outcome', eye)?.file === 'lane-north.csv' &&
    placeOf('corrected', 'outcome', eye)?.row === placeOf('refractions', 'outcome', eye)?.row &&
    placeOf('keratometries', 'before', eye)?.file === 'keratometer.csv',
);
const after = placeOf('refractions', 'outcome', chosen) as { file: string; row: number };
const before = placeOf('keratometries', 'before', chosen) as { file: string; row: number };
const operation = integersOf(tables.eyes, 'row')[chosen] as number;

const number = (text: string): number => Number(text.replace(',', '.'));
const german = (value: number): string => value.toFixed(2).replace('.', ',');

interface Change {
  file: string;
  row: number;
  column: string;
  to(cell: string): string;
}

const audits = new Map<Change, ReturnType<typeof auditWith>>();

/** The audit with one cell changed, made once for each change. */
function changed(change: Change): ReturnType<typeof auditWith> {
  const made = audits.get(change) ?? auditWith(change);
  audits.set(change, made);
  return made;
}

/** How far a value moved when one cell changed, and in which measures anything moved at all. */
async function auditWith({ file, row, column, to }: Change) {
  const exports: Exports = sampleExports();
  const sheet = sheetNamed(exports, file);
  const cells = sheet.rows[row] as string[];
  const at = columnIndex(sheet, column);
  const [was, is] = [cells[at] as string, to(cells[at] as string)];
  expect(is).not.toBe(was);
  cells[at] = is;
  const audit = await auditOfExports(exports);
  const former = new Map(original.rows.map((one) => [resultKey(one), JSON.stringify(one)]));
  const moved = (rows: readonly ResultRow[]) =>
    rows.filter((one) => former.get(resultKey(one)) !== JSON.stringify(one));
  const value = (of: typeof original, key: string): ResultRow =>
    of.results.get(...(key.split('|') as [string, string, string]));
  return {
    was,
    is,
    by: (key: string): number => (value(audit, key).value as number) - (value(original, key).value as number),
    n: (key: string): number => value(original, key).n,
    measures: new Set(moved(audit.rows).map(({ measure }) => measure)),
    moved: moved(audit.rows),
  };
}

const groups = ['all', 'technique=manual'] as const;

describe('the sphere after surgery', () => {
  const change: Change = {
    ...after,
    column: 'Sphäre',
    to: (cell) => `+${german(number(cell) + 0.25)}`.replace('+-', '-'),
  };

  it('moves every mean error by its quarter over the eyes', async () => {
    const { by, n } = await changed(change);
    for (const measure of ['prediction_error', 'target_error', 'prediction_error:second', 'spherical_equivalent']) {
      for (const group of groups)
        expect(by(`${measure}|${group}|mean`), measure).toBeCloseTo(0.25 / n(`${measure}|${group}|mean`), 12);
      expect(by(`${measure}|technique=laser-assisted|mean`), measure).toBe(0);
    }
  });

  it('moves the cylinder at the cornea by what vergence makes of it', async () => {
    const { by, n, was } = await changed(change);
    const cells = sheetNamed(sampleExports(), after.file).rows[after.row] as string[];
    const [, , , , cyl = '', axis = ''] = cells;
    // The generator's power matrices: more correcting power is less of the eye's own, so the excess changes sign.
    const vector = (sphere: number) => {
      const f = atCornea({ sphere, cylinder: number(cyl), axis: Number(axis) || 180 }, 12);
      return [-excess(f, 0), -excess(f, 45)] as const;
    };
    const [from, to] = [vector(number(was)), vector(number(was) + 0.25)];
    for (const [part, statistic] of ['centroid_x', 'centroid_y'].entries()) {
      const key = `refractive_cylinder_after|all|${statistic}`;
      expect(by(key)).toBeCloseTo(((to[part] as number) - (from[part] as number)) / n(key), 12);
    }
  });

  it('moves nothing but errors, equivalents and that vector', async () => {
    const { measures } = await changed(change);
    expect([...measures].sort()).toEqual(
      [
        'prediction_error',
        'prediction_error:second',
        'prediction_error_centred',
        'refractive_cylinder_after',
        'spherical_equivalent',
        'spherical_equivalent:change',
        'spherical_equivalent:same_eyes',
        'spherical_equivalent:visit',
        'target_error',
      ].sort(),
    );
  });
});

describe('a corneal radius before surgery', () => {
  const change: Change = { ...before, column: 'R1', to: (cell) => (number(cell) + 0.05).toFixed(2) };

  it('moves the mean power by half its own change over the eyes', async () => {
    const { by, n, was, is } = await changed(change);
    const power = 337.5 / Number(is) - 337.5 / Number(was);
    for (const group of groups) {
      const key = `k_mean_before|${group}|mean`;
      expect(by(key)).toBeCloseTo(power / 2 / n(key), 12);
    }
  });

  it('moves the cornea alone, and the groups of eyes by their cornea', async () => {
    const { measures, moved } = await changed(change);
    const corneal = ['k_mean_before', 'corneal_cylinder_magnitude_before', 'corneal_cylinder_before'];
    expect([...measures]).toEqual(expect.arrayContaining(corneal));
    const byCornea = /^(k_mean|corneal_type)=|;corneal_type=/;
    const elsewhere = moved.filter(
      ({ measure, group }) => !corneal.includes(measure) && !measure.startsWith('induced_') && !byCornea.test(group),
    );
    expect(elsewhere.map(resultKey)).toEqual([]);
  });
});

describe('a corrected acuity', () => {
  const change: Change = { ...after, column: 'Visus c.c.', to: () => '1,25' };

  it('moves the mean by its logarithm over the eyes, and comes to the line 20/16', async () => {
    const { by, n, was } = await changed(change);
    const key = 'cdva|all|mean';
    expect(by(key)).toBeCloseTo((Math.log10(number(was)) - Math.log10(1.25)) / n(key), 12);
    expect(by('cdva|all|count_at_or_better_20/16')).toBe(1);
    expect(by('cdva|all|share_at_or_better_20/16')).toBeCloseTo(1 / n(key), 12);
  });

  it('moves corrected acuity, and what is measured against it, alone', async () => {
    const made = ['cdva', 'cdva_change', 'efficacy_ratio', 'safety_index'];
    expect((await changed(change)).measures).toEqual(new Set(made));
  });
});

describe('a complication', () => {
  const change: Change = {
    file: 'theatre-list.csv',
    row: operation,
    column: 'Compl',
    to: (cell) => (cell === '' ? 'PCR' : ''),
  };

  it('adds one to their number, and moves nothing else', async () => {
    const { by, n, measures } = await changed(change);
    for (const group of groups) {
      expect(by(`any_complication|${group}|count`)).toBe(1);
      expect(by(`any_complication|${group}|share`)).toBeCloseTo(1 / n(`any_complication|${group}|share`), 12);
    }
    expect(measures).toEqual(new Set(['any_complication', 'complication:posterior_capsule_rupture']));
  });
});

describe('the intended refraction', () => {
  const change: Change = {
    file: 'theatre-list.csv',
    row: operation,
    column: 'Aim',
    to: (cell) => (Number(cell) - 0.1).toFixed(2),
  };

  it('moves the error against the target up by what the aim went down, and no prediction', async () => {
    const { by, n, measures } = await changed(change);
    expect(by('target_error|all|mean')).toBeCloseTo(0.1 / n('target_error|all|mean'), 12);
    expect(measures).toEqual(new Set(['target_error']));
  });
});

describe('the technique', () => {
  const change: Change = { file: 'theatre-list.csv', row: operation, column: 'Method', to: () => 'L' };

  it('moves an eye from one cohort to the other, and nothing of all eyes', async () => {
    const { by, moved } = await changed(change);
    expect(by('eyes_operated|technique=manual|count')).toBe(-1);
    expect(by('eyes_operated|technique=laser-assisted|count')).toBe(1);
    expect(by('prediction_error|technique=manual|n')).toBe(-1);
    const ofAll = moved.filter(({ group }) => !group.includes('technique='));
    expect(ofAll.map(resultKey)).toEqual([]);
  });
});

describe('a date that leaves the window', () => {
  const [day = '', month = '', year = ''] = (sheetNamed(sampleExports(), after.file).rows[after.row]?.[2] ?? '').split(
    '.',
  );
  const change: Change = { ...after, column: 'Datum', to: () => `${day}.${month}.${Number(year) + 1}` };

  it('takes the eye from that visit; with another visit it stays, and the books balance', async () => {
    const { by } = await changed(change);
    const flow = ['not_yet_due', 'no_visit', 'not_recorded', 'set_aside', 'no_prediction', 'analysed'];
    const steps = flow.map((step) => by(`flow:refraction|all|${step}`));
    expect(steps.reduce((sum, one) => sum + one, 0)).toBe(0);
    expect(by('completeness|all|count')).toBe(by('flow:refraction|all|no_visit') === 0 ? 0 : -1);
  });
});
