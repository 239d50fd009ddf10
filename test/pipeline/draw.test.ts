import { describe, expect, it } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import { publishedCharts } from '../../src/charts/index.js';
import { accents } from '../../src/charts/theme.js';
import { figureNames } from '../../src/plan/published.js';
import type { Plan } from '../../src/records/plan.js';
import type { Figure, Points } from '../../src/records/report.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults, resultKey } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { inventedEyes, inventedPlan, inventedPoints, inventedRows, lots } from '../charts/synthetic.js';
import type { InventedEye } from '../charts/synthetic-rows.js';

const names = ['manual', 'laser-assisted'];
const rows = (eyes: readonly InventedEye[], cohorts: readonly string[] = []) => inventedRows(eyes, cohorts);

function drawn(all: readonly ResultRow[], points: readonly Points[], plan: Plan = inventedPlan()): readonly Figure[] {
  return draw(indexResults(all), points, plan, en);
}

const eyes = inventedEyes(60);
const figures = drawn(rows(eyes), inventedPoints(eyes));
const figure = (of: readonly Figure[], id: string): Figure => of.find((one) => one.id === id) as Figure;

/** Every object inside a specification. */
function parts(value: unknown): readonly Readonly<Record<string, unknown>>[] {
  if (typeof value !== 'object' || value === null) return [];
  const below = Object.values(value).flatMap(parts);
  return Array.isArray(value) ? below : [value as Readonly<Record<string, unknown>>, ...below];
}

/** All texts that a figure shows or tells, tick labels left out. */
function texts({ spec, legend, alt, title }: Figure): readonly string[] {
  const shown = parts(spec).flatMap(({ text }) => (typeof text === 'string' ? [text] : []));
  return [...shown, title, legend, alt];
}

/** Data of the marks of a type and shape. */
function marked(one: Figure, wanted: Readonly<Record<string, unknown>>): readonly Readonly<Record<string, unknown>>[] {
  const isWanted = (mark: unknown): boolean =>
    Object.entries(wanted).every(([key, value]) => (mark as Record<string, unknown> | undefined)?.[key] === value);
  return parts(one.spec)
    .filter((part) => isWanted(part.mark))
    .flatMap(({ data }) => (data as { values: readonly Record<string, unknown>[] }).values);
}

const filledMark = { type: 'point', shape: 'circle', fill: accents[0]?.colour };
const hollowMark = { type: 'point', shape: 'circle', stroke: accents[0]?.colour };
/** Marks of eyes, in the first panel and in the second. */
const eyeMarks = (one: Figure, more: Readonly<Record<string, unknown>> = {}) =>
  [hollowMark, filledMark].flatMap((mark) => marked(one, { ...mark, ...more }));

describe('order and numbers', () => {
  const ids = (outputs: Partial<Plan['outputs']>) =>
    drawn(rows(eyes), inventedPoints(eyes), inventedPlan(outputs)).map(({ id, number }) => `${number} ${id}`);

  it('are those of the report', () => {
    // The invented audit compares no cohorts, and names neither operators nor the order of its operations.
    const beyond = ['differences', 'monitoring', 'funnel'];
    const all = [...publishedCharts.keys()].filter((id) => !beyond.includes(id));
    expect(figures.map(({ id }) => id)).toEqual(all);
    expect(figures.map(({ number }) => number)).toEqual(all.map((_, index) => index + 1));
    const order = figureNames.filter((name) => all.includes(name));
    expect(all).toEqual(order);
  });

  it('follow outputs.order, and outputs.leave_out takes no number', () => {
    const outputs = { order: ['double-angle', 'refractive-accuracy', 'eye-flow'], leave_out: ['prediction-error'] };
    expect(ids(outputs).slice(0, 4)).toEqual([
      '1 double-angle',
      '2 eye-flow',
      '3 accuracy-shares',
      '4 acuity-cumulative',
    ]);
    expect(ids(outputs)).toHaveLength(figures.length - 1);
  });

  it('pass over figures that the data do not allow', () => {
    const without = rows(eyes).map((row) =>
      /cylinder|cdva|udva|induced|split|angle/.test(row.measure) && row.statistic === 'n'
        ? { ...row, value: 0, n: 0 }
        : row,
    );
    expect(drawn(without, []).map(({ id }) => id)).toEqual(['eye-flow', 'prediction-error', 'accuracy-shares']);
  });

  it('need an artwork that is known', () => {
    const plan = inventedPlan({ artwork: 'poster' });
    const expected = 'artworkNamed: poster; expected journal-single, journal-middle, journal-double, slide, web';
    expect(() => drawn(rows(eyes), [], plan)).toThrow(new RangeError(expected));
  });
});

