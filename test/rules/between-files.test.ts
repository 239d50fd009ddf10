import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/records/plan.js';
import { audited, findingsOf } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';

const plan = (more: Partial<Plan> = {}): Plan =>
  planOf(
    [
      { file: 'theatre.csv', holds: 'surgery', columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' } },
      { file: 'lane.csv', columns: { patient: 'ID', eye: 'Eye', exam_date: 'Date', udva: 'V', cdva: 'W' } },
    ],
    more,
  );

async function findings(theatre: readonly string[], lane: readonly string[], by: Plan = plan()) {
  return (
    await audited(
      {
        'theatre.csv': ['ID,Eye,Date', ...theatre].join('\n'),
        'lane.csv': ['ID,Eye,Date,V,W', ...lane].join('\n'),
      },
      by,
    )
  ).findings;
}

describe('exam-without-surgery', () => {
  it('asks once about each eye that no list names, at its first row', async () => {
    const found = await findings(
      ['A1,R,2025-03-01'],
      ['A1,R,2025-04-10,6/6,6/6', 'A2,L,2025-04-10,6/6,6/6', 'A2,L,2025-05-10,6/6,6/6', 'A1,L,2025-04-10,,6/6'],
    );
    expect(
      findingsOf(found, 'exam-without-surgery').map(({ source, row, severity }) => [source, row, severity]),
    ).toEqual([
      [1, 3, 'query'],
      [1, 5, 'query'],
    ]);
  });

  it('does not ask about eyes operated outside the period', async () => {
    const by = plan({ period: { from: '2025-01-01', to: '2025-12-31' } });
    const found = await findings(['A1,R,2024-03-01', 'A2,R,2025-03-01'], ['A1,R,2024-04-10,6/6,6/6'], by);
    expect(findingsOf(found, 'exam-without-surgery')).toEqual([]);
  });

  it('does not call an operation without a date no operation', async () => {
    const found = await findings(['A1,R,', 'A2,R,2025-03-01'], ['A1,R,2025-04-10,6/6,6/6']);
    expect(findingsOf(found, 'surgery-date-missing')).toHaveLength(1);
    expect(findingsOf(found, 'exam-without-surgery')).toEqual([]);
  });
});

describe('surgery-without-exam', () => {
  it('asks about each operated eye that no file measures', async () => {
    const found = await findings(['A1,R,2025-03-01', 'A1,L,2025-03-01'], ['A1,R,2025-04-10,6/6,', 'A1,L,2025-04-10,,']);
    expect(findingsOf(found, 'surgery-without-exam')).toMatchObject([
      { severity: 'query', source: 0, row: 3, eye: 1, effect: 'kept' },
    ]);
  });

  it('is not asked of an audit that has no examinations at all', async () => {
    const alone = planOf([{ file: 'theatre.csv', holds: 'surgery', columns: { patient: 'ID', eye: 'Eye' } }]);
    const { findings: found } = await audited({ 'theatre.csv': 'ID,Eye\nA1,R\n' }, alone);
    expect(findingsOf(found, 'surgery-without-exam')).toEqual([]);
  });
});
