import { propose as words } from '../../words/en/propose.js';
import type { ArrangedFile } from '../arrange.js';
import type { Left } from '../placed.js';
import { headerName } from './header-name.js';
import { type YamlLine, yamlText } from './lines.js';

/** Most different values of a column that could be carried along as a category. */
const mostValues = 12;

/** A name that a covariate may bear, from its header; undefined where none can be made. */
function covariateName(header: string): string | undefined {
  const name = header
    .replace(/[^\p{L}\p{N} _-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return /^\p{L}/u.test(name) ? name.toLowerCase() : undefined;
}

/** How a column that no field takes can still be carried along. */
function carriedAlong(arranged: ArrangedFile, { index, why }: Left): string {
  const profile = arranged.of.profiles[index];
  const header = arranged.of.file.header[index] ?? '';
  const name = covariateName(header);
  const perEye = arranged.blocks.some(({ holds }) => holds === 'surgery' || holds === 'eye');
  if (why !== 'unknown' || !profile || !name || !perEye || profile.filled === 0) return '';
  const isNumber = profile.share(({ value }) => !Number.isNaN(value)) > 0.9;
  if (profile.words.length > mostValues && !isNumber) return '';
  const type = isNumber && profile.words.length > mostValues ? 'number' : 'category';
  return words.covariate(yamlText(name), yamlText(header), type);
}

/** Columns that the audit does not use, and why. */
export function leftLines(arranged: ArrangedFile, depth: number): readonly YamlLine[] {
  return arranged.left
    .toSorted((a, b) => a.index - b.index)
    .map((one) => {
      const reason = words.left[one.why](one.term ?? '');
      const note = words.leftLine(headerName(arranged.of.file, one.index), reason, carriedAlong(arranged, one));
      return { depth, text: '', notes: [note] };
    });
}
