import { describe, expect, it } from 'vitest';
import { harmonise } from '../../pipeline/2-harmonise.js';
import { qualify } from '../../pipeline/3-qualify.js';
import { plan as planFrom } from '../../pipeline/plan.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { concatFindings } from '../../src/findings/builder.js';
import { allFindings, ingested } from '../findings/audited.js';
import { outcomeOf } from '../propose/proposed.js';
import { type Hostile, hostileExports } from './hostile.js';

/** The proposed text with the # taken away from lines of these texts. */
function taken(text: string, lines: readonly string[]): string {
  const isTaken = (line: string): boolean => {
    const [, , told = ''] = /^( *)# (.*)$/.exec(line) ?? [];
    return lines.some((wanted) => told.replace(/ +# .*$/, '') === wanted);
  };
  return text
    .split('\n')
    .map((line) => (isTaken(line) ? line.replace('# ', '') : line))
    .join('\n');
}

const short = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0);

/** The last refraction and corrected acuity of the first eye, as far as there are any. */
function firstEye({ tables }: { tables: ReturnType<typeof harmonise>['tables'] }): string {
  const last = (kind: 'refractions' | 'corrected', names: readonly string[]): number[] => {
    const table = tables.measurements[kind];
    const row = integersOf(table, 'eye').lastIndexOf(0);
    return row < 0 ? [] : names.map((name) => numbersOf(table, name)[row] as number);
  };
  const [sphere, cylinder, axis] = last('refractions', ['sphere', 'cylinder', 'axis']);
  const [acuity] = last('corrected', ['logMAR']);
  const side = integersOf(tables.eyes, 'laterality')[0] === 0 ? 'right' : 'left';
  const refraction = sphere === undefined ? [] : [`${short(sphere)} +${short(cylinder ?? 0)} × ${short(axis ?? 0)}`];
  return [side, ...refraction, ...(acuity === undefined ? [] : [short(acuity)])].join(', ');
}

async function judged(text: string, { bytes, name }: Hostile) {
  const planned = planFrom(text);
  if ('faults' in planned)
    return { faults: planned.faults.map(({ message }) => message), findings: [], eyes: undefined };
  const { raw, findings } = await ingested({ [`${name}.csv`]: bytes }, planned.plan);
  const soFar = allFindings(findings);
  if (soFar.some(({ severity }) => severity === 'stop')) return { faults: [], findings: soFar, eyes: undefined };
  const harmonised = harmonise(raw, planned.plan);
  const qualified = qualify(harmonised.tables, raw, planned.plan);
  const all = allFindings(concatFindings([findings, harmonised.findings, qualified.findings]));
  return { faults: [], findings: all, eyes: qualified };
}

const kindsOf = (doubts: readonly { kind: string; header: string }[]): readonly string[] =>
  doubts.map(({ kind, header }) => (header === '' ? kind : `${kind}: ${header}`));

describe('an export of which nobody has written an audit.yaml', () => {
  it.each(hostileExports.map((one) => [one.name, one.peculiarity, one] as const))('%s: %s', async (_, __, one) => {
    const outcome = await outcomeOf({ [`${one.name}.csv`]: one.bytes });
    if (outcome.kind === 'unfit') {
      expect(outcome.files.flatMap(({ findings }) => findings.map(({ rule }) => rule))).toEqual(one.unfit);
      return;
    }
    expect(outcome.kind).toBe(one.nothing ? 'nothing' : 'proposed');
    if (outcome.kind === 'nothing') return;

    const { text, doubts } = outcome.proposal;
    expect(kindsOf(doubts)).toEqual(expect.arrayContaining([...(one.doubts ?? [])]));
    const unedited = await judged(text, one);
    expect(unedited.faults).toEqual(one.faults ?? []);
    const { faults, findings, eyes } = one.take ? await judged(taken(text, one.take), one) : unedited;
    expect(faults).toEqual([]);
    const told = (severity: string) =>
      findings.flatMap((finding) => (finding.severity === severity ? [finding.rule] : [])).toSorted();
    expect(told('stop')).toEqual(one.stops ?? []);
    if (one.queries) expect(told('query')).toEqual(one.queries);
    if (!one.reads) return;
    expect(eyes?.tables.eyes.numRows()).toBe(one.reads.eyes);
    expect(eyes && firstEye(eyes)).toBe(one.reads.first);
  });
});
