import { type ColumnTable, table } from 'arquero';
import { plannedFormula } from '../../src/predictions/primary.js';
import type { Plan } from '../../src/records/plan.js';
import { type Block, mappedColumn } from './blocks.js';
import { numberCells } from './cells.js';
import { agree, differs, rankOf, rowToTell, tolerances } from './join.js';
import type { ReadContext } from './read-context.js';
import type { RowBooks } from './row-books.js';
import { textCells } from './words.js';

interface Prediction {
  eye: number;
  formula: string;
  predictedSe: number;
  constant: number;
  source: number;
  block: number;
  /** Index into the list of all blocks. */
  at: number;
  row: number;
  state: number;
}

function predictionsOf(
  block: Block,
  at: number,
  plan: Plan,
  context: ReadContext,
  book: RowBooks,
): readonly Prediction[] {
  const seOf = numberCells(block, 'predicted_se', context);
  if (!seOf || block.plan.holds === 'exam' || block.plan.holds === 'eye') return [];
  const onSurgery = block.plan.holds === 'surgery';
  const formulaOf = onSurgery ? undefined : textCells(block, 'formula', plan, context);
  const constantOf = numberCells(block, onSurgery ? 'lens_constant' : 'constant', context);
  const found: Prediction[] = [];
  for (let row = 0; row < block.raw.rows; row++) {
    const eye = context.eyes[row] as number;
    const predictedSe = seOf(row);
    if (eye < 0 || Number.isNaN(predictedSe)) continue;
    book.use(row);
    const formula = onSurgery ? plannedFormula : (formulaOf?.(row) ?? block.plan.formula);
    const constant = constantOf?.(row) ?? Number.NaN;
    found.push({ eye, formula, predictedSe, constant, source: block.source, block: block.block, at, row, state: 0 });
  }
  return found;
}

/** The predictions of every eye, one row an eye and formula; two that differ are set aside and told. */
export function predictionTable(
  blocks: readonly Block[],
  contexts: readonly ReadContext[],
  books: readonly RowBooks[],
  plan: Plan,
): { predictions: ColumnTable; formulas: readonly string[] } {
  const all = blocks.flatMap((block, at) =>
    predictionsOf(block, at, plan, contexts[at] as ReadContext, books[block.source] as RowBooks),
  );
  const formulas = [...new Set(all.map(({ formula }) => formula))].sort();
  const code = (prediction: Prediction): number => formulas.indexOf(prediction.formula);
  const rank = (prediction: Prediction): number => rankOf(blocks[prediction.at]?.raw.file ?? '', plan);
  // Inside a file values decide and not row numbers, so that shuffled rows give the same bits.
  const sorted = [...all].sort(
    (a, b) =>
      a.eye - b.eye ||
      code(a) - code(b) ||
      rank(a) - rank(b) ||
      a.at - b.at ||
      a.predictedSe - b.predictedSe ||
      a.row - b.row,
  );
  const kept: Prediction[] = [];
  for (const prediction of sorted) {
    const last = kept.at(-1);
    if (last?.eye !== prediction.eye || last.formula !== prediction.formula) kept.push(prediction);
    else if (rank(last) === rank(prediction) && !agree(last.predictedSe, prediction.predictedSe, tolerances.D)) {
      last.state = 2;
      tellDifference(rowToTell(prediction, last), blocks, contexts);
    }
  }
  const whole = (of: (prediction: Prediction) => number): Int32Array => Int32Array.from(kept, of);
  return {
    formulas,
    predictions: table({
      eye: whole(({ eye }) => eye),
      formula: whole(code),
      predictedSe: Float64Array.from(kept, ({ predictedSe }) => predictedSe),
      constant: Float64Array.from(kept, ({ constant }) => constant),
      source: whole(({ source }) => source),
      block: whole(({ block }) => block),
      row: whole(({ row }) => row),
      state: Uint8Array.from(kept, ({ state }) => state),
    }),
  };
}

function tellDifference(one: Prediction, blocks: readonly Block[], contexts: readonly ReadContext[]): void {
  const block = blocks[one.at] as Block;
  const column = mappedColumn(block, 'predicted_se');
  contexts[one.at]?.findings.add({
    ...differs,
    source: one.source,
    row: block.raw.rowNumber(one.row),
    column: column?.header,
    field: 'predicted_se',
    written: column?.words.at(one.row),
    eye: one.eye,
    effect: 'value left out',
  });
}
