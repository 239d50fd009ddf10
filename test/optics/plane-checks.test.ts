/**
 * Section 3 of optics-checks.csv, every row by its id: what the doubled-angle plane holds (R 4.2.2 and Python, by
 * different methods, agreeing to 2.5e-9). A row without a computation fails.
 */
import { expect, it } from 'vitest';
import { axisOf } from '../../src/optics/axis.js';
import { vectorMagnitude } from '../../src/optics/double-angle.js';
import { centroid } from '../../src/statistics/centroid.js';
import { chiSquareQuantile } from '../../src/statistics/distributions.js';
import { type Ellipse, ellipse } from '../../src/statistics/ellipse.js';
import {
  f2UpperQuantile,
  type Hotelling,
  hotellingOneSample,
  hotellingPaired,
  hotellingScale,
  hotellingTwoSample,
} from '../../src/statistics/hotelling.js';
import { single } from '../statistics/made-up-eyes.js';
import { type Cloud, cloud, dataA, leftOfA } from '../statistics/made-up-points.js';
import { opticsChecks } from './reference.js';

const computed = new Map<string, number>();
const put = (id: string, values: Readonly<Record<string, number | undefined>>): void => {
  for (const [name, value] of Object.entries(values)) computed.set(`${id}.${name}`, value ?? Number.NaN);
};
const regions = (id: string, { major, minor, tilt }: Ellipse, k: number): void =>
  put(id, { major, minor, orient: tilt, k });
const test = (id: string, { t2, f, df2, p }: Hotelling): void => put(id, { T2: t2, F: f, df2, p });
const means = (id: string, { x, y }: Cloud): void => {
  const found = centroid(x, y, single(x.length), 0.95);
  const [mx, my] = [found.x as number, found.y as number];
  put(`${id}cen`, { x: mx, y: my, mag: vectorMagnitude(mx, my), axis: axisOf(mx, my) });
};

const n = 12;
const found = centroid(dataA.x, dataA.y, single(n), 0.95);
const spread = {
  xx: (found.sdX as number) ** 2,
  xy: found.covariance as number,
  yy: (found.sdY as number) ** 2,
};
means('3.', dataA);
put('3.cov', spread);
put('3.sd', { x: found.sdX, y: found.sdY });
const sides = ellipse(spread, 1);
put('3.sdax', { major: sides.major, minor: sides.minor });
const chi = chiSquareQuantile(0.95, 2);
regions('3.ell.chisq', ellipse(spread, chi), chi);
const scale = hotellingScale(0.95, n - 1);
regions('3.ell.predict', found.eyesRegion as Ellipse, (scale * (n + 1)) / n);
regions('3.ell.mean', found.region as Ellipse, scale / n);
test('3.h1', found.test as Hotelling);
put('3', {
  meanmag: dataA.x.reduce((sum, x, eye) => sum + vectorMagnitude(x, dataA.y[eye] as number), 0) / n,
  'p.R': hotellingOneSample(dataA.x, dataA.y, 0, 0).p,
});

const mirrored = { x: dataA.x, y: dataA.y.map((y, eye) => (leftOfA.includes(eye) ? -y : y)) };
const flipped = centroid(mirrored.x, mirrored.y, single(n), 0.95);
means('3.flip.', mirrored);
put('3.flip.sd', { x: flipped.sdX, y: flipped.sdY });
test('3.flip.h1', flipped.test as Hotelling);
regions('3.flip.ell.mean', flipped.region as Ellipse, scale / n);

const before = cloud([
  [1.25, 88],
  [0.8, 95],
  [1.6, 80],
  [2.1, 100],
  [0.95, 5],
  [1.4, 92],
  [1.75, 85],
  [0.6, 170],
]);
const after = cloud([
  [1, 92],
  [0.7, 100],
  [1.1, 78],
  [1.85, 104],
  [1.2, 8],
  [1.05, 95],
  [1.55, 80],
  [0.9, 175],
]);
const less = (later: Float64Array, earlier: Float64Array): Float64Array =>
  later.map((value, eye) => value - (earlier[eye] as number));
means('3.pair.', { x: less(after.x, before.x), y: less(after.y, before.y) });
test('3.pair', hotellingPaired(before, after));

const others = cloud([
  [0.3, 85],
  [0.45, 100],
  [0.6, 70],
  [0.25, 120],
  [0.8, 92],
  [0.55, 78],
  [0.4, 105],
]);
means('3.g2.', others);
test('3.two', hotellingTwoSample(dataA, others));
for (const m of [10, 2, 1])
  put('3.f2q', { [`m${m}`]: f2UpperQuantile(0.05, m), [`R.m${m}`]: f2UpperQuantile(0.05, m) });

it.each([...opticsChecks].filter(([id]) => id.startsWith('3.')))('%s', (id, expected) => {
  const value = computed.get(id);
  if (value === undefined) throw new Error(`${id} is not computed`);
  // Ten decimals are printed; angles and sums of squares are as much less exact as they are larger.
  expect(Math.abs(value - expected)).toBeLessThan(1e-9 * Math.max(1, Math.abs(expected)) + 1e-9);
});
