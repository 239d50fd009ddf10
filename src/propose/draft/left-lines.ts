import { fieldNamed } from '../../plan/fields.js';
import { propose as words } from '../../words/en/propose.js';
import type { ArrangedFile } from '../arrange.js';
import type { Left } from '../placed.js';
import { headerName } from './header-name.js';
import { type YamlLine, yamlBraces, yamlText } from './lines.js';
import { placeKeys } from './place-keys.js';
import { frequentWords, rangeOf } from './samples.js';

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

/** How a column that no field takes can still be carried along, as a line under `covariates`; undefined where it cannot. */
function covariateLine({ of }: ArrangedFile, { index, why }: Left, depth: number): YamlLine | undefined {
  const profile = of.profiles[index];
  const name = covariateName(of.file.header[index] ?? '');
  if (why !== 'unknown' || !profile || !name || fieldNamed(name) || profile.filled === 0) return undefined;
  const isNumber = profile.share(({ value }) => !Number.isNaN(value)) > 0.9;
  if (profile.words.length > mostValues && !isNumber) return undefined;
  const type = isNumber && profile.words.length > mostValues ? 'number' : 'category';
  const form = yamlBraces([...placeKeys(of.file, index), ['type', type]]);
  const comment = words.behind(type === 'number' ? rangeOf(profile) : frequentWords(profile), words.left.unknown());
  return { depth, text: `${yamlText(name)}: ${form}`, comment, off: true };
}

/** Columns that the audit does not use, and why; those that could be carried along stand as they would be written. */
export function leftLines(arranged: ArrangedFile, depth: number): readonly YamlLine[] {
  const perEye = arranged.blocks.some(({ holds }) => holds === 'surgery' || holds === 'eye');
  const all = arranged.left.toSorted((a, b) => a.index - b.index);
  const along = perEye ? all.map((one) => covariateLine(arranged, one, depth + 1)) : [];
  const lines = along.filter((line) => line !== undefined);
  const rest = all.filter((_, at) => along[at] === undefined);
  const notes = rest.map(({ index, why, term }) =>
    words.leftLine(headerName(arranged.of.file, index), words.left[why](term ?? '')),
  );
  return [
    ...(lines.length > 0 ? [{ depth, text: 'covariates:', comment: words.carriedAlong, off: true }, ...lines] : []),
    ...(notes.length > 0 ? [{ depth, text: '', notes }] : []),
  ];
}
