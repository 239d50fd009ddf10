import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';
import { funnelLimits } from '../../src/statistics/funnel.js';
import { shareDesign } from '../../src/statistics/icc.js';
import { indexPatients } from '../../src/statistics/patients.js';
import { shareInterval } from '../../src/statistics/share.js';
import type { Groups } from './groups.js';
import { type Monitored, monitorOf, operatorsOf } from './monitored.js';

/** Levels of the limits. */
const levels = [0.95, 0.998] as const;
/** Places at which the limits are worked out, from fewer eyes than any operator has to more. */
const places = 24;

const about = { ci_low: undefined, ci_high: undefined, unit: 'share', method: 'binomial-funnel', note: '' };

/** Limits at so many eyes; below one effective eye there are none. */
function limitRows(measure: string, eyes: number, target: number, designEffect: number): readonly ResultRow[] {
  const effective = eyes / designEffect;
  if (effective < 1) return [];
  const counted = { n: eyes, eyes, patients: 0 };
  return levels.flatMap((level) => {
    const [low, high] = funnelLimits(target, effective, level);
    const row = (side: string, value: number): ResultRow => ({
      ...about,
      ...counted,
      measure,
      group: groupPair('eyes', String(eyes)),
      statistic: `share_limit_${side}_${100 * level}`,
      value,
    });
    return [row('low', low), row('high', high)];
  });
}

/** Whether an operator's share lies outside the limits, and outside which. */
function beyond(share: number, eyes: number, target: number, designEffect: number): string {
  const outside = levels.filter((level) => {
    const [low, high] = funnelLimits(target, Math.max(1, eyes / designEffect), level);
    return share < low || share > high;
  });
  const widest = outside.at(-1);
  return widest === undefined ? '' : `beyond:${100 * widest}`;
}

/** Operators and sites against the number of their eyes, with exact limits around the whole or the declared standard. */
export function funnelRows(derived: Derived, { all: everyone }: Groups, plan: Plan): readonly ResultRow[] {
  const monitor = monitorOf(derived, plan);
  if (!monitor) return [];
  const whole = monitor.seriesOf(everyone);
  const operators = operatorsOf(derived, everyone, plan).map((group) => ({
    key: group.key,
    of: monitor.seriesOf(group),
  }));
  const shown = operators.filter(({ of }) => of.eyes.length > 0);
  if (shown.length === 0) return [];
  const share = (of: Monitored): number => of.hits.reduce((sum, hit) => sum + hit, 0) / of.eyes.length;
  const target = plan.monitoring?.acceptable ?? share(whole);
  if (!(target > 0 && target < 1)) return [];
  const { designEffect } = shareDesign(whole.hits, indexPatients(whole.patient), undefined);
  const measure = `funnel:${monitor.outcome}`;
  const patients = (of: Monitored): number => new Set(of.patient).size;
  const counted = (of: Monitored) => ({ n: of.eyes.length, eyes: of.eyes.length, patients: patients(of) });
  const all = { ...about, ...counted(whole), measure, group: 'all' };
  const sizesOf = shown.map(({ of }) => of.eyes.length);
  const [least, most] = [Math.max(5, Math.round(0.6 * Math.min(...sizesOf))), 1.1 * Math.max(...sizesOf)];
  const sizes = new Set(
    Array.from({ length: places }, (_, i) => Math.round(least + ((most - least) * i) / (places - 1))),
  );
  return [
    { ...all, statistic: 'share_target', value: target, method: plan.monitoring ? 'declared' : 'overall-share' },
    { ...all, statistic: 'design_effect', value: designEffect, unit: '', method: 'anova' },
    ...shown.map(({ key, of }): ResultRow => {
      const index = indexPatients(of.patient);
      const found = shareInterval(of.hits, index, plan.statistics.confidence, { method: 'wilson' });
      return {
        ...about,
        ...counted(of),
        measure,
        group: key,
        statistic: 'share',
        value: found.value,
        ci_low: found.low,
        ci_high: found.high,
        method: found.method,
        note: [...found.notes, beyond(share(of), of.eyes.length, target, designEffect)]
          .filter((one) => one !== '')
          .join(';'),
      };
    }),
    ...[...sizes].flatMap((eyes) => limitRows(measure, eyes, target, designEffect)),
  ];
}
