import { describe, expect, it } from 'vitest';
import { clopperPearson } from '../../src/statistics/share.js';
import { warnings } from '../../src/text/warnings.js';
import { en } from '../../src/words/index.js';
import { cellsOf, footnotesOf, madeUpSafety } from './made-up-safety.js';

const audit = await madeUpSafety();
const declared = await madeUpSafety('        blank_means: { complication: none }');
const { results } = audit;
const value = (measure: string, statistic: string, group = 'all') => results.get(measure, group, statistic).value;

describe('complications', () => {
  // Two cells are blank (T04, T09): ten eyes are known, PCR in T02, a code that no list has in T06.
  it('have all operated eyes with a record as their denominator; blank is missing', () => {
    const told = (measure: string) => [value(measure, 'count'), value(measure, 'n'), value(measure, 'missing')];
    expect(told('any_complication')).toEqual([2, 10, 2]);
    expect(told('complication:posterior_capsule_rupture')).toEqual([1, 10, 2]);
    expect(told('complication:vitreous_loss')).toEqual([0, 10, 2]);
    expect(told('complication:other')).toEqual([1, 10, 2]);
  });

  it('become safe only by a declaration, and the table says which', () => {
    expect(declared.results.get('any_complication', 'all', 'n').value).toBe(12);
    expect(declared.results.get('any_complication', 'all', 'missing').value).toBe(0);
    expect(footnotesOf(audit, 'safety')).toContain('A blank cell is missing, never “none”');
    expect(footnotesOf(declared, 'safety')).toContain('counts as “none” because audit.yaml declares it');
  });

  it('are missing altogether where every cell is blank, and the table still stands', async () => {
    const blank = await madeUpSafety('', [
      'T01,R,2025-01-06,old,m1,2,,yes,no,4.0,0,0,20/40,20/20,20/20,,2500,2250',
      'T02,R,2025-01-07,old,m1,3,,yes,no,6.0,0,0,20/20,20/40,20/32,,2000,1600',
    ]);
    expect(blank.results.get('any_complication', 'all', 'n').value).toBe(0);
    const cells = cellsOf(blank, 'safety');
    expect(cells.get('Complication during surgery, n/N, %')?.[0]).toMatch(/^not estimable/);
    expect(cells.get('not recorded, eyes')).toEqual(['2']);
  });

  // One eye a patient: the design effect is 1, and the interval that of Clopper and Pearson at 1 of 10 (R 4.2.2,
  // binom.test(1, 10): 0.002528579 to 0.4450161).
  it('have exact intervals', () => {
    const row = results.get('complication:posterior_capsule_rupture', 'all', 'share');
    expect([row.ci_low, row.ci_high]).toEqual([expect.closeTo(0.002528579, 8), expect.closeTo(0.4450161, 7)]);
    expect(row.method).toBe('exact-effective-n');
    expect(clopperPearson(1, 10, 0.95)[0]).toBe(row.ci_low);
  });

  // None in ten patients: 1 − 0.05^(1/10) = 0.25887.
  it('that did not happen print the rule for zero events', () => {
    expect(value('complication:vitreous_loss', 'share_upper_one_sided')).toBeCloseTo(0.25887, 5);
    expect(footnotesOf(audit, 'safety')).toContain('Vitreous loss, All eyes (0 of 10 patients) below 26 %');
    expect(results.find('complication:posterior_capsule_rupture', 'all', 'share_upper_one_sided')).toBeUndefined();
  });

  it('stand beside the capsulotomy and a return to theatre, each an outcome of its own', () => {
    expect([value('capsulotomy_incomplete', 'count'), value('capsulotomy_incomplete', 'n')]).toEqual([1, 12]);
    expect([value('return_to_theatre', 'count'), value('return_to_theatre', 'n')]).toEqual([1, 12]);
    const cells = cellsOf(audit, 'safety');
    expect(cells.get('Capsulotomy incomplete, n/N, %')?.[0]).toMatch(/^1\/6, /);
    expect(cells.get('Posterior capsule rupture, n/N, %')?.[2]).toBe('1/10, 10 (0 to 45)');
  });
});

