import { entriesOf } from '../plan/document.js';
import { readDocument } from '../plan/read.js';

/** One section of an audit.yaml as it stands, with the comments above it. */
export interface WrittenSection {
  key: string;
  lines: readonly string[];
}

/** The first of the comment lines that stand directly above a line. */
function withComments(lines: readonly string[], line: number): number {
  let start = line;
  while (start > 0 && /^#/.test(lines[start - 1] ?? '')) start--;
  return start;
}

/** The sections of an audit.yaml, in their order, each line as it was written. */
export function sectionsOf(text: string): readonly WrittenSection[] {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const { root } = readDocument(text);
  const starts = entriesOf(root).map(({ key, place }) => ({ key, start: withComments(lines, place.line - 1) }));
  return starts.map(({ key, start }, at) => {
    const own = lines.slice(start, starts[at + 1]?.start ?? lines.length);
    const last = own.findLastIndex((line) => line.trim() !== '');
    return { key, lines: own.slice(0, last + 1) };
  });
}
