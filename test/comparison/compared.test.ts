import { describe, expect, it } from 'vitest';
import { comparedBy, namesOf } from '../../src/comparison/compared.js';
import { distanceOnScale, distancePrinted, onScale } from '../../src/comparison/scale.js';
import { measureRegistry } from '../../src/measures/index.js';
import type { Measure } from '../../src/records/measure.js';

/** A measure that nobody has built yet. */
function invented(more: Partial<Measure>): Measure {
  const about = { name: 'invented', family: 'eligible', unit: 'D', inputs: [], formula: '', source: '' } as const;
  return { ...about, kind: 'continuous', groupings: 'cohorts', of: () => 0, ...more };
}

const named = (measure: Measure): readonly string[] =>
  comparedBy(measure).map(({ statistic, better }) => `${statistic} ${better ?? '-'}`);

describe('what cohorts are compared by follows from the registry alone', () => {
  it('a continuous measure: mean and spread', () => {
    expect(named(invented({ better: 'lower' }))).toEqual(['difference_mean lower', 'ratio_sd -']);
    expect(named(invented({}))).toEqual(['difference_mean -', 'ratio_sd -']);
  });

  it('a signed error: its mean has no better side, its spread and size have', () => {
    expect(named(invented({ better: 'nearer zero', within: [0.5] }))).toEqual([
      'difference_mean -',
      'ratio_sd lower',
      'relative_effect_absolute lower',
      'shift_absolute lower',
      'difference_share_within_0.50 higher',
      'ratio_share_within_0.50 higher',
    ]);
  });

  it('a skewed measure: relative effect and shift, of the size where it has a sign', () => {
    expect(named(invented({ kind: 'skewed', better: 'lower' }))).toEqual(['relative_effect lower', 'shift lower']);
    expect(named(invented({ kind: 'skewed', better: 'nearer zero' }))).toEqual([
      'relative_effect_absolute lower',
      'shift_absolute lower',
    ]);
  });

  it('an acuity: mean and lines, no spread', () => {
    expect(named(invented({ better: 'lower', lines: ['20/40'] }))).toEqual([
      'difference_mean lower',
      'difference_share_at_or_better_20/40 higher',
      'ratio_share_at_or_better_20/40 higher',
    ]);
  });

  it('a share by its own direction, a vector by its centroid', () => {
    expect(named(invented({ kind: 'share', better: 'lower' }))).toEqual([
      'difference_share lower',
      'ratio_share lower',
    ]);
    expect(named(invented({ kind: 'vector', vector: { name: 'v', component: 'x' } }))).toEqual([
      'difference_centroid -',
    ]);
    expect(named(invented({ kind: 'vector', vector: { name: 'v', component: 'y' } }))).toEqual([]);
  });

  it('neither what eyes were before, nor when they were seen, nor a step', () => {
    for (const more of [{ role: 'baseline' }, { role: 'follow-up' }, { step: true }, { kind: 'category' }] as const) {
      expect(named(invented(more))).toEqual([]);
    }
  });

  it('leaves no outcome of the registry out', () => {
    const registry = measureRegistry(['second']);
    const left = registry.filter((measure) => comparedBy(measure).length === 0);
    for (const { name, kind, role, step, unpooled, vector } of left) {
      const isOutcome = kind !== 'category' && role === undefined && !step && !unpooled;
      expect(isOutcome && vector?.component !== 'y', name).toBe(false);
    }
  });

  it('counts an acuity at its line, an error at its limit', () => {
    const meets = (measure: Measure, statistic: string) =>
      comparedBy(measure).find((one) => one.statistic === statistic)?.meets;
    const line = meets(invented({ lines: ['20/40'] }), 'difference_share_at_or_better_20/40');
    expect([Math.log10(2), 0.4, Number.POSITIVE_INFINITY].map((value) => line?.(value))).toEqual([true, false, false]);
    const limit = meets(invented({ better: 'nearer zero', within: [0.25] }), 'difference_share_within_0.25');
    expect([0.54 - 0.29, -0.25, 0.26].map((value) => limit?.(value))).toEqual([true, true, false]);
  });
});

describe('the scale of a test', () => {
  const [mean, spread, effect] = comparedBy(invented({ better: 'nearer zero' }));

  it('has 0 where cohorts do not differ', () => {
    if (!mean || !spread || !effect) throw new Error('expected a mean, a spread and an effect');
    expect([onScale(mean, 0), onScale(spread, 1), onScale(effect, 0.5)]).toEqual([0, 0, 0]);
    expect(namesOf(mean)).toEqual(['mean', 'difference_mean']);
    expect(namesOf(effect)).toEqual(['relative_effect_absolute']);
  });

  it('takes the margin of a ratio as a ratio', () => {
    if (!mean || !spread) throw new Error('expected a mean and a spread');
    expect(distanceOnScale(spread, 1.2)).toBeCloseTo(Math.log(1.2), 15);
    expect(distancePrinted(spread, Math.log(1.2))).toBeCloseTo(1.2, 15);
    expect(distanceOnScale(mean, 0.1)).toBe(0.1);
    expect(() => distanceOnScale(spread, 1)).toThrow('distanceOnScale: 1 for ratio_sd; expected above 1');
    expect(() => distanceOnScale(mean, -0.1)).toThrow('distanceOnScale: -0.1 for difference_mean; expected above 0');
  });
});
