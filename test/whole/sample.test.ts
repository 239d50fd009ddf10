import { describe, expect, it } from 'vitest';
import { ACUITY_EFFECTS } from '../../sample-exports/generator/effects/acuity.js';
import { ASTIGMATISM_EFFECTS } from '../../sample-exports/generator/effects/astigmatism.js';
import type { Effect } from '../../sample-exports/generator/effects/effect.js';
import { PREDICTION_EFFECTS } from '../../sample-exports/generator/effects/prediction.js';
import { SERIES_EFFECTS } from '../../sample-exports/generator/effects/series.js';
import type { Expected } from '../../sample-exports/generator/expected.js';
import { makeEyes } from '../../sample-exports/generator/eyes.js';
import { type Outcome, outcomes } from '../../sample-exports/generator/outcomes.js';
import { makeSeries } from '../../sample-exports/generator/series.js';
import { SLIPS } from '../../sample-exports/generator/slips.js';
import { SEED } from '../../sample-exports/generator/truth.js';
import { families } from '../../src/records/measure.js';
import { committed } from '../sample-exports/committed.js';
import { auditOf } from './audit.js';
import { auditOfWide, auditText, committedFiles, faultlessSheets, filesOf } from './sample.js';

type Key = Pick<Expected, 'measure' | 'group' | 'statistic'>;
const nameOf = ({ measure, group, statistic }: Key): string => `${measure} | ${group} | ${statistic}`;

const sample = await auditOf(auditText(), committedFiles());
const wide = await auditOfWide();
const eyes = makeEyes(SEED);
const sheets = faultlessSheets(eyes);
const faultless = await auditOf(auditText(), filesOf(sheets));

/** Planted effects whose measure is none of this audit's yet: it compares no cornea after surgery with one before. */
const beyond = ['induced_along_incision'];
const isMeasured = ({ measure }: Key): boolean => !beyond.includes(measure);

// Expected value and standard error: 150 samples of the same making with other seeds (sample-exports/README.md).
describe('the planted truth', () => {
  const planted: readonly Expected[] = JSON.parse(committed('planted.json').toString('utf8')).effects;
  const found = planted
    .filter(isMeasured)
    .map((effect) => [nameOf(effect), effect, effect.audit === 'audit.yaml' ? sample : wide] as const);

  it('is looked for in every effect but those that are not measured', () => {
    expect(planted.filter((effect) => !isMeasured(effect)).map(({ measure }) => measure)).toEqual(beyond);
    expect(found.length).toBeGreaterThan(20);
  });

  it.each(found)('%s is found within three standard errors', (_, { expected, standardError, ...key }, audit) => {
    const { value } = audit.results.get(key.measure, key.group, key.statistic);
    expect(Math.abs((value as number) - expected)).toBeLessThan(3 * standardError);
  });

  // Mistakes are five standard errors from the truth, which is met to three.
  it.each(found)('%s is not what a likely mistake would give', (_, { standardError, mistakes, ...key }, audit) => {
    const { value } = audit.results.get(key.measure, key.group, key.statistic);
    for (const { mistake, value: mistaken } of mistakes) {
      expect(Math.abs((value as number) - mistaken), mistake).toBeGreaterThan(2 * standardError);
    }
  });
});

// The generator works out the same numbers from its own eyes, with its own optics and sums and no line of src/ or
// pipeline/: what is left is rounding in the last digits.
describe('without its slips, the sample gives what its generator works out', () => {
  const all = outcomes(eyes);
  const unpredicted = new Set(sheets[0]?.rows.filter((row) => row[16] === '').map(([code, side]) => `${code} ${side}`));
  const predicted = all.filter(
    ({ eye }) => !unpredicted.has(`${eye.patient.code} ${eye.operation.laterality === 'right' ? 'R' : 'L'}`),
  );
  /** Means over eyes without a refraction too: no outcome as the generator counts them. */
  const wider = ['cdva', 'cdva_before'];
  const effects: readonly Effect<readonly Outcome[]>[] = [
    ...PREDICTION_EFFECTS,
    ...ASTIGMATISM_EFFECTS,
    ...ACUITY_EFFECTS,
  ].filter((effect) => isMeasured(effect) && !wider.includes(effect.measure));

  it.each(effects.map((effect) => [nameOf(effect), effect] as const))('%s', (_, { measure, group, statistic, of }) => {
    const { value } = faultless.results.get(measure, group, statistic);
    expect(value).toBeCloseTo(of(measure === 'prediction_error' ? predicted : all), 12);
  });

  it.each(SERIES_EFFECTS.map((effect) => [nameOf(effect), effect] as const))('wide.csv: %s', (_, effect) => {
    const { value } = wide.results.get(effect.measure, effect.group, effect.statistic);
    expect(value).toBeCloseTo(effect.of(makeSeries(SEED)), 12);
  });

  it('leaves nothing out', () => {
    expect(faultless.findings.filter(({ severity }) => severity === 'set aside')).toEqual([]);
  });
});

describe('the books', () => {
  it.each(Object.entries({ sample, wide, faultless }))('%s: every row read is used or set aside', (_, audit) => {
    expect(audit.derived.tables.books).toHaveLength(audit.raw.length);
    for (const { source, read, used, setAside } of audit.derived.tables.books) {
      const aside = Object.values(setAside).reduce((sum, rows) => sum + rows, 0);
      expect(used + aside, audit.raw[source]?.file).toBe(read);
      expect(read).toBe(audit.raw[source]?.rows);
    }
  });

  // What each slip makes of its row; the other slips spoil a value, and their row is used.
  const reasonOf: Readonly<Record<string, string>> = {
    'patient-missing': 'patient-missing',
    'eye-missing': 'eye-missing',
    'eye-both': 'eye-both',
    'exam-without-surgery': 'eye-not-operated',
    'same-key-equal': 'duplicate-row',
    'date-unreadable': 'day-unknown',
  };

  it('sets aside the rows of these slips, and no others for such a reason', () => {
    const count = (reasons: readonly string[]) =>
      Object.fromEntries(
        [...new Set(reasons)].sort().map((one) => [one, reasons.filter((other) => other === one).length]),
      );
    const planted = SLIPS.flatMap(({ rule, file }) => (reasonOf[rule] ? [`${file}: ${reasonOf[rule]}`] : []));
    const found = sample.derived.tables.books.flatMap(({ source, setAside }) =>
      Object.entries(setAside).flatMap(([reason, rows]) =>
        new Array<string>(rows).fill(`${sample.raw[source]?.file}: ${reason}`),
      ),
    );
    const known = new Set(Object.values(reasonOf));
    expect(count(found.filter((one) => known.has(one.split(': ')[1] ?? '')))).toEqual(count(planted));
  });

  const groups = ['all', 'technique=manual', 'technique=laser-assisted'];
  it.each(families.flatMap((family) => groups.map((group) => [family, group] as const)))(
    '%s, %s: eyes operated are analysed or left out for a reason',
    (family, group) => {
      const flow = sample.rows.filter((row) => row.measure === `flow:${family}` && row.group === group);
      const [operated, ...steps] = flow.map(({ value }) => value as number);
      expect(steps.reduce((sum, value) => sum + value, 0)).toBe(operated);
      expect(operated).toBe(sample.results.get('eyes_operated', group, 'count').value);
      expect(flow.at(-1)?.statistic).toBe('analysed');
    },
  );
});
