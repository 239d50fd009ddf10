import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ellipseOf, outlineOf, reachOf } from '../../src/charts/ellipse.js';
import { cellsOf, placesOf } from '../../src/charts/places.js';
import { planeAround, position } from '../../src/charts/plane.js';
import { doubleAngleX, doubleAngleY } from '../../src/optics/double-angle.js';
import { indexResults } from '../../src/results/index.js';

describe('doubled-angle plane', () => {
  const plane = planeAround(2.3, 150);
  const placeOf = (cylinder: number, axis: number): { x: number; y: number } =>
    position(plane, doubleAngleX(cylinder, axis), doubleAngleY(cylinder, axis));

  // Holladay, Dudeja, Koch 1998, J Cataract Refract Surg 24:57–65: against the rule to the right, with the rule to the
  // left, 45° up, 135° down. A picture's y runs downwards. Radius 3 D in 75 pt: 1 D is 25 pt.
  it.each([
    { axis: 180, x: 100, y: 75 },
    { axis: 90, x: 50, y: 75 },
    { axis: 45, x: 75, y: 50 },
    { axis: 135, x: 75, y: 100 },
  ])('puts 1 D at $axis° where readers look for it', ({ axis, x, y }) => {
    expect(placeOf(1, axis).x).toBeCloseTo(x, 9);
    expect(placeOf(1, axis).y).toBeCloseTo(y, 9);
  });

  it.each([
    { reach: 0, radius: 1, step: 0.5 },
    { reach: 1.5, radius: 1.5, step: 0.5 },
    { reach: 1.51, radius: 2, step: 1 },
    { reach: 4, radius: 4, step: 1 },
    { reach: 6.2, radius: 8, step: 2 },
    { reach: 11, radius: 15, step: 5 },
  ])('ends at a whole ring around $reach D', ({ reach, radius, step }) => {
    expect(planeAround(reach, 150)).toEqual({ radius, step, size: 150 });
  });
});

describe('ellipse', () => {
  const any = fc.record({
    x: fc.double({ min: -3, max: 3, noNaN: true }),
    y: fc.double({ min: -3, max: 3, noNaN: true }),
    major: fc.double({ min: 0.5, max: 3, noNaN: true }),
    minor: fc.double({ min: 0.1, max: 0.5, noNaN: true }),
    angle: fc.double({ min: -90, max: 90, noNaN: true }),
  });

  // (u/a)² + (v/b)² = 1 in the coordinates of its own axes.
  it('has an outline whose every corner satisfies its equation, and which closes', () => {
    fc.assert(
      fc.property(any, (ellipse) => {
        const outline = outlineOf(ellipse);
        const turn = (ellipse.angle * Math.PI) / 180;
        for (const corner of outline) {
          const [dx, dy] = [corner.x - ellipse.x, corner.y - ellipse.y];
          const u = dx * Math.cos(turn) + dy * Math.sin(turn);
          const v = dy * Math.cos(turn) - dx * Math.sin(turn);
          expect((u / ellipse.major) ** 2 + (v / ellipse.minor) ** 2).toBeCloseTo(1, 9);
        }
        expect(outline.at(-1)?.x).toBeCloseTo(outline[0]?.x ?? Number.NaN, 9);
        expect(outline.at(-1)?.y).toBeCloseTo(outline[0]?.y ?? Number.NaN, 9);
      }),
    );
  });

  it('reaches as far as its outline does', () => {
    fc.assert(
      fc.property(any, (ellipse) => {
        const { x, y } = reachOf(ellipse);
        const outline = outlineOf(ellipse);
        // 96 corners: the farthest lies within 1 − cos(π/96), 0.054 %, of the true reach.
        const farthest = Math.max(...outline.map((corner) => Math.abs(corner.x - ellipse.x)));
        const highest = Math.max(...outline.map((corner) => Math.abs(corner.y - ellipse.y)));
        expect(farthest).toBeLessThanOrEqual(x + 1e-9);
        expect(highest).toBeLessThanOrEqual(y + 1e-9);
        expect(farthest).toBeGreaterThanOrEqual(x * 0.9994);
        expect(highest).toBeGreaterThanOrEqual(y * 0.9994);
      }),
    );
  });

  const rows = (values: Readonly<Record<string, number | undefined>>) =>
    indexResults(
      Object.entries(values).map(([statistic, value]) => {
        const rest = {
          ci_low: undefined,
          ci_high: undefined,
          n: 9,
          eyes: 9,
          patients: 9,
          unit: 'D',
          method: '',
          note: '',
        };
        return { measure: 'refractive_cylinder_after', group: 'all', statistic, value, ...rest };
      }),
    );
  const centre = { centroid_x: -0.4, centroid_y: 0.1 };

  it('is read from the results rows of its measure', () => {
    const own = { data_ellipse_major: 1.2, data_ellipse_minor: 0.6, data_ellipse_angle: 169.6 };
    const found = ellipseOf(rows({ ...centre, ...own }), 'refractive_cylinder_after', 'all', 'data_ellipse');
    expect(found).toEqual({ x: -0.4, y: 0.1, major: 1.2, minor: 0.6, angle: 169.6 });
  });

  it('is absent where a region is not estimable', () => {
    const own = { data_ellipse_major: undefined, data_ellipse_minor: undefined, data_ellipse_angle: undefined };
    expect(ellipseOf(rows({ ...centre, ...own }), 'refractive_cylinder_after', 'all', 'data_ellipse')).toBeUndefined();
  });
});

describe('places of eyes', () => {
  const vectors = fc.array(
    fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })),
    {
      maxLength: 60,
    },
  );
  const xs = (all: readonly (readonly [number, number])[]) => all.map(([x]) => x);
  const ys = (all: readonly (readonly [number, number])[]) => all.map(([, y]) => y);

  it('tell nothing of the order of the eyes', () => {
    fc.assert(
      fc.property(vectors, (all) => {
        const reversed = [...all].reverse();
        expect(placesOf(xs(reversed), ys(reversed))).toEqual(placesOf(xs(all), ys(all)));
      }),
    );
  });

  it('are rounded to 0.01 D, and eyes at one place are one mark', () => {
    expect(placesOf([0.501, 0.4996, -0.2], [0, 0.004, 0.1])).toEqual([
      { x: 0.5, y: 0, eyes: 2 },
      { x: -0.2, y: 0.1, eyes: 1 },
    ]);
  });

  it('are at most 40 cells each way, all eyes counted', () => {
    fc.assert(
      fc.property(vectors, (all) => {
        const { cells, size } = cellsOf(xs(all), ys(all), 3, 1);
        expect(size * 40).toBeCloseTo(6, 9);
        expect(cells.reduce((total, { eyes }) => total + eyes, 0)).toBe(all.length);
        for (const { x, y } of cells) expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThan(3);
      }),
    );
  });

  it('leave out cells that hold fewer eyes than may be seen', () => {
    expect(cellsOf([0.1, 0.11, 0.12, 2], [0.1, 0.1, 0.1, 2], 3, 3).cells).toMatchObject([{ eyes: 3 }]);
  });
});
