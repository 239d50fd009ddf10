import { describe, expect, it } from 'vitest';
import { chartCohorts } from '../../src/charts/cohorts.js';
import { differences } from '../../src/charts/differences.js';
import { drawnPairs, forestGroups } from '../../src/charts/forest-rows.js';
import { along, linearScale, logScale } from '../../src/charts/forest-scale.js';
import type { ChartSetting } from '../../src/charts/setting.js';
import { accents, artworks, ink } from '../../src/charts/theme.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { auditRows } from '../tables/audit.js';
import { comparedRows, pair } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';

function settingOf(
  rows: readonly ResultRow[] = comparedRows,
  statistics: Partial<Plan['statistics']> = {},
  artwork = 'journal-double',
): ChartSetting {
  const plan = planOf({ statistics: { ...planOf().statistics, ...statistics } });
  const results = indexResults(rows);
  const drawn = artworks[artwork];
  if (!drawn) throw new RangeError(`no artwork ${artwork}`);
  return { results, plan, words: en, artwork: drawn, points: [], cohorts: chartCohorts(results, plan, en) };
}

/** Layers of every panel. */
interface Layer {
  data: { values: readonly Readonly<Record<string, unknown>>[] };
  mark: Readonly<Record<string, unknown>>;
}
function panelsOf(setting = settingOf()): readonly (readonly Layer[])[] {
  const drawing = differences(setting);
  if (!drawing) throw new RangeError('nothing is drawn');
  const { concat } = drawing.spec as { concat: readonly { layer: readonly Layer[] }[] };
  return concat.map(({ layer }) => layer);
}
const textsOf = (layers: readonly Layer[], mark: Readonly<Record<string, unknown>> = {}): readonly unknown[] =>
  layers
    .filter(
      (layer) => layer.mark.type === 'text' && Object.entries(mark).every(([key, value]) => layer.mark[key] === value),
    )
    .flatMap(({ data }) => data.values.map(({ text }) => text));

describe('rows of the differences', () => {
  const setting = settingOf();
  const groups = forestGroups(setting, drawnPairs(setting));

  it('stand in panels of one unit and one direction, those with a primary first, ratios last', () => {
    expect(groups.map(({ kind, unit, better }) => [kind, unit, better])).toEqual([
      ['difference', 'share', 'higher'],
      ['difference', 'logMAR', 'lower'],
      ['difference', 'share', 'lower'],
      ['difference', 'D', undefined],
      ['difference', 'D', 'lower'],
      ['ratio', '', 'lower'],
    ]);
  });

  it('are the outcomes of the table that have an interval, primaries before the others', () => {
    const names = groups.map(({ rows }) => rows.map(({ name, part }) => name + part));
    expect(names[0]).toEqual([
      'Prediction error within ±0.50 D',
      'Prediction error within ±1.00 D',
      'Corrected acuity 20/40 (6/12) or better',
    ]);
    expect(names.slice(3)).toEqual([
      ['Prediction error, mean'],
      ['Absolute prediction error, shift'],
      ['Prediction error, SD'],
    ]);
    expect(names.flat().some((name) => name.includes('centroid') || name.includes('effect'))).toBe(false);
  });

  it('draw a relative effect only where it is primary, around one half', () => {
    const primary = comparedRows.map((row) =>
      row.statistic === 'relative_effect_absolute' ? { ...row, note: 'primary:k=2;verdict:better' } : row,
    );
    const other = settingOf(primary);
    const effect = forestGroups(other, drawnPairs(other)).find(({ kind }) => kind === 'effect');
    expect(effect?.rows.map(({ isPrimary }) => isPrimary)).toEqual([true]);
  });

  it('are none where there is nothing to compare, or more cohorts than symbols', () => {
    expect(differences(settingOf(auditRows))).toBeUndefined();
    const four = comparedRows.flatMap((row) =>
      row.group === pair
        ? ['a', 'b', 'c', 'd'].map((name) => ({ ...row, group: `technique=${name} vs manual` }))
        : [row],
    );
    expect(drawnPairs(settingOf(four))).toEqual([]);
  });
});

