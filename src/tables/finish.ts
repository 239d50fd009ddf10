import { resultKey } from '../results/index.js';
import { cohortRemainderNote } from './cohort-remainder.js';
import { correlationNote } from './correlation-note.js';
import { generalNotes } from './footnotes.js';
import { independentNote } from './independent-note.js';
import { markedNotes, marksOf } from './marks.js';
import type { Draft, Setting, ShownCell, UnnumberedTable } from './shapes.js';

/**
 * A draft made ready to print: marks behind the cells whose rows bear a note, and the footnotes that follow from the
 * rows shown.
 *
 * @throws {RangeError} when a row has not as many cells as the head has columns, or a note or method has no words
 */
export function finish(draft: Draft, setting: Setting): UnnumberedTable {
  const { plan, words } = setting;
  expectWidth(draft);
  const shown = draft.rows.flatMap(({ cells }) => cells);
  const marks = marksOf(
    shown.flatMap(({ rows }) => rows),
    words,
  );
  const typeset = ({ text, rows }: ShownCell) => ({
    text: text + marks.behind(rows),
    from: [...new Set(rows.map(resultKey))],
  });
  return {
    id: draft.id,
    title: draft.title,
    head: draft.head,
    rows: draft.rows.map((row) => ({ ...row, cells: row.cells.map(typeset) })),
    footnotes: [
      ...draft.footnotes,
      ...cohortRemainderNote(draft, setting),
      ...markedNotes(marks, words),
      ...independentNote(draft, setting),
      ...correlationNote(draft, setting),
      ...generalNotes(draft, plan, words),
    ],
  };
}

function expectWidth({ id, head, rows }: Draft): void {
  for (const { label, cells } of rows) {
    if (cells.length !== 0 && cells.length !== head.length - 1) {
      throw new RangeError(`finish: ${id}, "${label}" has ${cells.length} cells; expected ${head.length - 1}`);
    }
  }
}
