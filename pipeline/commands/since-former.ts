import type { Plan } from '../../src/records/plan.js';
import { type Results, resultKey } from '../../src/results/index.js';
import type { SinceFormer } from '../../src/screens/run.js';
import { valueText } from '../../src/tables/value-text.js';
import { headlines } from '../../src/text/headline.js';
import type { Words } from '../../src/words/index.js';
import type { Former } from '../publish/former.js';

/** What moved against the report that this run replaced: settings by key, and the headline numbers. */
export function sinceFormer(former: Former, plan: Plan, results: Results, words: Words): SinceFormer {
  const moved = headlines(results, words).flatMap(({ label, from }) => {
    const row = results.rows.find((each) => resultKey(each) === from[0]);
    const before = former.values.get(from[0] ?? '');
    if (!row || row.value === before) return [];
    const text = (value: number | undefined): string => valueText({ ...row, value }, words);
    return [{ label, from: text(before), to: text(row.value) }];
  });
  return { settings: changedKeys(former.settings, JSON.parse(JSON.stringify(plan))), moved };
}

/** Paths of the settings that differ; lists and single values are compared whole. */
function changedKeys(before: unknown, now: unknown, path = ''): readonly string[] {
  if (isMapping(before) && isMapping(now)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(now)])];
    return keys.flatMap((key) => changedKeys(before[key], now[key], path === '' ? key : `${path}.${key}`));
  }
  return JSON.stringify(withoutLines(before)) === JSON.stringify(withoutLines(now)) ? [] : [path];
}

/** A line number of audit.yaml moves with every comment above it and is no setting. */
function withoutLines(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutLines);
  if (!isMapping(value)) return value;
  const kept = Object.entries(value).filter(([key]) => key !== 'line');
  return Object.fromEntries(kept.map(([key, inner]) => [key, withoutLines(inner)]));
}

function isMapping(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
