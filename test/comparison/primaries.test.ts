import { describe, expect, it } from 'vitest';
import { plan } from '../../pipeline/plan.js';
import { comparedBy } from '../../src/comparison/compared.js';
import { adjusted, declaredFor, primariesOf } from '../../src/comparison/primaries.js';
import { measureRegistry } from '../../src/measures/index.js';
import type { Plan } from '../../src/records/plan.js';

function planWith(statistics: string): Plan {
  const planned = plan(`format: 1
title: Made up
sources:
  - { file: list.csv, holds: surgery, columns: { patient: Code, eye: Eye, surgery_date: Day } }
statistics: { ${statistics} }
`);
  if ('faults' in planned) throw new RangeError(planned.faults.map(({ message }) => message).join('; '));
  return planned.plan;
}

const registry = measureRegistry(['second']);

/** Measures and statistics that are primary. */
function named(of: Plan, hasPrediction: boolean): readonly string[] {
  const primaries = primariesOf(of, registry, 1, hasPrediction);
  return registry.flatMap((measure) =>
    comparedBy(measure).flatMap((one) => (primaries.includes(measure, one) ? `${measure.name} ${one.statistic}` : [])),
  );
}

describe('primary outcomes', () => {
  it('are by default the share within half a dioptre, of the error that the audit has', () => {
    const byDefault = planWith('seed: 1');
    expect(named(byDefault, true)).toEqual(['prediction_error difference_share_within_0.50']);
    expect(named(byDefault, false)).toEqual(['target_error difference_share_within_0.50']);
  });

  it('are counted once, whichever of its names a statistic is given', () => {
    const twice = planWith('primary: [cdva/mean, cdva/difference_mean, prediction_error:second/sd]');
    expect(named(twice, true)).toEqual(['prediction_error:second ratio_sd', 'cdva difference_mean']);
    expect(primariesOf(twice, registry, 3, true)).toMatchObject({ k: 6, level: 1 - 0.05 / 6 });
  });

  it('without a comparison keep the level', () => {
    expect(primariesOf(planWith('confidence: 0.9'), registry, 0, true)).toMatchObject({ k: 1, level: 0.9 });
  });

  it('may have a margin under either name', () => {
    const { statistics } = planWith('margins: { prediction_error/ratio_sd: 1.2 }');
    const error = registry.find(({ name }) => name === 'prediction_error');
    const margins = error && comparedBy(error).map((one) => declaredFor(statistics.margins, error, one));
    expect(margins?.filter((margin) => margin !== undefined)).toEqual([1.2]);
    expect(margins?.[1]).toBe(1.2);
  });
});

describe('Holm’s adjustment', () => {
  // By hand: 0.01·3, then 0.04·2; the one without a test counts as 1 and stays without.
  it('keeps the place of an outcome without a test', () => {
    expect(adjusted([0.04, undefined, 0.01])).toEqual([0.08, undefined, 0.03]);
  });
});
