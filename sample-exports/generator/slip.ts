/** A cell: the number of its row as a spreadsheet shows it, and its header as written. */
export interface Cell {
  readonly file: string;
  readonly row: number;
  readonly column: string;
  readonly value: string;
}

/** Another cell of the row that belongs to the same slip. */
export interface FurtherCell {
  readonly column: string;
  readonly value: string;
  readonly should: string;
}

/** One planted slip: what stands in a cell, and the rule that should tell of it. */
export interface Slip extends Cell {
  readonly rule: string;
  readonly how:
    | { readonly kind: 'mistyped'; readonly should: string; readonly also?: readonly FurtherCell[] }
    /** The row above once more, but for the value in `column`. */
    | { readonly kind: 'repeated' }
    /** A row that belongs to no operation. */
    | { readonly kind: 'stray'; readonly cells: readonly string[] }
    /** An operation whose eye stands in no other file. */
    | { readonly kind: 'unexamined' };
  /** The cell that the rule names, where that is another one. */
  readonly at?: Cell;
}

/** A cell in which something else stands than should. */
export function mistyped(rule: string, file: string, row: number, column: string, value: string, should: string): Slip {
  return { rule, file, row, column, value, how: { kind: 'mistyped', should } };
}