describe('endothelium', () => {
  // Losses in %, old: 10, 20, 0, 5 (T04 has no count before, T05 none after); new: six of 5.
  it('is told of eyes counted before and after', () => {
    expect(value('flow:endothelium', 'no_before')).toBe(1);
    expect(value('flow:endothelium', 'not_recorded')).toBe(1);
    expect([value('endothelial_loss', 'n'), value('endothelial_loss', 'mean', 'technique=old')]).toEqual([10, 8.75]);
    expect(value('endothelial_loss', 'median', 'technique=old')).toBeCloseTo(7.5, 12);
  });

  // 100(1 − (0.9·0.8·1·0.95)^(1/4)) = 100(1 − 0.684^0.25) = 9.0581; six equal losses of 5 are 5.
  it('has its typical loss from the logarithms of what is left', () => {
    expect(value('endothelial_loss', 'geometric_mean', 'technique=old')).toBeCloseTo(9.0581, 3);
    expect(value('endothelial_loss', 'geometric_mean', 'technique=new')).toBeCloseTo(5, 10);
    const all = results.get('endothelial_loss', 'all', 'geometric_mean');
    // ln of what is left: four of the old (−0.105361, −0.223144, 0, −0.051293), six of ln 0.95. Mean −0.0687556,
    // SD 0.0596636, t(9) at 97.5 % 2.262157: limits of the loss 100(1 − exp(−0.0687556 ± 2.262157·0.0596636/√10)).
    expect(all.ci_low).toBeCloseTo(100 * (1 - Math.exp(-0.0687556 + (2.262157 * 0.0596636) / Math.sqrt(10))), 3);
    expect(all.ci_high).toBeCloseTo(100 * (1 - Math.exp(-0.0687556 - (2.262157 * 0.0596636) / Math.sqrt(10))), 3);
  });

  it('says what counts are worth', () => {
    expect(footnotesOf(audit, 'safety')).toContain('regression to the mean');
    expect(footnotesOf(audit, 'safety')).toContain('no count before surgery 1');
  });

  it('states the months after surgery where examinations have a day', async () => {
    const sample = await import('./sample.js');
    const { auditOf } = await import('./audit.js');
    const dated = await auditOf(sample.auditText(), sample.committedFiles());
    expect(footnotesOf(dated, 'safety')).toMatch(/Months from surgery to the count, median \(range\): manual 2\.9/);
  });
});

describe('time and energy', () => {
  // Energies of the old: 0 4 5 6 7 8, median 5.5, one zero; of the new: 0 1 1.5 2 2.5 3, median 1.75.
  it('are medians, with the zeros counted', () => {
    expect(value('effective_energy', 'median', 'technique=old')).toBe(5.5);
    expect(value('effective_energy', 'median', 'technique=new')).toBe(1.75);
    expect(value('effective_energy', 'count_zero')).toBe(2);
  });

  // All 36 differences new − old; the 18th and 19th in order are both −3.5 (R 4.2.2: wilcox.test(new, old,
  // conf.int = TRUE)$estimate is their median).
  it('are compared by the shift', () => {
    const [old, fresh] = [
      [0, 4, 5, 6, 7, 8],
      [0, 1, 1.5, 2, 2.5, 3],
    ];
    const all = (fresh as number[]).flatMap((a) => (old as number[]).map((b) => a - b)).sort((a, b) => a - b);
    const middle = ((all[17] as number) + (all[18] as number)) / 2;
    expect(value('effective_energy', 'shift', 'technique=new vs old')).toBeCloseTo(middle, 10);
  });

  // Grade 2: 0 1 1.5 2 4 5, median 1.75; grade 3: 0 2.5 3 6 7 8, median 4.5.
  it('are told by nucleus grade', () => {
    expect(value('effective_energy', 'median', 'nucleus_grade=2')).toBe(1.75);
    expect(value('effective_energy', 'median', 'nucleus_grade=3')).toBe(4.5);
    expect(cellsOf(audit, 'resources').get('Median, Nucleus grade 3')?.[2]).toMatch(/^4\.50/);
  });

  it('are not pooled over machines without a warning', () => {
    expect(results.get('effective_energy', 'all', 'median').note).toContain('several-machines');
    expect(results.get('effective_energy', 'technique=old', 'median').note).not.toContain('several-machines');
    expect(footnotesOf(audit, 'resources')).toContain('Eyes operated with different machines, pooled');
    const told = warnings(results, audit.plan, en).find(({ id }) => id === 'machines');
    expect(told?.text).toContain('m1, m2');
  });
});
