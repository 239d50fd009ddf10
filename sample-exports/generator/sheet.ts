/** One export before it becomes bytes. */
export interface Sheet {
  readonly file: string;
  readonly encoding: 'utf-8' | 'utf-8 with mark' | 'windows-1252';
  readonly delimiter: ',' | ';';
  readonly lineEnd: '\n' | '\r\n';
  /** Lines that the device writes above its header. */
  readonly above: readonly string[];
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Row number of the first row of data, as a spreadsheet shows it. */
export function firstRow(sheet: Sheet): number {
  return sheet.above.length + 2;
}

function cell(text: string, delimiter: string): string {
  return text.includes(delimiter) ? `"${text}"` : text;
}

/** The file's bytes. In windows-1252 every character used here has the code of its Unicode number. */
export function bytes(sheet: Sheet): Uint8Array {
  const line = (cells: readonly string[]) => cells.map((text) => cell(text, sheet.delimiter)).join(sheet.delimiter);
  const lines = [...sheet.above, line(sheet.header), ...sheet.rows.map(line)];
  const text = lines.map((each) => each + sheet.lineEnd).join('');
  if (sheet.encoding === 'windows-1252') return Buffer.from(text, 'latin1');
  return Buffer.from(sheet.encoding === 'utf-8 with mark' ? `\ufeff${text}` : text, 'utf8');
}

/** `1.25`, with `+` where asked; blank for nothing. */
export function fixed(value: number | undefined, decimals: number, signed = false): string {
  if (value === undefined) return '';
  const text = value.toFixed(decimals);
  return signed && value > 0 ? `+${text}` : text;
}
