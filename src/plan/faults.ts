import type { z } from 'zod';
import type { Fault } from '../records/plan.js';
import { plan as words } from '../words/en/plan.js';
import type { Told } from '../words/en/plan-told.js';
import { described, sectionsWith } from './described.js';
import { type DocumentNode, entriesOf, entryAt, nodeAt, type Path, type Place, placeAt } from './document.js';
import { nearest } from './nearest.js';
import { columnKeys } from './source-schema.js';

type Issue = z.core.$ZodIssue;

/** A fault at a place. */
export function fault(place: Place, told: Told): Fault {
  return { line: place.line, column: place.column, ...told };
}

/**
 * Whether a key is really missing from a mapping: not there, and not there misspelled (then the misspelling is the
 * fault, and told).
 *
 * @param known  keys that are no misspellings
 */
export function isAbsent(node: DocumentNode | undefined, key: string, known: readonly string[]): boolean {
  if (entryAt(node, key)) return false;
  return !entriesOf(node).some((entry) => !known.includes(entry.key) && nearest(entry.key, known) === key);
}

/** Where the key at the end of this path stands. */
function keyPlace(root: DocumentNode, path: Path): Place {
  const above = nodeAt(root, path.slice(0, -1));
  return entryAt(above, String(path.at(-1)))?.place ?? placeAt(root, path);
}

/** Of a union's complaints those of the alternative that was meant; the union's own where none or no one was. */
function meant(issue: Issue): readonly Issue[] {
  if (issue.code !== 'invalid_union') return [issue];
  const ofForm = issue.errors.find((one) =>
    one.some((inner) => inner.path.length > 0 || inner.code === 'unrecognized_keys'),
  );
  const value = issue.errors.flat().find((inner) => inner.code === 'invalid_value' && inner.path.length === 0);
  const own = value ? { ...value, message: issue.message, path: issue.path } : issue;
  return ofForm ? ofForm.map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] })).flatMap(meant) : [own];
}

function unknownKey(path: Path, key: string, value: DocumentNode | undefined): Told {
  const { known } = described(path);
  if (/^\d+$/.test(key) && value?.kind === 'empty') return words.decimalComma(key);
  const field = path.at(-2) === 'columns' ? String(path.at(-1)) : undefined;
  if (field !== undefined && columnKeys.includes(key)) return words.keyDoesNotFit(key, field, known);
  const sections = nearest(key, known) === undefined ? sectionsWith(key) : [];
  return words.unknownKey(key, nearest(key, known), known, sections);
}

/** Keys that do not stand in the schema; fields under `columns` are told with their rows, by the checks. */
function unknownKeys(issue: Issue & { code: 'unrecognized_keys' }, root: DocumentNode): readonly Fault[] {
  if (issue.path.at(-1) === 'columns') return [];
  return issue.keys.map((key) =>
    fault(keyPlace(root, [...issue.path, key]), unknownKey(issue.path, key, nodeAt(root, [...issue.path, key]))),
  );
}

function valueFault(issue: Issue, root: DocumentNode): readonly Fault[] {
  const { path, message } = issue;
  const key = String(path.at(-1));
  const node = nodeAt(root, path);
  const { meaning, example } = described(path);
  if (node === undefined) {
    const above = path.slice(0, -1);
    if (typeof path.at(-1) === 'number') return [fault(placeAt(root, path), words.unfit(words.expected.pair))];
    if (!isAbsent(nodeAt(root, above), key, described(above).known)) return [];
    return [fault(placeAt(root, path), words.missingKey(key, meaning, example))];
  }
  if (issue.code === 'invalid_key') {
    return [
      fault(keyPlace(root, path), words.wrongValue(key, issue.issues[0]?.message ?? message, undefined, example)),
    ];
  }
  if (node.kind === 'empty') return [fault(keyPlace(root, path), words.nothingHere(key, message, example))];
  if (node.kind !== 'text') {
    const told = issue.code === 'custom' ? words.unfit(message) : words.wrongKind(node.kind, message, example);
    return [fault(placeAt(root, path), told)];
  }
  const values = issue.code === 'invalid_value' ? issue.values.map(String) : [];
  return [fault(placeAt(root, path), words.wrongValue(node.text, message, nearest(node.text, values), example))];
}

/**
 * What the schema has against the document, each with its place, in our words. Whether keys fit together is not told
 * where one of them is misspelled.
 */
export function formFaults(issues: readonly Issue[], root: DocumentNode): readonly Fault[] {
  if (root.kind !== 'map') return [fault(root.place, words.notAMapping())];
  const told = issues.flatMap(meant);
  const misspelled = told.filter(({ code }) => code === 'unrecognized_keys').map(({ path }) => path.join('\0'));
  return told
    .filter(({ code, path }) => code !== 'custom' || !misspelled.includes(path.join('\0')))
    .flatMap((issue) => (issue.code === 'unrecognized_keys' ? unknownKeys(issue, root) : valueFault(issue, root)));
}

/** Faults in the order of the file, each once. */
export function inOrder(faults: readonly Fault[]): readonly Fault[] {
  const same = (a: Fault, b: Fault) => a.line === b.line && a.column === b.column && a.message === b.message;
  const once = faults.filter((one, i) => faults.findIndex((other) => same(one, other)) === i);
  return once.toSorted((a, b) => a.line - b.line || a.column - b.column);
}
