import { describe, expect, it } from 'vitest';
import { ACUITY_EFFECTS } from '../../sample-exports/generator/effects/acuity.js';
import { ASTIGMATISM_EFFECTS } from '../../sample-exports/generator/effects/astigmatism.js';
import { PREDICTION_EFFECTS } from '../../sample-exports/generator/effects/prediction.js';
import { SERIES_EFFECTS } from '../../sample-exports/generator/effects/series.js';
import type { Expected } from '../../sample-exports/generator/expected.js';
import { makeEyes } from '../../sample-exports/generator/eyes.js';
import { outcomes } from '../../sample-exports/generator/outcomes.js';
import { makeSeries } from '../../sample-exports/generator/series.js';
import { MEAN_ERROR, SEED } from '../../sample-exports/generator/truth.js';
import { committed } from './committed.js';

const planted: { effects: readonly Expected[] } = JSON.parse(committed('planted.json').toString('utf8'));
const nameOf = ({ measure, group, statistic }: { measure: string; group: string; statistic: string }) =>
  `${measure} | ${group} | ${statistic}`;

describe('planted effects', () => {
  it('stand at least five standard errors from what each likely mistake would give', () => {
    const close = planted.effects.flatMap((effect) =>
      effect.mistakes.filter(({ away }) => away < 5).map(({ mistake }) => `${nameOf(effect)}: ${mistake}`),
    );
    expect(close).toEqual([]);
  });

  it('cover every likely mistake of this field', () => {
    const mistakes = new Set(planted.effects.flatMap((effect) => effect.mistakes.map(({ mistake }) => mistake)));
    for (const mistake of [
      'target taken for the prediction',
      'sign turned',
      'cohorts exchanged',
      'flat and steep axes exchanged',
      'axis of the other notation',
      'left eyes mirrored',
      'vertex distance left out',
      'before and after exchanged',
    ]) {
      expect(mistakes, mistake).toContain(mistake);
    }
  });

  // 100 samples settle a mean to a tenth of its standard error; quarters and missing visits move it by about 0.01 D.
  it('are expected where they were put in', () => {
    for (const [technique, error] of Object.entries(MEAN_ERROR)) {
      const found = planted.effects.find(
        (effect) => nameOf(effect) === `prediction_error | technique=${technique} | mean`,
      );
      expect(Math.abs((found?.expected ?? Number.NaN) - error)).toBeLessThan(0.02);
    }
  });

  // One sample in two thousand strays by more than 3.5 standard errors in one effect; this one has a fixed seed.
  it('are in the committed sample, within 3.5 standard errors', () => {
    const sample = outcomes(makeEyes(SEED));
    const series = makeSeries(SEED);
    const main = [...PREDICTION_EFFECTS, ...ASTIGMATISM_EFFECTS, ...ACUITY_EFFECTS];
    const found = new Map([
      ...main.map((effect) => [`audit.yaml ${nameOf(effect)}`, effect.of(sample)] as const),
      ...SERIES_EFFECTS.map((effect) => [`wide-audit.yaml ${nameOf(effect)}`, effect.of(series)] as const),
    ]);
    expect(found.size).toBe(planted.effects.length);
    for (const effect of planted.effects) {
      const value = found.get(`${effect.audit} ${nameOf(effect)}`) ?? Number.NaN;
      const away = Math.abs(value - effect.expected) / effect.standardError;
      expect(away, `${nameOf(effect)} is ${value}`).toBeLessThan(3.5);
    }
  });
});

describe('the scenario', () => {
  const eyes = makeEyes(SEED);
  const count = (keep: (eye: (typeof eyes)[number]) => boolean) => eyes.filter(keep).length;

  it('has the patients, cohorts and lenses that the README tells of', () => {
    expect(eyes.length).toBe(420);
    expect(new Set(eyes.map((eye) => eye.patient.code)).size).toBe(270);
    expect(count(({ operation }) => operation.technique === 'manual')).toBeGreaterThan(180);
    expect(count(({ operation }) => operation.technique === 'laser-assisted')).toBeGreaterThan(180);
    expect(count(({ plan }) => plan.model === 'C3')).toBeLessThan(10);
    expect(count(({ plan }) => plan.model === 'C3')).toBeGreaterThan(4);
    expect(count(({ plan }) => plan.cylinder > 0)).toBeGreaterThan(80);
    expect(count(({ biometry }) => biometry.axialLength > 30)).toBe(2);
    expect(count(({ operation }) => operation.aim < -1)).toBeGreaterThan(20);
  });

  it('measures each cornea by biometer on an earlier day than by keratometer, so that the last K before is one', () => {
    expect(count(({ patient }) => patient.measured >= patient.assessed)).toBe(0);
    expect(count(({ patient, operation }) => patient.assessed >= operation.day)).toBe(0);
  });

  it('holds eyes that are lost, late, not refracted, or not due', () => {
    const analysed = outcomes(eyes).length;
    expect(analysed).toBeGreaterThan(360);
    expect(analysed).toBeLessThan(400);
    expect(count(({ examinations }) => examinations.length === 1)).toBeGreaterThan(5);
    expect(count(({ examinations }) => examinations.some((exam) => exam.refraction === undefined))).toBeGreaterThan(5);
  });
});
