import { foldedHeader } from '../findings/header.js';
import { headerIdentifier } from '../intake/identifier-header.js';
import { columnOf } from '../propose/exported.js';
import type { RecognisedFile } from '../propose/placed.js';
import { recordKey } from './record-number.js';

/** A column that may hold the patient's number. */
interface Candidate {
  index: number;
  /** How well its header speaks for it: 2 a word for the patient, 1 a number of some record, 0 nothing. */
  header: 0 | 1 | 2;
  /** Whether most cells are names rather than numbers. */
  names: boolean;
  keys: ReadonlySet<string>;
  /** Other files of which a candidate has numbers in common with this one. */
  sharedWith: number;
}

/** The column of one file. */
export interface PatientColumn {
  /** Undefined where none can be told. */
  index: number | undefined;
  candidates: readonly Candidate[];
  /**
   * none    no column looks like it
   * several two columns look alike
   * weak    the header does not say so; its numbers are found in other files
   */
  doubt: 'none' | 'several' | 'weak' | undefined;
  /** Whether its numbers are those of other files, where there are any. */
  isShared: boolean;
  names: boolean;
}

/** Share of the smaller set from which two columns are taken to hold numbers of the same patients. */
const enoughShared = 0.3;

function shareOf(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  const [small, large] = a.size <= b.size ? [a, b] : [b, a];
  if (small.size === 0) return 0;
  let common = 0;
  for (const key of small) if (large.has(key)) common++;
  return common / small.size;
}

function keysOf({ file }: RecognisedFile, index: number): ReadonlySet<string> {
  const { words } = columnOf(file, index);
  return new Set(words.filter((word) => !file.isMissing(word)).map(recordKey));
}

const isName = (key: string): boolean => !/\d/.test(key) && /\p{L}{2}/u.test(key);

/** How well a header speaks for the patient's number. */
function headerScore(of: RecognisedFile, index: number): Candidate['header'] {
  const identifier = headerIdentifier(of.file.header[index] ?? '');
  if (identifier === 'header-number') return 1;
  const isPatient = of.headers[index]?.matches.some(({ term, strength }) => term === 'patient' && strength > 1);
  return isPatient ? 2 : 0;
}

type Found = Omit<Candidate, 'sharedWith'>;

function found(of: RecognisedFile, index: number, header: Candidate['header']): Found {
  const keys = keysOf(of, index);
  const named = [...keys].filter(isName).length;
  return { index, header, keys, names: 2 * named > keys.size };
}

/** Columns whose header speaks for the patient; where none does, those whose numbers are other files' patients. */
function candidatesIn(of: RecognisedFile, elsewhere: readonly ReadonlySet<string>[]): readonly Found[] {
  const all = of.file.header.map((_, index) => index);
  const byHeader = all.filter((index) => headerScore(of, index) > 0);
  if (byHeader.length > 0) return byHeader.map((index) => found(of, index, headerScore(of, index)));
  return all
    .map((index) => found(of, index, 0))
    .filter(({ keys }) => keys.size >= 5 && elsewhere.some((other) => shareOf(keys, other) >= 0.5));
}

/** Better candidates first: shared by more files, numbers before names, a surer header, further to the left. */
const inOrder = (a: Candidate, b: Candidate): number =>
  b.sharedWith - a.sharedWith || Number(a.names) - Number(b.names) || b.header - a.header || a.index - b.index;

const isTied = (a: Candidate, b: Candidate): boolean =>
  a.sharedWith === b.sharedWith && a.names === b.names && a.header === b.header;

/** Whether each number of one column stands beside one number of the other, both ways: either will do. */
function isOneToOne({ file }: RecognisedFile, a: number, b: number): boolean {
  const [left, right] = [columnOf(file, a), columnOf(file, b)];
  const pairs = new Set<string>();
  for (let row = 0; row < file.rows; row++) pairs.add(`${left.codes[row]} ${right.codes[row]}`);
  const firsts = new Set([...pairs].map((pair) => pair.split(' ')[0]));
  const seconds = new Set([...pairs].map((pair) => pair.split(' ')[1]));
  return firsts.size === pairs.size && seconds.size === pairs.size;
}

function withShares(ofFile: readonly Found[], others: readonly (readonly Found[])[]): readonly Candidate[] {
  return ofFile
    .map((one): Candidate => {
      const shares = others.map((other) => other.some(({ keys }) => shareOf(one.keys, keys) >= enoughShared));
      return { ...one, sharedWith: shares.filter((shared) => shared).length };
    })
    .sort(inOrder);
}

/** The column whose numbers most files have in common; the others are chosen so that they go with it. */
function anchorOf(candidates: readonly (readonly Candidate[])[]): Candidate | undefined {
  return candidates.flatMap(([best]) => best ?? []).toSorted(inOrder)[0];
}

function chosen(of: RecognisedFile, candidates: readonly Candidate[], anchor: Candidate | undefined): PatientColumn {
  const nearness = ({ keys }: Candidate): number => (anchor ? shareOf(keys, anchor.keys) : 0);
  const byAnchor = candidates.toSorted(
    (a, b) => Number(nearness(b) >= enoughShared) - Number(nearness(a) >= enoughShared) || inOrder(a, b),
  );
  const [best, second] = byAnchor;
  if (!best) return { index: undefined, candidates, doubt: 'none', isShared: false, names: false };
  const isOpen = second !== undefined && isTied(best, second) && !isOneToOne(of, best.index, second.index);
  const doubt = best.header === 0 ? 'weak' : isOpen ? 'several' : undefined;
  const isShared = best.sharedWith > 0 && nearness(best) >= enoughShared;
  return { index: best.index, candidates: byAnchor, doubt, isShared, names: best.names };
}

function declaredIn(of: RecognisedFile, declared: ReadonlySet<string>): PatientColumn | undefined {
  const index = of.file.header.findIndex((header) => declared.has(foldedHeader(header)));
  if (index < 0) return undefined;
  const { names } = found(of, index, 2);
  return { index, candidates: [], doubt: undefined, isShared: true, names };
}

/**
 * Which column of each file holds the patient's number: by the words of its header, and by being shared among files.
 *
 * @param files     all that are de-identified together
 * @param declared  headers that were named for it; a file that has one of them is not asked
 */
export function patientColumns(
  files: readonly RecognisedFile[],
  declared: readonly string[],
): readonly PatientColumn[] {
  const named = new Set(declared.map(foldedHeader));
  const keysElsewhere = files.map((of) =>
    of.file.header.flatMap((_, index) => (headerScore(of, index) > 0 ? [keysOf(of, index)] : [])),
  );
  const found = files.map((of, at) => candidatesIn(of, keysElsewhere.filter((_, other) => other !== at).flat()));
  const candidates = found.map((one, at) =>
    withShares(
      one,
      found.filter((_, other) => other !== at),
    ),
  );
  const anchor = anchorOf(candidates);
  return files.map((of, at) => declaredIn(of, named) ?? chosen(of, candidates[at] ?? [], anchor));
}