describe('picture of the differences', () => {
  const panels = panelsOf();
  const [shares = [], acuity = []] = panels;

  it('writes estimate and interval beside each line, primaries in bold', () => {
    expect(textsOf(shares, { fontWeight: 'bold' })).toEqual(
      expect.arrayContaining(['Prediction error within ±0.50 D', '10.5 (2.1 to 18.9)']),
    );
    expect(textsOf(shares, { fontWeight: 'normal' })).toEqual(
      expect.arrayContaining(['Prediction error within ±1.00 D', '\u22121.2 (\u22126.0 to 3.6)', 'not estimable']),
    );
  });

  it('draws shares in percentage points; a row without an interval has no mark', () => {
    const marks = shares.filter(({ mark }) => mark.type === 'point' && mark.shape === accents[1]?.shape);
    const values = marks.flatMap(({ data }) => data.values.map(({ value }) => value));
    expect(values).toHaveLength(3); // one of them in the key, without a value
    expect(values.filter((value) => value !== undefined)).toEqual([10.5, -1.2]);
  });

  it('fills the symbols of primaries, and no others', () => {
    const fills = shares
      .filter(({ mark, data }) => mark.type === 'point' && data.values.some(({ value }) => value !== undefined))
      .map(({ mark }) => mark.fill);
    expect(fills).toEqual([accents[1]?.colour, ink.paper]);
  });

  it('says at its ends which cohort is better there, or that one is lower or higher', () => {
    expect(textsOf(shares)).toEqual(expect.arrayContaining(['← manual better', 'laser & co better →']));
    expect(textsOf(acuity)).toEqual(expect.arrayContaining(['← laser & co better', 'manual better →']));
    expect(textsOf(panels[3] ?? [])).toEqual(expect.arrayContaining(['← laser & co lower', 'higher →']));
  });

  it('shades a declared margin around no difference, of a ratio on both sides of 1', () => {
    const bands = (statistics: Partial<Plan['statistics']>) =>
      panelsOf(settingOf(comparedRows, statistics)).flatMap((layers) =>
        layers.filter(({ mark }) => mark.type === 'rect').flatMap(({ data }) => data.values),
      );
    expect(bands({})).toEqual([]);
    const [band, ...others] = bands({ margins: { 'prediction_error/share_within_0.50': 0.1 } });
    expect(others).toEqual([]);
    expect((band?.x2 as number) - (band?.x as number)).toBeGreaterThan(20);
    expect(bands({ margins: { 'prediction_error/sd': 1.25 } })).toHaveLength(1);
  });

  it('says which intervals have which level, and what is shaded only where something is', () => {
    const foot = (statistics: Partial<Plan['statistics']>): string =>
      textsOf(panelsOf(settingOf(comparedRows, statistics))[0] ?? []).join(' ');
    expect(foot({})).toContain('Bold, filled: primary, with a verdict; 97.5 % intervals. The others: 95 %.');
    expect(foot({})).not.toContain('Shaded');
    expect(foot({ margins: { 'cdva/mean': 0.05 } })).toContain('Shaded: within the margin.');
  });

  it('tells those who do not see it the same, with the verdicts', () => {
    const { alt = '', legend = '' } = differences(settingOf()) ?? {};
    expect(alt).toContain('laser & co − manual: ');
    expect(alt).toContain('Prediction error within ±0.50 D (primary) 10.5 percentage points (2.1 to 18.9), better;');
    expect(alt).toContain('Corrected acuity, mean (primary) 0.01 logMAR (\u22120.06 to 0.08), inconclusive;');
    expect(legend).toContain('laser & co − manual: 371 to 421 eyes in a comparison.');
  });

  it('puts rows of one outcome under its name where columns are narrow', () => {
    const narrow = textsOf(panelsOf(settingOf(comparedRows, {}, 'journal-single'))[0] ?? []);
    expect(narrow).toEqual(expect.arrayContaining(['Prediction error', 'within ±0.50 D', 'within ±1.00 D']));
  });
});

describe('linearScale', () => {
  // Span 21 with 6 % of room on either side: −4.26 to 19.26.
  it('holds values and no difference, its ticks at 1, 2 or 5 times a power of ten', () => {
    expect(linearScale([-3, 18], 0, 5)).toMatchObject({ ticks: [0, 5, 10, 15], none: 0 });
    expect(linearScale([-3, 18], 0, 3).ticks).toEqual([0, 10]);
    expect(linearScale([0.02, 0.05], 0, 4).ticks).toEqual([0, 0.02, 0.04]);
  });

  it('holds no difference where every value lies to one side', () => {
    const { from, to } = linearScale([5, 9], 0, 4);
    expect(from).toBeLessThan(0);
    expect(to).toBeGreaterThan(9);
  });

  it('stands for a single value that is no difference', () => {
    const scale = linearScale([0, 0], 0, 4);
    expect(scale.to).toBeGreaterThan(scale.from);
    expect(scale.ticks).toContain(0);
  });

  it('places values evenly', () => {
    const scale = linearScale([-1, 1], 0, 4);
    expect(along(scale, scale.from)).toBe(0);
    expect(along(scale, 0)).toBeCloseTo(0.5, 12);
  });
});

describe('logScale', () => {
  it('places a ratio and its inverse at the same distance from 1', () => {
    const scale = logScale([0.5, 2], 6);
    const [half, one, two] = [0.5, 1, 2].map((ratio) => along(scale, ratio)) as [number, number, number];
    expect(one - half).toBeCloseTo(two - one, 12);
    expect(one).toBeCloseTo(0.5, 12);
  });

  it.each([
    { values: [0.62, 0.87], most: 8 },
    { values: [0.8, 1.4], most: 3 },
    { values: [0.05, 30], most: 4 },
    { values: [0.98, 1.01], most: 5 },
  ])('has ticks with room, 1 among them: $values', ({ values, most }) => {
    const scale = logScale(values, most);
    expect(scale.ticks).toContain(1);
    expect(scale.ticks.length).toBeGreaterThan(1);
    const places = scale.ticks.map((tick) => along(scale, tick));
    places.slice(1).forEach((place, i) => {
      expect(place - (places[i] as number)).toBeGreaterThanOrEqual(1 / most - 1e-9);
    });
    for (const place of places) expect(place >= 0 && place <= 1).toBe(true);
  });
});
