import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plan as planFrom } from '../../pipeline/plan.js';
import { listed } from '../../src/propose/phrases.js';
import { vocabularies } from '../../src/propose/vocabulary/index.js';
import { outcomeOf } from '../propose/proposed.js';

const headers = vocabularies.flatMap(({ headers: all }) => Object.values(all).flatMap((text) => listed(text)));
const visits = ['', '', '', 'pre ', 'm1 ', '3 months ', 'postop ', 'OD ', 'OS '];

const cells = [
  fc.constantFrom('R', 'L', 'OD', 'OS', '1', '2', 'D', 'G'),
  fc.constantFrom('-1.25', '+0.50', '0.00', '-0.75', '1.25', 'plano', 'DS'),
  fc.constantFrom('0.5', '0.8', '1.0', '6/9', '20/40', 'CF', '-0.1'),
  fc.constantFrom('43.25', '44.10', '7.85', '7.62', '23.41', '21.5'),
  fc.constantFrom('10', '95', '180', '0', '2410', '540', '71', '90+'),
  fc.constantFrom('2025-03-04', '04/03/2025', '13.05.2025', '5 May 2025'),
  fc.constantFrom('A1', 'B2', 'none', 'PCR', 'M', 'yes', 'no', 'n/a'),
  fc.constantFrom('P1', 'P2', 'P3', 'P4'),
  fc.constantFrom('-1.25 -0.50 x 90', '+0.50/-1.25x175', 'SRK/T', 'preop', '1M', 'odd word'),
] as const;

/** One column: a header of the trade, or none, over cells of one kind, some of them blank. */
const column = fc.record({
  header: fc.oneof(
    { weight: 9, arbitrary: fc.constantFrom(...headers) },
    { weight: 1, arbitrary: fc.constantFrom('', 'zz', 'Colour') },
  ),
  visit: fc.constantFrom(...visits),
  kind: fc.integer({ min: 0, max: cells.length - 1 }),
});

const file = fc
  .record({
    columns: fc.array(column, { minLength: 1, maxLength: 14 }),
    rows: fc.integer({ min: 2, max: 14 }),
    keyed: fc.boolean(),
  })
  .chain(({ columns, rows, keyed }) =>
    fc
      .array(
        fc.tuple(
          ...columns.map(({ kind }) =>
            fc.oneof(
              { weight: 6, arbitrary: cells[kind] as fc.Arbitrary<string> },
              { weight: 1, arbitrary: fc.constant('') },
            ),
          ),
        ),
        { minLength: rows, maxLength: rows },
      )
      .map((body) => {
        const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
        const head = [...(keyed ? ['Patient', 'Eye'] : []), ...columns.map(({ visit, header }) => visit + header)];
        const lines = body.map((row, at) => [...(keyed ? [`P${at >> 1}`, at % 2 ? 'L' : 'R'] : []), ...row]);
        return `${[head, ...lines].map((row) => row.map(quoted).join(';')).join('\n')}\n`;
      }),
  );

// A promise of our own: whatever the exports are, there is an audit.yaml without faults, or a choice is open, or it is
// said why there is none.
describe('any table of the trade’s words', () => {
  it('gets an audit.yaml that is read without a fault, unless a choice is left open', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(file, { minLength: 1, maxLength: 3 }), async (texts) => {
        const outcome = await outcomeOf(Object.fromEntries(texts.map((text, at) => [`f${at}.csv`, text])));
        if (outcome.kind !== 'proposed') return;
        const { text } = outcome.proposal;
        const planned = planFrom(text);
        // What both eyes of one row share, and when an examination was, is asked by the plan itself.
        const isAsked = /eye: (?:right|left)|# visit: before/.test(text);
        if ('faults' in planned && outcome.open.length === 0 && !isAsked) {
          throw new RangeError(`${JSON.stringify(planned.faults)}\n${text}`);
        }
        expect(text).not.toContain('undefined');
        expect(text).not.toContain('NaN');
      }),
      { numRuns: 150 },
    );
  });
});
