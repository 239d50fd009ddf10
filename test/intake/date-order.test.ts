import { expect, it } from 'vitest';
import { judgeDateOrder } from '../../src/intake/date-order.js';

it.each([
  ['day-first', ['', '05/06/2024', '13/06/2024']],
  ['day-first', ['13.05.2024 10:15', '2024-05-01']],
  ['month-first', ['05/06/2024', '05/13/2024']],
  ['day-first', ['13.05.24', '21.06.24', '02.07.24', '30.07.25']],
  ['year-first', ['24-05-13', '24-06-21', '24-07-02', '25-07-30']],
  ['year-first', ['2024-05-13', '3 May 2024']],
  ['none', ['', 'OD', '12']],
] as const)('judges %s', (order, words) => {
  expect(judgeDateOrder(words)).toEqual({ order });
});

it('leaves dates that two orders can read undecided, and shows one', () => {
  const judged = judgeDateOrder(['04/04/2024', '05/06/2024', '07/08/2024']);
  expect(judged).toEqual({ order: undefined, doubt: 'undecided', examples: ['05/06/2024'] });
});

it('needs no decision where both orders mean the same day', () => {
  expect(judgeDateOrder(['04/04/2024', '05/05/2024'])).toEqual({ order: 'day-first' });
});

it('reports two dates that disagree', () => {
  const judged = judgeDateOrder(['05/06/2024', '13/06/2024', '06/13/2024']);
  expect(judged).toEqual({ order: undefined, doubt: 'contradictory', examples: ['06/13/2024', '13/06/2024'] });
});

it('does not let an impossible date contradict the others', () => {
  expect(judgeDateOrder(['13/06/2024', '45/45/2024', '31/02/2024'])).toEqual({ order: 'day-first' });
});

it('leaves few two-digit dates undecided', () => {
  expect(judgeDateOrder(['24-05-13'])).toMatchObject({ doubt: 'undecided' });
});
