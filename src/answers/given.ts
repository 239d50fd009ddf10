import { locateColumn } from '../findings/header.js';
import type { ColumnPlan, SourcePlan } from '../records/plan.js';
import { keptColumn, type RawTable } from '../records/raw-table.js';

/** What a clinic can say to a query. */
export type Answer = 'confirmed' | 'corrected' | 'cannot tell';

/** One answered line of a query list that came back. */
export interface GivenAnswer {
  query: string;
  /** Undefined where the word is none of the three. */
  answer: Answer | undefined;
  written: string;
  /** The new value, as the clinic typed it; '' where none. */
  corrected: string;
  /** Index of the list, and its row as a spreadsheet shows it. */
  list: number;
  row: number;
}

/** Columns of a query list that are read; the others tell people what the question was. */
const columns = ['query', 'answer', 'corrected_value'] as const;

/** How the query lists that came back are read: like any other export, but for their columns. */
export function answersSource(files: readonly string[]): SourcePlan {
  const column = (name: string): ColumnPlan => ({
    field: name,
    column: name,
    position: undefined,
    occurrence: undefined,
    unit: undefined,
    index: undefined,
    view: undefined,
    numbers: undefined,
    notation: undefined,
    plane: undefined,
    from: undefined,
    words: undefined,
    type: undefined,
    line: 0,
  });
  return {
    file: files,
    line: 0,
    reading: {
      delimiter: 'auto',
      decimal: 'auto',
      date_order: 'auto',
      encoding: 'auto',
      header_row: 1,
      units_row: 'no',
      missing: [],
    },
    blocks: [
      {
        holds: 'exam',
        visit: undefined,
        formula: '',
        columns: columns.map(column),
        covariates: [],
        constants: {},
        only: [],
        blank_means: {},
      },
    ],
    letters_per_line: undefined,
    lens_power_is: 'se',
  };
}

const spellings: Readonly<Record<string, Answer>> = {
  confirmed: 'confirmed',
  confirm: 'confirmed',
  corrected: 'corrected',
  correct: 'corrected',
  'cannot tell': 'cannot tell',
  'can not tell': 'cannot tell',
};

/** One word of the answer column; letter case, blanks and a full stop do not matter. */
function answerOf(word: string): Answer | undefined {
  return spellings[word.trim().toLowerCase().replace(/\s+/g, ' ').replace(/\.$/, '')];
}

/** A value as it was typed, without the marks in which the query list shows values. */
const unquoted = (value: string): string => value.trim().replace(/^‘(.*)’$/su, '$1');

/** The answered lines of the query lists that came back, in the order of lists and rows; of two of one name the later. */
export function givenAnswers(lists: readonly RawTable[]): readonly GivenAnswer[] {
  const given = new Map<string, GivenAnswer>();
  lists.forEach((table, list) => {
    const cells = columns.map((name) => {
      const { index } = locateColumn(table.header, { column: name, position: undefined, occurrence: undefined });
      const column = index === undefined ? undefined : keptColumn(table, index);
      return (row: number): string => column?.at(row).trim() ?? '';
    });
    const [queryAt, answerAt, correctedAt] = cells as [(typeof cells)[0], (typeof cells)[0], (typeof cells)[0]];
    for (let row = 0; row < table.rows; row++) {
      const [query, written] = [queryAt(row), answerAt(row)];
      if (query === '' || written === '') continue;
      const corrected = unquoted(correctedAt(row));
      given.delete(query);
      given.set(query, { query, answer: answerOf(written), written, corrected, list, row: table.rowNumber(row) });
    }
  });
  return [...given.values()];
}
