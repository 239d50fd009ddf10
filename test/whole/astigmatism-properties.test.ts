// What must hold for astigmatism whatever the eyes are, through the whole audit.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { numbersOf } from '../../src/columns/table.js';
import type { ResultRow } from '../../src/records/result.js';
import type { Audit } from './audit.js';
import { type ToricEye, toricAudit } from './toric-series.js';

const meridian = fc.integer({ min: 1, max: 180 });
const quarters = (min: number, max: number) => fc.integer({ min: 4 * min, max: 4 * max }).map((n) => n / 4);
const cornea = fc.tuple(quarters(40, 45), quarters(1, 3), meridian);
const eye = fc.record({
  sphere: quarters(-4, 3),
  cylinder: quarters(-3, 0),
  axis: meridian,
  before: cornea,
  after: cornea,
  incision: fc.integer({ min: 0, max: 359 }),
  label: fc.constantFrom(1.5, 3),
  intended: meridian,
  end: meridian,
  observed: meridian,
  residual: quarters(0, 1),
  residualAxis: meridian,
});
/** Eyes of a few patients, right and left. */
const series = fc
  .array(eye, { minLength: 8, maxLength: 8 })
  .map((eyes): ToricEye[] => eyes.map((one, i) => ({ ...one, patient: `P${i >> 1}`, side: i % 2 === 0 ? 'R' : 'L' })));
const runs = { seed: 7, numRuns: 5 };
const ofAstigmatism = /cylinder|induced|vector|_of_error|index|effect|torque|split|lens_|target_induced|residual/;

/** Every number of astigmatism by its key; of the strata by side only where they are asked for. */
function numbers({ rows }: Audit, leaveOut: RegExp = /^$/): ReadonlyMap<string, number | undefined> {
  const kept = rows.filter(({ measure, group }) => ofAstigmatism.test(measure) && !leaveOut.test(group));
  return new Map(kept.map((row: ResultRow) => [`${row.measure}|${row.group}|${row.statistic}`, row.value]));
}

function expectSame(
  one: ReadonlyMap<string, number | undefined>,
  other: ReadonlyMap<string, number | undefined>,
): void {
  expect([...one.keys()].sort()).toEqual([...other.keys()].sort());
  expect(one.size).toBeGreaterThan(500);
  for (const [key, value] of one) {
    const twin = other.get(key);
    if (value === undefined || twin === undefined) expect(twin, key).toBe(value);
    else expect(Math.abs(twin - value), key).toBeLessThanOrEqual(1e-7 * Math.max(1, Math.abs(value)));
  }
}

/** Groups that depend on the side: the eyes of one, or the first eye of a patient. */
const bySide = /eye=|one-eye/;

const turned = (angle: number, by: number): number => ((angle + by + 359) % 180) + 1;

it('transposition: plus notation in place of minus changes no number', async () => {
  await fc.assert(
    fc.asyncProperty(series, async (eyes) => {
      const transposed = eyes.map((one) => ({
        ...one,
        sphere: one.sphere + one.cylinder,
        cylinder: -one.cylinder,
        axis: one.axis === undefined ? undefined : turned(one.axis, 90),
      }));
      expectSame(numbers(await toricAudit(eyes)), numbers(await toricAudit(transposed)));
    }),
    runs,
  );
});

it('relabelling: other codes, another order and the other side change no pooled number, for no eye is mirrored', async () => {
  await fc.assert(
    fc.asyncProperty(series, async (eyes) => {
      const relabelled = eyes
        .map((one): ToricEye => ({ ...one, patient: `Z${one.patient}`, side: one.side === 'R' ? 'L' : 'R' }))
        .reverse();
      expectSame(numbers(await toricAudit(eyes), bySide), numbers(await toricAudit(relabelled), bySide));
    }),
    runs,
  );
});

it('rotation: all axes turned by an angle turn every centroid by it, and leave what has no meridian', async () => {
  const bySector = /incision_sector|corneal_type|eye=|comparison/;
  await fc.assert(
    fc.asyncProperty(series, fc.integer({ min: 1, max: 179 }), async (eyes, by) => {
      const turn = (of: readonly [number, number, number] | undefined) =>
        of && ([of[0], of[1], turned(of[2], by)] as const);
      const on = (angle: number | undefined) => (angle === undefined ? undefined : turned(angle, by));
      const all = eyes.map((one) => ({
        ...one,
        axis: on(one.axis),
        before: turn(one.before),
        after: turn(one.after),
        incision: ((one.incision as number) + by) % 360,
        intended: on(one.intended),
        end: on(one.end),
        observed: on(one.observed),
        residualAxis: on(one.residualAxis),
      }));
      const [first, second] = [numbers(await toricAudit(eyes), bySector), numbers(await toricAudit(all), bySector)];
      let met = 0;
      for (const [key, value] of first) {
        const [measure = '', , statistic = ''] = key.split('|');
        const twin = second.get(key);
        if (
          value === undefined ||
          twin === undefined ||
          /_ellipse_angle$|(centroid|sd)_[xy]$|covariance/.test(statistic)
        )
          continue;
        if (statistic === 'centroid_axis' && measure !== 'induced_in_incision_frame') {
          const magnitude = first.get(key.replace('centroid_axis', 'centroid_magnitude')) ?? 0;
          if (magnitude < 1e-6) continue;
          met++;
          const gap = Math.abs(twin - value - by) % 180;
          expect(Math.min(gap, 180 - gap), key).toBeLessThan(1e-5);
        } else {
          expect(Math.abs(twin - value), key).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(value)));
        }
      }
      expect(met).toBeGreaterThan(5);
    }),
    runs,
  );
});

it('identities of each eye: T = S + D, |S|² = FE² + torque², |D|² = (|T| − FE)² + torque², r = P + A + R', async () => {
  await fc.assert(
    fc.asyncProperty(series, async (eyes) => {
      const { derived } = await toricAudit(eyes);
      const at = (name: string): Float64Array => numbersOf(derived.eyes, name);
      const size = (name: string, i: number): number =>
        Math.hypot(at(`${name}_x`)[i] as number, at(`${name}_y`)[i] as number);
      let met = 0;
      for (const i of eyes.keys()) {
        const [effect, torque] = [at('flattening_effect')[i] as number, at('torque')[i] as number];
        for (const part of ['x', 'y']) {
          const [t, s, d] = ['target_induced', 'surgically_induced', 'difference_vector'].map(
            (name) => at(`${name}_${part}`)[i] as number,
          );
          expect((s as number) + (d as number)).toBeCloseTo(t as number, 12);
          const [r, p, a, rest] = ['residual', 'predicted', 'misalignment', 'rest'].map(
            (name) => at(`split_${name}_${part}`)[i] as number,
          );
          expect((p as number) + (a as number) + (rest as number)).toBeCloseTo(r as number, 12);
        }
        if (Number.isNaN(effect)) continue;
        met++;
        expect(effect ** 2 + torque ** 2).toBeCloseTo(size('surgically_induced', i) ** 2, 9);
        expect((size('target_induced', i) - effect) ** 2 + torque ** 2).toBeCloseTo(
          size('difference_vector', i) ** 2,
          9,
        );
      }
      expect(met).toBeGreaterThan(3);
    }),
    runs,
  );
});
