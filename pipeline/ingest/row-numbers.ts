/**
 * Row numbers as a spreadsheet shows them, for rows of which some were passed over. Memory grows with the interruptions,
 * not with the rows.
 */
export interface RowNumbers {
  /** The next row of the table stands at this row of the file. Rows come in order. */
  push(rowOfFile: number): void;
  /** Row of the file at which a row of the table, counted from 0, stands. */
  at(row: number): number;
}

/** Starts to gather row numbers. */
export function rowNumbers(): RowNumbers {
  // Rows of the table at which a run without interruption begins, and how far its numbers are ahead.
  const starts: number[] = [];
  const ahead: number[] = [];
  let rows = 0;

  return {
    push(rowOfFile) {
      if (ahead.at(-1) !== rowOfFile - rows) {
        starts.push(rows);
        ahead.push(rowOfFile - rows);
      }
      rows++;
    },
    at(row) {
      if (!(row >= 0 && row < rows)) throw new RangeError(`rowNumbers: row ${row}; expected 0 to ${rows - 1}`);
      let low = 0;
      let high = starts.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if ((starts[middle] as number) <= row) low = middle;
        else high = middle - 1;
      }
      return row + (ahead[low] as number);
    },
  };
}
