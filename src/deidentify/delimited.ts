/**
 * One line of a copy, its line break included, so that the reader of exports gives back each cell as it stands here:
 * nothing is disarmed and nothing is trimmed.
 *
 * @param delimiter  the file's own
 * @source quoting by RFC 4180, with the line feed alone as line break
 * @example delimitedLine(['6/9', '-1,25', 'a;b'], ';') // '6/9;-1,25;"a;b"\n'
 */
export function delimitedLine(cells: readonly string[], delimiter: string): string {
  return `${cells.map((cell) => quotedCell(cell, delimiter)).join(delimiter)}\n`;
}

function quotedCell(cell: string, delimiter: string): string {
  const isPlain = !cell.includes(delimiter) && !/["\r\n]/.test(cell);
  return isPlain ? cell : `"${cell.replaceAll('"', '""')}"`;
}
