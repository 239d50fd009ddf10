import { type LateralityWords, parseLaterality } from '../../src/intake/laterality.js';
import { isSummaryLabel } from '../../src/intake/summary-row.js';
import type { Layout } from './wanted.js';

/**
 * A row below the header that is no row of data.
 *
 * summary         sums up the rows above it
 * header again    says the header once more, as exports of several pages do
 * header changes  another header, below which the cells mean something else
 */
export type OddRow = 'summary' | 'header again' | 'header changes';

const plain = (cell: string): string => cell.trim().toLowerCase();
const firstFilled = (cells: readonly string[]): string => cells.find((cell) => cell.trim() !== '') ?? '';

/** What is known of a word in one column: nothing yet, that it may stand in any row of data, that it names an eye, more. */
export const marks = { unknown: 0, plain: 1, eye: 2, odd: 3 } as const;
export type Mark = (typeof marks)[keyof typeof marks];

/**
 * Marks words so that rows of data are known by their marks: where one word names an eye in the eye's column, and none is
 * of the header, `oddRowTest` finds nothing odd. Undefined for a file without a column of eyes, which has no such rows.
 */
export function cellMarks(
  header: readonly string[],
  layout: Layout,
): ((word: string, index: number) => Mark) | undefined {
  const names = new Set(header.map(plain));
  names.delete('');
  const eye = eyeColumn(layout);
  if (!eye) return undefined;
  return (word, index) => {
    if (names.has(plain(word))) return marks.odd;
    if (index !== eye.index) return marks.plain;
    return parseLaterality(word, eye.words) === undefined ? marks.odd : marks.eye;
  };
}

/** Which column says the eye, and the words declared for it. */
function eyeColumn({ kept, uses }: Layout): { index: number; words: LateralityWords } | undefined {
  const at = uses.findIndex((those) => those.some(({ field }) => field === 'eye'));
  const index = kept[at];
  return index === undefined ? undefined : { index, words: uses[at]?.find(({ words }) => words)?.words ?? {} };
}

/** Whether a row names an eye: in its column where that is known, else in any cell. */
function eyeTest(layout: Layout): (cells: readonly string[]) => boolean {
  const column = eyeColumn(layout);
  const known = new Map<string, boolean>();
  const names = (cell: string): boolean => {
    const answer = known.get(cell) ?? parseLaterality(cell, column?.words) !== undefined;
    // A shifted row may bring any text into the column.
    if (known.size < 1000) known.set(cell, answer);
    return answer;
  };
  return (cells) => (column ? names(cells[column.index] ?? '') : cells.some(names));
}

/** Whether a row of header words is the header, or another one; undefined where it is data after all. */
function headerTest(header: readonly string[], layout: Layout): (cells: readonly string[]) => OddRow | undefined {
  const own = header.map(plain);
  const names = new Set(own.filter((name) => name !== ''));
  const eye = eyeColumn(layout)?.index;
  const isName = (cell: string): boolean => names.has(plain(cell));
  return (cells) => {
    const saysEye = eye !== undefined && cells[eye] !== undefined && plain(cells[eye]) === own[eye];
    if (!saysEye && !isName(firstFilled(cells))) return undefined;
    const filled = cells.filter((cell) => cell.trim() !== '');
    if (own.every((name, index) => name === plain(cells[index] ?? ''))) return 'header again';
    const known = filled.filter(isName).length;
    if (known >= 2 && 2 * known >= filled.length) return 'header changes';
    return saysEye && !filled.some((cell) => /\d/.test(cell)) ? 'header changes' : undefined;
  };
}

/**
 * Tells rows that are no data from those that are. A row that names an eye is no summary, whatever else it says.
 *
 * @param header  of the file
 * @param layout  where the mapped columns stand
 */
export function oddRowTest(
  header: readonly string[],
  layout: Layout,
): (cells: readonly string[]) => OddRow | undefined {
  const namesEye = eyeTest(layout);
  const headerKind = headerTest(header, layout);
  return (cells) => {
    const kind = headerKind(cells);
    if (kind || namesEye(cells)) return kind;
    return isSummaryLabel(firstFilled(cells)) ? 'summary' : undefined;
  };
}
