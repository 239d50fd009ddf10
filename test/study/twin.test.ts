// Results of the sample once more by an independent twin in base R (twin.R), where Rscript is on the machine.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { columnsOf } from '../../pipeline/analyse/columns.js';
import { covariatesOf } from '../../pipeline/analyse/covariates.js';
import type { Covariate } from '../../src/comparison/model-matrix.js';
import type { Derived } from '../../src/records/derived.js';
import { groupPair } from '../../src/results/index.js';
import { auditOfEyes, type MadeEye } from '../comparison/made-up-audit.js';
import { type Audit, auditOf } from '../whole/audit.js';
import { auditText, committedFiles } from '../whole/sample.js';

const hasR = spawnSync('Rscript', ['--version']).status === 0;
if (!hasR) console.warn('Rscript is not on this machine: the twin in R is skipped');

/** Measures that the twin works out, by what it does with them. */
const kinds = {
  prediction_error: 'error',
  cdva: 'mean',
  any_complication: 'share',
  refractive_cylinder_after: 'vector',
} as const;
type Kind = (typeof kinds)[keyof typeof kinds];

const head = 'set,measure,kind,cohort,patient,value,second,axial_length,age,surgeon';

function covariateText(one: Covariate | undefined, eye: number): string {
  if (!one) return '';
  if (one.kind === 'number') return Number.isNaN(one.values[eye]) ? '' : String(one.values[eye]);
  return one.codes[eye] ? `S${one.codes[eye]}` : '';
}

/** The eyes with a value of one measure, at full precision. */
function linesOf(set: string, name: string, kind: Kind, derived: Derived, covariates: readonly Covariate[]) {
  const measure = derived.registry.find(
    (one) => (one.vector?.name ?? one.name) === name && one.vector?.component !== 'y',
  );
  if (!measure) throw new RangeError(`twin: no measure ${name}`);
  const { values, second, patient, analysed } = columnsOf(measure, derived);
  const [reference] = derived.cohorts?.names ?? [];
  const cohortOf = (eye: number): string => {
    const cohort = derived.cohorts?.names[(derived.cohorts.code[eye] as number) - 1];
    return cohort === undefined ? '' : cohort === reference ? 'reference' : 'compared';
  };
  return [...values.keys()]
    .filter((eye) => analysed[eye] === 1 && Number.isFinite(values[eye]))
    .map((eye) => {
      const told = [0, 1, 2].map((i) => covariateText(covariates[i], eye));
      return [set, name, kind, cohortOf(eye), `P${patient[eye]}`, values[eye], second?.[eye] ?? '', ...told].join(',');
    });
}

const adjusted = `${auditText()}\nstatistics: { adjust_for: [axial_length, age, surgeon] }\n`;
const firstEyes = adjusted.replace('eligibility:\n', 'eligibility:\n  eyes_per_patient: first\n');

/** Each of 12 patients with one eye in each cohort. */
const fellowEyes: readonly MadeEye[] = Array.from({ length: 12 }, (_, i) =>
  (['A', 'B'] as const).map(
    (technique): MadeEye => ({
      patient: `P${10 + i}`,
      side: technique === 'A' ? 'R' : 'L',
      technique,
      error: (((i * 7 + (technique === 'A' ? 0 : 5)) % 11) - 5) / 8,
      cylinder: 0.25 + ((i * 5 + (technique === 'A' ? 1 : 4)) % 6) / 4,
      axis: 5 + ((i * 47 + (technique === 'A' ? 0 : 31)) % 175),
    }),
  ),
).flat();

/** The numbers of one call of the twin: set, measure, group, statistic, part, number. */
function twin(lines: readonly string[]): readonly (readonly string[])[] {
  const folder = mkdtempSync(join(tmpdir(), 'twin-'));
  const [input, output] = [join(folder, 'eyes.csv'), join(folder, 'results.csv')];
  writeFileSync(input, `${[head, ...lines].join('\n')}\n`);
  const run = spawnSync('Rscript', [fileURLToPath(new URL('twin.R', import.meta.url)), input, output], {
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error(`twin.R: ${run.stderr}`);
  const text = readFileSync(output, 'utf8');
  rmSync(folder, { recursive: true });
  return text
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));
}

/** Both numbers where they differ by more than 1e-9 of the larger of 1 and the number. */
function unlike(audits: Readonly<Record<string, Audit>>, lines: readonly (readonly string[])[]): readonly string[] {
  return lines.flatMap(([set = '', measure = '', group = '', statistic = '', part = '', number = '']) => {
    const { derived, results } = audits[set] as Audit;
    const { field, names } = derived.cohorts as NonNullable<Derived['cohorts']>;
    const [reference = '', compared = ''] = names;
    const groups: Readonly<Record<string, string>> = {
      all: 'all',
      reference: groupPair(field, reference),
      compared: groupPair(field, compared),
      both: `${groupPair(field, compared)} vs ${reference}`,
    };
    const row = results.get(measure, groups[group] ?? '', statistic);
    const ours = row[part as 'value' | 'ci_low' | 'ci_high'];
    const theirs = Number(number);
    const agree = ours !== undefined && Math.abs(ours - theirs) <= 1e-9 * Math.max(1, Math.abs(theirs));
    return agree ? [] : [`${set} ${measure} ${group} ${statistic} ${part}: ${ours} here, ${theirs} in R`];
  });
}

describe.skipIf(!hasR)('the twin in R agrees to 1e-9', async () => {
  const audits = hasR
    ? {
        sample: await auditOf(adjusted, committedFiles()),
        singles: await auditOf(firstEyes, committedFiles()),
        fellows: await auditOfEyes(fellowEyes),
      }
    : undefined;
  if (!audits) return;
  const exported = (set: keyof typeof audits, names: readonly (keyof typeof kinds)[]): readonly string[] => {
    const { derived, plan } = audits[set];
    return names.flatMap((name) => linesOf(set, name, kinds[name], derived, covariatesOf(derived, plan)));
  };
  const lines = twin([
    ...exported('sample', ['prediction_error', 'cdva', 'any_complication', 'refractive_cylinder_after']),
    ...exported('singles', ['prediction_error']),
    ...exported('fellows', ['prediction_error', 'refractive_cylinder_after']),
  ]);
  const of = (set: string) => lines.filter(([one]) => one === set);

  it('in every estimate, interval, test and adjusted difference of the sample', () => {
    expect(unlike(audits, of('sample'))).toEqual([]);
    expect(of('sample').length).toBeGreaterThan(200);
  });

  it('in the textbook forms of one eye a patient: t.test, prop.test, Welch', () => {
    expect(unlike(audits, of('singles'))).toEqual([]);
    expect(of('singles')).toHaveLength(23);
  });

  it('in the textbook forms of fellow eyes: the paired t and the paired Hotelling test', () => {
    expect(unlike(audits, of('fellows'))).toEqual([]);
    expect(of('fellows')).toHaveLength(7);
  });
});
