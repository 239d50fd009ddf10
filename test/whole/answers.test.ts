import { describe, expect, it } from 'vitest';
import type { CheckOutcome } from '../../pipeline/commands/outcome.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { contextOf, queriesFile } from '../../pipeline/publish/finding-lists.js';
import { check } from '../../pipeline/run.js';
import { sheets } from '../../sample-exports/generator/sample.js';
import type { Slip } from '../../sample-exports/generator/slip.js';
import { SLIPS } from '../../sample-exports/generator/slips.js';
import { type QueryRow, queryRows } from '../../src/findings/queries.js';
import { en } from '../../src/words/index.js';
import { auditText, filesOf } from './sample.js';

type Checked = Extract<CheckOutcome, { kind: 'checked' }>;

/** Slips of one cell that the query list names at that very cell: what a clinic can answer with a new value. */
const answerable = SLIPS.filter(({ how, at, rule }) => {
  return how.kind === 'mistyped' && !how.also && !at && rule !== 'label-similar';
});
/** The files with some of these slips, and all others: rows that a slip adds move the numbers of those below. */
const planted = (some: readonly Slip[]) => {
  return filesOf(sheets(SLIPS.filter((slip) => some.includes(slip) || !answerable.includes(slip))));
};

async function checked(text: string, files: Readonly<Record<string, string | Uint8Array>>): Promise<Checked> {
  const outcome = await check(text, memoryIo(files), () => {});
  if (outcome.kind !== 'checked') throw new RangeError(`the sample is ${outcome.kind}`);
  return outcome;
}

const queriesIn = ({ found, plan }: Checked): readonly QueryRow[] =>
  queryRows(found.findings, found.tables, contextOf(found, plan, en));

/** audit.yaml of the sample, with a query list that came back. */
const withAnswers = (more = '') => `${auditText()}quality: { answers: [answered.csv] }\n${more}`;

describe('a query list of the sample that comes back', async () => {
  const files = planted(answerable);
  const asked = await checked(auditText(), files);
  const slipOf = ({ rule, file, row, column }: QueryRow): Slip | undefined =>
    answerable.find(
      (slip) => slip.rule === rule && slip.file === file && String(slip.row) === row && slip.column === column,
    );

  /** What was meant, with the decimal point of a spreadsheet that knows no comma. */
  const meant = (slip: Slip): string => (slip.how.kind === 'mistyped' ? slip.how.should.replace(',', '.') : '');

  it('corrects every slip of a cell that it asks about, and gives the results of the faultless files', async () => {
    const corrected = queriesIn(asked).flatMap((query) => {
      const slip = slipOf(query);
      return slip ? [{ ...query, answer: 'corrected', corrected_value: meant(slip) }] : [];
    });
    expect(corrected.length).toBeGreaterThan(40);
    const { bytes } = queriesFile('answered.csv', corrected, asked.plan);
    const after = await checked(withAnswers(), { ...files, 'answered.csv': bytes });

    // Slips that are only noted, and a word that stood for two, are on no list: they stand in both copies.
    const listed = new Set(corrected.map((query) => slipOf(query)));
    const untold = answerable.filter((slip) => !listed.has(slip));
    const faultless = await checked(auditText(), planted(untold));
    expect(after.found.results.rows).toEqual(faultless.found.results.rows);
    expect(queriesIn(after)).toEqual(queriesIn(faultless));
  });

  it('asks nothing again that it confirms, and keeps what nobody can tell', async () => {
    const queries = queriesIn(asked);
    const answered = queries.map((query, at) => ({ ...query, answer: at % 2 === 0 ? 'confirmed' : 'cannot tell' }));
    const { bytes } = queriesFile('answered.csv', answered, {
      ...asked.plan,
      outputs: { ...asked.plan.outputs, spreadsheet: 'comma' },
    });
    const after = await checked(withAnswers(), { ...files, 'answered.csv': bytes });
    const open = answered.filter(({ answer }) => answer === 'cannot tell').map(({ query }) => query);
    expect(queriesIn(after).map(({ query }) => query)).toEqual(open);
    // Confirmed or not: what is impossible stays out, what is unusual stays in.
    expect(after.found.results.rows).toEqual(asked.found.results.rows);
  });
});
