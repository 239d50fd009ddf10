import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { cohortRemainderNote } from '../../src/tables/cohort-remainder.js';
import { independentNote } from '../../src/tables/independent-note.js';
import { en } from '../../src/words/index.js';
import { planOf } from './plan.js';
import { rowsOf } from './rows.js';

const operated = (group: string, n: number) =>
  rowsOf({ measure: 'eyes_operated', group, n, unit: 'eyes', method: 'count' }, { count: n });

const columns = [
  { group: 'technique=manual', label: 'manual' },
  { group: 'technique=laser-assisted', label: 'laser-assisted' },
  { group: 'all', label: 'All eyes' },
];
const head = ['Statistic', ...columns.map(({ label }) => label)].map((text) => ({ text }));
const draft = { id: 'made-up', title: '', head, rows: [], footnotes: [] };

function notesFor(manual: number, laser: number, all: number): readonly string[] {
  const rows = [
    operated('technique=manual', manual),
    operated('technique=laser-assisted', laser),
    operated('all', all),
  ];
  return cohortRemainderNote(draft, { results: indexResults(rows.flat()), plan: planOf(), words: en, columns });
}

describe('eyes of no cohort', () => {
  it('are told where the columns do not add up to all eyes', () => {
    expect(notesFor(216, 203, 420)).toEqual(['One eye belongs to no cohort shown: it is counted in all eyes only.']);
    expect(notesFor(216, 200, 420)[0]).toMatch(/^4 eyes belong/);
  });

  it('are not told where there are none', () => {
    expect(notesFor(217, 203, 420)).toEqual([]);
  });
});

describe('a share of 100 %', () => {
  it('tells what its lower limit would be were all eyes independent', () => {
    // Wilson at 20 of 20: 0.838875 to 1; at 12 of 12: 0.757508 to 1 (1/(1 + z²/n), worked by hand).
    const about = { measure: 'error', group: 'all', n: 20, unit: 'share', method: 'wilson-patients' } as const;
    const shown = rowsOf(about, { 'share_within_1.00': [1, 0.757508, 1] });
    const bound = rowsOf(
      { ...about, method: 'independent-eyes' },
      { 'independent:share_within_1.00': [1, 0.838875, 1] },
    );
    const rows = [{ label: '', indent: 0, cells: [{ text: '', rows: shown }] }] as const;
    const results = indexResults([...shown, ...bound]);
    expect(independentNote({ ...draft, rows }, { results, plan: planOf(), words: en, columns })).toEqual([
      'Shares of exactly 0 or 100 %, were all eyes independent: 20 eyes, 84 to 100 %.',
    ]);
  });
});
