import { noDay } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import { type Block, mappedColumn } from './blocks.js';
import { numberCells } from './cells.js';
import { visitLabels } from './labels.js';
import type { ReadContext } from './read-context.js';
import { dateCells } from './words.js';

export interface ExamDays {
  /** Days from surgery; `noDay` where only a label, or nothing, tells when. */
  day(row: number): number;
  /** 1-based declared visit of the row's label, 0 none, −1 before surgery. */
  label(row: number): number;
  /** Latest date of the block; `noDay` without dates. */
  latest: number;
}

/** Days beyond which a slip is a slip, however far: columns of days hold whole numbers of 32 bits. */
const farthest = 1e8;

/** When each examination of a block took place. @param surgeryDay  of each eye */
export function examDays(block: Block, surgeryDay: Int32Array, plan: Plan, context: ReadContext): ExamDays {
  const dateOf = dateCells(block, 'exam_date', context);
  const daysOf = numberCells(block, 'days', context);
  const labelOf = labels(block, plan);
  let latest = noDay;
  if (dateOf) for (let row = 0; row < block.raw.rows; row++) latest = Math.max(latest, dateOf(row));
  return {
    latest,
    label: labelOf,
    day(row) {
      const days = daysOf?.(row) ?? Number.NaN;
      if (!Number.isNaN(days)) return Math.max(-farthest, Math.min(farthest, Math.round(days)));
      const date = dateOf?.(row) ?? noDay;
      const surgery = surgeryDay[context.eyes[row] as number] ?? noDay;
      return date === noDay || surgery === noDay ? noDay : date - surgery;
    },
  };
}

function labels(block: Block, plan: Plan): (row: number) => number {
  const meaning = visitLabels(plan);
  const column = mappedColumn(block, 'visit');
  if (!column) {
    const fixed = block.plan.visit === undefined ? 0 : meaning(block.plan.visit);
    return () => fixed;
  }
  const byWord = column.words.words.map((word) => (block.isMissing(word) ? 0 : meaning(word)));
  return (row) => byWord[column.words.codes[row] as number] as number;
}