describe('numbers of figures', () => {
  const two = inventedEyes(60, 2);
  const source = rows(two, names);
  const shown = drawn(source, inventedPoints(two, names));

  it('are cited by keys of results rows that exist', () => {
    const keys = new Set(source.map(resultKey));
    for (const { from } of shown) {
      expect(from.length).toBeGreaterThan(0);
      expect(from.filter((key) => !keys.has(key))).toEqual([]);
    }
  });

  // Percent with no decimal below 100 eyes, dioptres with two, whole degrees, counts: the rules of the tables.
  it('are values, limits, eyes or patients of the rows cited, or limits that are part of a name', () => {
    const byKey = new Map(source.map((row) => [resultKey(row), row]));
    const fixed = new Set([
      '0.125',
      '0.25',
      '0.5',
      '0.50',
      '0.75',
      '1.00',
      '1.50',
      '2.00',
      '2.125',
      '2,000',
      '0.005',
      '1.0',
      '5',
      '15',
      '42.5',
      '95',
      '0',
    ]);
    const named = new Set([
      '1',
      '20',
      '12.5',
      '16',
      '25',
      '32',
      '40',
      '63',
      '100',
      '200',
      '22.5',
      '45',
      '67.5',
      '90',
      '112.5',
      '135',
      '157.5',
      '180',
      '30',
      '2',
      '3',
      '4',
    ]);
    for (const one of shown) {
      const cited = one.from.map((key) => byKey.get(key) as ResultRow);
      const numbers = cited.flatMap((row) => [row.value, row.ci_low, row.ci_high, row.n, row.patients]);
      const known = new Set(
        numbers.flatMap((value) => {
          if (value === undefined) return [];
          const size = Math.abs(value);
          return [
            size.toFixed(0),
            size.toFixed(2),
            (100 * size).toFixed(0),
            (100 * size).toFixed(1),
            Math.abs(value + 1e-12).toFixed(2),
          ];
        }),
      );
      const printed = texts(one).flatMap((text) => text.match(/\d[\d,]*(\.\d+)?/g) ?? []);
      const unknown = printed.filter((text) => !known.has(text) && !fixed.has(text) && !named.has(text));
      expect({ figure: one.id, unknown }).toEqual({ figure: one.id, unknown: [] });
    }
  });

  it('follow the row: another share is another text, curve and alternative text', () => {
    const key = 'prediction_error|technique=manual|share_within_0.50';
    const changed = source.map((row) => (resultKey(row) === key ? { ...row, value: 0.123, n: 1000 } : row));
    const after = drawn(changed, inventedPoints(two, names));
    for (const id of ['prediction-error', 'accuracy-shares']) {
      const own = texts(figure(after, id));
      expect(own.filter((text) => text.includes('12.3')).length).toBeGreaterThan(1);
      expect(texts(figure(shown, id)).some((text) => text.includes('12.3'))).toBe(false);
    }
  });
});

describe('each figure says', () => {
  const two = inventedEyes(60, 2);
  const shown = drawn(rows(two, names), inventedPoints(two, names));

  it.each(shown.map((one) => [one.id, one] as const))('its eyes, cohorts and visit: %s', (id, one) => {
    const inside = parts(one.spec).flatMap(({ text }) => (typeof text === 'string' ? [text] : []));
    for (const name of names) expect(inside.join(' ').replaceAll('- ', '-')).toContain(name);
    expect(inside.some((text) => text.startsWith('Visit: 1 month; median'))).toBe(true);
    // The flow counts step by step; differences count the eyes of both cohorts.
    if (id === 'differences') expect(inside.some((text) => /n = 120 eyes/.test(text))).toBe(true);
    else if (id !== 'eye-flow') {
      const sample = id === 'double-angle-induced' ? /n = \d\d\b/ : /n = 60\b/;
      expect(inside.filter((text) => sample.test(text)).length).toBeGreaterThanOrEqual(2);
    }
    expect(one.alt.length).toBeGreaterThan(80);
    for (const name of names) expect(one.alt).toContain(name);
  });

  it('has no title inside the picture', () => {
    for (const { spec } of shown)
      expect(parts(spec).some((part) => 'title' in part && part.title !== null)).toBe(false);
  });

  it('all cohorts together, and why, where there are more than can be told apart', () => {
    const five = inventedEyes(10, 5);
    const many = drawn(rows(five, ['a', 'b', 'c', 'd', 'e']), inventedPoints(five, ['a', 'b', 'c', 'd', 'e']));
    for (const { legend } of many) expect(legend).toContain('All eyes together');
    expect(parts(figure(many, 'accuracy-shares').spec).some(({ text }) => text === 'All eyes')).toBe(true);
  });
});

