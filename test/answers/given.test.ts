import { describe, expect, it } from 'vitest';
import { answersSource, givenAnswers } from '../../src/answers/given.js';
import { ingested } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';

async function answersIn(...lists: readonly string[]) {
  const names = lists.map((_, i) => `list-${i}.csv`);
  const plan = { ...planOf([]), sources: [answersSource(names)] };
  const { raw } = await ingested(Object.fromEntries(names.map((name, i) => [name, lists[i] as string])), plan);
  return givenAnswers(raw);
}

const header = 'query,patient,answer,corrected_value';

describe('a query list that came back', () => {
  it('is read by its names, answers and new values; lines without an answer are none', async () => {
    const rows = ['qa,A1,confirmed,', 'qb,A1,,', 'qc,A2,corrected,7.80', 'qd,A2,Cannot  tell,', ',A3,confirmed,'];
    expect(await answersIn([header, ...rows].join('\n'))).toEqual([
      { query: 'qa', answer: 'confirmed', written: 'confirmed', corrected: '', list: 0, row: 2 },
      { query: 'qc', answer: 'corrected', written: 'corrected', corrected: '7.80', list: 0, row: 4 },
      { query: 'qd', answer: 'cannot tell', written: 'Cannot  tell', corrected: '', list: 0, row: 5 },
    ]);
  });

  it('may have passed through a spreadsheet of another country: semicolons, capitals, the marks round values', async () => {
    const list = '\ufeffquery;answer;corrected_value\r\nqa;CORRECTED.;‘6/9’\r\nqb;corrected;0,75\r\n';
    const given = await answersIn(list);
    expect(given.map(({ answer, corrected }) => [answer, corrected])).toEqual([
      ['corrected', '6/9'],
      ['corrected', '0,75'],
    ]);
  });

  it('with another word keeps it, so that it can be told', async () => {
    const [one] = await answersIn([header, 'qa,A1,maybe,'].join('\n'));
    expect([one?.answer, one?.written]).toEqual([undefined, 'maybe']);
  });

  it('of several lists gives the answer of the later one', async () => {
    const lists = ['cannot tell', 'confirmed'].map((answer) => [header, `qa,A1,${answer},`].join('\n'));
    expect((await answersIn(...lists)).map(({ answer, list }) => [answer, list])).toEqual([['confirmed', 1]]);
  });
});
