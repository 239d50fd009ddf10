import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { visualAcuity } from '../../src/tables/visual-acuity.js';
import { en } from '../../src/words/index.js';
import { auditRows, replaced, without } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

const table = visualAcuity(indexResults(auditRows), planOf(), en);

describe('visualAcuity', () => {
  it('shows uncorrected and corrected acuity, after and before surgery', () => {
    const blocks = table?.rows.filter(({ indent }) => indent === 0).map(({ label }) => label);
    expect(blocks).toEqual([
      'Uncorrected distance acuity after surgery, logMAR (distance-target eyes)',
      'Uncorrected distance acuity before surgery, logMAR (distance-target eyes)',
      'Corrected distance acuity after surgery, logMAR',
      'Corrected distance acuity before surgery, logMAR',
    ]);
  });

  // Holladay 2004: 20/20 and 20/200 average to logMAR 0.5, which is 20/63 (20 × 10^0.5 = 63.2; 6 × 10^0.5 = 18.97).
  it('turns the mean logMAR into a fraction', () => {
    expect(cellsOf(table, 'Mean')[2]).toBe('0.50 (0.48 to 0.52)');
    expect(cellsOf(table, 'Snellen equivalent of the mean')[2]).toBe('20/63 (6/19.0)');
  });

  it('shows the lines in feet and metres, with counts', () => {
    expect(cellsOf(table, '20/40 (6/12) or better')[2]).toBe('278/371, 74.9 (70.3 to 79.1)');
    expect(cellsOf(table, '20/25 (6/7.5) or better')).toHaveLength(3);
    expect(cellsOf(table, '20/12.5 (6/3.8) or better')).toHaveLength(3);
  });

  it('prints how many low-vision words entered the mean, with every mean', () => {
    expect([0, 1, 2, 3].map((nth) => cellsOf(table, 'Low vision entered as logMAR', nth)[2])).toEqual([
      '2',
      '2',
      '2',
      '2',
    ]);
    expect(table?.footnotes.join(' ')).toContain(
      'Counting fingers (1.9) and hand movements (2.3) enter means as logMAR',
    );
  });

  it('has no greatest value where an eye sees light or less', () => {
    const about = { measure: 'cdva', n: 371, missing: 4, unit: 'logMAR', note: 'not-estimable:light-perception' };
    const seen = visualAcuity(indexResults(replaced(auditRows, rowsOf(about, { max: undefined }))), planOf(), en);
    expect(cellsOf(seen, 'Range', 2)[2]).toBe('\u22120.10 to not estimable*');
    expect(seen?.footnotes.some((note) => note.startsWith('* Light perception or none'))).toBe(true);
  });

  it('says which eyes count as distance eyes, only where uncorrected acuity is shown', () => {
    const note =
      'Distance-target eyes: intended spherical equivalent from \u22120.50 to +0.50 D; eyes without an intended value (7) count';
    expect(table?.footnotes.join(' ')).toContain(note);
    const corrected = without(auditRows, ({ measure }) => measure.startsWith('udva'));
    expect(visualAcuity(indexResults(corrected), planOf(), en)?.footnotes.join(' ')).not.toContain(note);
  });

  it('is not made where no acuity after surgery is known', () => {
    const before = without(auditRows, ({ measure }) => measure === 'udva' || measure === 'cdva');
    expect(visualAcuity(indexResults(before), planOf(), en)).toBeUndefined();
  });
});
