import { integersOf, numbersOf, statesOf } from '../columns/table.js';
import { type CellPlace, cellFinder } from './places.js';
import type { RuleContext } from './rule.js';

/** The predictions of an audit, column by column. */
export interface Predictions {
  length: number;
  eye: Int32Array;
  predicted: Float64Array;
  state: Uint8Array;
  source: Int32Array;
  block: Int32Array;
  /** The cell that a prediction was read from. */
  placeOf(i: number): CellPlace;
}

export function predictionsOf(context: Pick<RuleContext, 'tables' | 'raw' | 'plan'>): Predictions {
  const { predictions } = context.tables;
  const whole = (name: string): Int32Array => integersOf(predictions, name);
  const [source, block, row] = [whole('source'), whole('block'), whole('row')];
  const cellOf = cellFinder(context);
  return {
    length: predictions.numRows(),
    eye: whole('eye'),
    predicted: numbersOf(predictions, 'predictedSe'),
    state: statesOf(predictions),
    source,
    block,
    placeOf: (i) =>
      cellOf({ source: source[i] as number, block: block[i] as number, row: row[i] as number }, ['predicted_se']),
  };
}
