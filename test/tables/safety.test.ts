import { expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { suppressed } from '../../src/results/suppress.js';
import { auditOfEyes, singles } from '../comparison/made-up-audit.js';
import { footnotesOf } from '../whole/made-up-safety.js';

// 30 patients in A and in B, no complication in any whose record says so: all in A, seven in B. Below a cell size of 10
// nothing of the seven may be told.
it('tells no limit for no event among records that are hidden', async () => {
  const errors = Array.from({ length: 30 }, () => 0);
  const none = { complication: 'none' } as const;
  const inA = singles('A', errors, 100).map((eye) => ({ ...eye, ...none }));
  const inB = singles('B', errors, 200).map((eye, i) => (i < 7 ? { ...eye, ...none } : eye));
  const audit = await auditOfEyes([...inA, ...inB]);
  const rows = suppressed(audit.rows, { smallCells: 10, hiddenPairs: new Set() });
  const told = footnotesOf({ ...audit, rows, results: indexResults(rows) }, 'safety');
  expect(footnotesOf(audit, 'safety')).toContain('B (0 of 7 patients)');
  expect(told).toContain('All eyes (0 of 37 patients)');
  expect(told).not.toContain('0 of 0 patients');
  expect(told).not.toContain('not shown %');
});