describe('what cannot be estimated', () => {
  it('is said, and drawn without an interval or a region', () => {
    const three = inventedEyes(3);
    const few = drawn(rows(three), inventedPoints(three));
    expect(texts(figure(few, 'accuracy-shares')).filter((text) => text === 'no interval')).toHaveLength(6);
    expect(marked(figure(few, 'accuracy-shares'), { type: 'rule', strokeWidth: 1.2 })).toEqual([]);
    const plane = figure(few, 'double-angle');
    expect(texts(plane).filter((text) => text === 'no region: too few patients')).toHaveLength(2);
    expect(marked(plane, { type: 'line' })).toEqual([]);
  });

  it('is said of a share without any eye', () => {
    const two = inventedEyes(60, 2);
    const none = rows(two, names).map((row) =>
      row.group === 'technique=manual' && row.statistic.startsWith('share_within')
        ? { ...row, value: undefined, ci_low: undefined, ci_high: undefined, n: 0 }
        : row,
    );
    const one = figure(drawn(none, inventedPoints(two, names)), 'accuracy-shares');
    expect(texts(one).filter((text) => text === 'not estimable')).toHaveLength(6);
  });

  it('is hidden in the flow where counts are too small to be published', () => {
    const hidden = rows(eyes).map((row) =>
      row.statistic === 'set_aside' ? { ...row, value: undefined, note: 'suppressed' } : row,
    );
    const one = figure(drawn(hidden, inventedPoints(eyes), inventedPlan({ small_cells: 5 })), 'eye-flow');
    expect(texts(one)).toContain('hidden');
    expect(one.legend).toContain('Counts below 5');
  });
});

describe('marks of eyes', () => {
  /** The same points in another order. */
  function shuffled([points]: readonly Points[]): readonly Points[] {
    if (!points) return [];
    const lot = lots(7);
    const order = [...points.x.keys()].map((i) => [lot(), i] as const).sort(([a], [b]) => a - b);
    const at = <T>(values: ArrayLike<T>) => order.map(([, i]) => values[i] as T);
    const column = (one: Points['panel']) => ({
      ...one,
      at: (row: number) => one.at((order[row] as readonly [number, number])[1]),
    });
    return [
      {
        figure: points.figure,
        panel: column(points.panel),
        cohort: column(points.cohort),
        x: Float64Array.from(at(points.x)),
        y: Float64Array.from(at(points.y)),
        eye: Int32Array.from(at(points.eye)),
      },
    ];
  }

  it('for publication tell neither name nor order of the eyes', () => {
    const points = inventedPoints(eyes);
    const other = drawn(rows(eyes), shuffled(points));
    expect(JSON.stringify(figure(other, 'double-angle').spec)).toBe(
      JSON.stringify(figure(figures, 'double-angle').spec),
    );
  });

  it('for publication lie on hundredths of a dioptre, each eye counted once in each panel', () => {
    const plane = figure(figures, 'double-angle');
    const panels = [hollowMark, filledMark].map(
      (mark) => marked(plane, mark) as readonly { x: number; y: number; size: number }[],
    );
    for (const marks of panels) {
      for (const { x, y } of marks)
        for (const value of [x, y]) expect(Math.abs(value * 100 - Math.round(value * 100))).toBeLessThan(1e-9);
      const one = Math.min(...marks.map(({ size }) => size));
      const total = marks.reduce((sum, { size }) => sum + size / one, 0);
      expect(total).toBeCloseTo(eyes.length, 6);
    }
  });

  it('bear the name that the internal page gives them', () => {
    const named = draw(indexResults(rows(eyes)), inventedPoints(eyes), inventedPlan(), en, (eye) => `P${eye}`);
    const told = eyeMarks(figure(named, 'double-angle'), { aria: true }).map((mark) => mark.eye);
    expect(told).toHaveLength(2 * eyes.length);
    expect(new Set(told)).toEqual(new Set([...eyes.keys()].map((eye) => `P${eye}`)));
    const marking = new Set(inventedPoints(eyes).map((points) => points.figure));
    for (const one of named) expect(/"P\d/.test(JSON.stringify(one)), one.id).toBe(marking.has(one.id));
  });

  it('are counts in at most 40 × 40 cells above 2,000 a panel, and the legend says so', () => {
    const many = inventedEyes(2001);
    const one = figure(drawn(rows(many), inventedPoints(many)), 'double-angle');
    const cells = marked(one, { type: 'point', shape: 'square' });
    expect(eyeMarks(one)).toEqual([]);
    expect(cells.length).toBeGreaterThan(100);
    expect(cells.length).toBeLessThanOrEqual(2 * 40 * 40);
    expect(one.legend).toContain('squares stand for the eyes of one cell');
    const fewer = inventedEyes(2000);
    const other = figure(drawn(rows(fewer), inventedPoints(fewer)), 'double-angle');
    expect(marked(other, { type: 'point', shape: 'square' })).toEqual([]);
  });

  it('are counts in cells where small counts are hidden, and cells below that count are not drawn', () => {
    const least = 5;
    const one = figure(drawn(rows(eyes), inventedPoints(eyes), inventedPlan({ small_cells: least })), 'double-angle');
    const all = figure(drawn(rows(eyes), inventedPoints(eyes), inventedPlan({ small_cells: 1 })), 'double-angle');
    const square = { type: 'point', shape: 'square' };
    expect(eyeMarks(one)).toEqual([]);
    expect(marked(one, square).length).toBeLessThan(marked(all, square).length);
    expect(one.legend).toContain('Cells with fewer than 5 eyes are not drawn.');
  });
});
