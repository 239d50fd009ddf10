import { describe, expect, it } from 'vitest';
import { numbersOf } from '../../src/columns/table.js';
import { publishedTables } from '../../src/tables/index.js';
import { methods } from '../../src/text/methods.js';
import { warnings } from '../../src/text/warnings.js';
import { en } from '../../src/words/index.js';
import { type Audit, auditOf } from './audit.js';
import { declared, recomputing } from './recomputing.js';
import { auditText, committedFiles } from './sample.js';

const plain = await auditOf(auditText(), committedFiles());
const recomputed = await auditOf(recomputing(), committedFiles());
const toInfinity = await auditOf(
  auditText().replace(declared, `${declared}policies: { lane: to-infinity }\n`),
  committedFiles(),
);
const formulas = ['SRK/T', 'Holladay 1', 'Hoffer Q', 'Haigis'];

const mean = ({ results }: Audit, measure: string): number => results.get(measure, 'all', 'mean').value as number;

describe('predictions.recompute', () => {
  it.each(formulas)('%s gets an error of its own, and only eyes whose lens has a constant', (formula) => {
    const lens = numbersOf(recomputed.derived.eyes, `lens_constant:${formula}`);
    const errors = numbersOf(recomputed.derived.eyes, `prediction_error:${formula}`);
    expect(recomputed.results.get(`prediction_error:${formula}`, 'all', 'n').value).toBeGreaterThan(100);
    errors.forEach((error, eye) => {
      if (Number.isNaN(lens[eye])) expect(error).toBeNaN();
    });
  });

  it('moves no number of the audit without it', () => {
    for (const row of plain.rows.filter(({ measure }) => measure === 'prediction_error')) {
      expect(recomputed.results.get(row.measure, row.group, row.statistic)).toEqual(row);
    }
  });

  it('carries its caution in the page’s warnings, in every table that shows it, and in the methods', () => {
    const { results, plan } = recomputed;
    expect(warnings(results, plan, en).map(({ id }) => id)).toContain('recomputed');
    expect(warnings(plain.results, plain.plan, en).map(({ id }) => id)).not.toContain('recomputed');
    for (const name of ['refractive-accuracy', 'formulas']) {
      const table = publishedTables.get(name)?.(results, plan, en);
      expect(table?.footnotes.join(' ')).toContain('not for choosing a lens');
    }
    expect(methods(results, plan, en)).toContain('not to choose a lens');
  });
});

// The northern lane is 5 m long: −0.20 D. The southern lane writes its own length, 6 m in nearly every row: −0.167 D.
describe('policies.lane', () => {
  it('to-infinity takes 1/metres off the sphere, and from nothing else', () => {
    const lane = numbersOf(toInfinity.derived.eyes, 'sphere@outcome');
    const recorded = numbersOf(plain.derived.eyes, 'sphere@outcome');
    const shifts = lane
      .map((sphere, eye) => sphere - (recorded[eye] as number))
      .filter((shift) => !Number.isNaN(shift));
    expect(Math.min(...shifts)).toBeCloseTo(-0.2, 9);
    expect([...shifts].filter((shift) => Math.abs(shift + 1 / 6) < 1e-9).length).toBeGreaterThan(50);
    const difference = mean(toInfinity, 'prediction_error') - mean(plain, 'prediction_error');
    expect(difference).toBeLessThan(-0.16);
    expect(difference).toBeGreaterThan(-0.2);
  });

  it('is printed', () => {
    expect(warnings(toInfinity.results, toInfinity.plan, en).map(({ id }) => id)).toContain('lane');
    expect(methods(toInfinity.results, toInfinity.plan, en)).toContain('infinite distance of the chart');
  });
});
