import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fileKinds, identifierKinds } from '../../src/findings/detail-kinds.js';
import { tell } from '../../src/findings/telling.js';
import { noDay } from '../../src/records/canonical.js';
import type { Finding } from '../../src/records/finding.js';
import { rules } from '../../src/rules/index.js';
import { en } from '../../src/words/index.js';
import { after, lane } from '../rules/clinic.js';
import { allFindings } from './audited.js';
import { planOf } from './plan.js';

const words = en.findings;
const context = { raw: [], plan: planOf([]), words };

const finding = (more: Partial<Finding>): Finding => ({
  rule: 'axis-missing',
  severity: 'query',
  source: -1,
  row: 0,
  column: undefined,
  field: undefined,
  written: undefined,
  eye: -1,
  day: noDay,
  effect: 'kept',
  detail: Number.NaN,
  other: Number.NaN,
  ...more,
});

/** Names of rules in the sources of the stages that find things. */
function rulesInSources(): ReadonlySet<string> {
  const root = new URL('../../', import.meta.url);
  const found = new Set(rules.flatMap(({ id, tells = [id] }) => tells));
  for (const folder of ['pipeline', 'pipeline/ingest', 'pipeline/harmonise', 'src/rules', 'src/answers']) {
    for (const name of readdirSync(new URL(folder, root))) {
      if (!name.endsWith('.ts')) continue;
      const text = readFileSync(new URL(`${folder}/${name}`, root), 'utf8');
      for (const [, rule] of text.matchAll(/rule: '([a-z-]+)'/g)) found.add(rule as string);
    }
  }
  return found;
}

describe('a finding in words', () => {
  it('exists for every rule that any stage names', () => {
    const known = rulesInSources();
    expect(known.size).toBeGreaterThan(25);
    expect([...known].filter((rule) => !(rule in words.rules))).toEqual([]);
  });

  it('says something in every part, and never blames', () => {
    for (const rule of Object.keys(words.rules)) {
      for (const severity of ['query', 'set aside', 'stop'] as const) {
        const { title, sentence, expected, act, effect } = tell(
          finding({ rule, severity, written: 'x', field: 'k1', detail: 3, other: 2 }),
          context,
        );
        for (const text of [title, sentence, expected, act, effect]) {
          expect([rule, text.trim() !== '']).toEqual([rule, true]);
          expect(text).not.toMatch(/undefined|NaN|wrong|error|invalid|illegal|failed/i);
        }
      }
    }
  });

  it('names each kind of person’s detail, and of file', () => {
    const kinds = identifierKinds.map(
      (_, detail) => tell(finding({ rule: 'identifier-present', detail }), context).sentence,
    );
    expect(new Set(kinds).size).toBe(identifierKinds.length);
    const files = fileKinds.map((_, detail) => tell(finding({ rule: 'file-not-csv', detail }), context).sentence);
    expect(new Set(files).size).toBe(fileKinds.length);
  });

  it('gives the limits in force, of the range that was passed', async () => {
    const rows = [`A1,R,${after},75,0,0`, `A2,R,${after},-13,0,0`, `A3,R,${after},-4.5,0,0`];
    const { findings, raw } = await lane('S,C,A', rows, { sphere: 'S', cylinder: 'C', axis: 'A' });
    const spheres = allFindings(findings).filter(({ rule }) => rule === 'sphere-range');
    expect(spheres.map((one) => tell(one, { raw, plan: planOf([]), words }))).toMatchObject([
      {
        title: 'sphere outside −30 to 30 D',
        sentence: '‘75’ cannot be a sphere',
        expected: '−30 to 30 D',
        effect: 'refraction left out, acuity kept',
      },
      { title: 'unusual sphere', expected: 'most lie in −12 to 8 D' },
      { title: 'unusual sphere', expected: 'most lie in −4 to 4 D' },
    ]);
  });

  it('puts headers in quotation marks where a sign in them would mean something to audit.yaml', () => {
    const plan = planOf([{ file: 'lane.csv', columns: { cylinder: '+cyl: D' } }]);
    const raw = [
      { source: 0, file: 'lane.csv', label: 'lane.csv', header: [], kept: [], columns: [], rows: 0 },
    ] as never;
    const twice = finding({
      rule: 'column-twice',
      severity: 'stop',
      source: 0,
      column: '+cyl: D',
      field: 'cylinder',
      detail: 2,
    });
    expect(tell(twice, { raw, plan, words }).lines[0]).toBe('cylinder: { column: "+cyl: D", occurrence: 1 }');
  });

  it('does not exist for a rule that nobody knows', () => {
    expect(() => tell(finding({ rule: 'no-such-rule' }), context)).toThrow(RangeError);
  });
});
