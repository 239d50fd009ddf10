/** Where something stands in audit.yaml, both counted from 1. */
export interface Place {
  line: number;
  column: number;
}

export interface TextNode {
  kind: 'text';
  place: Place;
  /** As written: `no` is 'no', `012` is '012'. */
  text: string;
}

export interface MapNode {
  kind: 'map';
  place: Place;
  entries: readonly MapEntry[];
}

export interface MapEntry {
  key: string;
  place: Place;
  value: DocumentNode;
}

interface ListNode {
  kind: 'list';
  place: Place;
  items: readonly DocumentNode[];
}

/** Nothing behind the colon. */
interface EmptyNode {
  kind: 'empty';
  place: Place;
}

/** audit.yaml as it stands, before anything is known of its meaning: every word a text with its place. */
export type DocumentNode = TextNode | MapNode | ListNode | EmptyNode;

export type Path = readonly PropertyKey[];

/** The same as plain values: text, lists, objects; null where nothing stands behind the colon. */
export function plainValue(node: DocumentNode): unknown {
  if (node.kind === 'text') return node.text;
  if (node.kind === 'empty') return null;
  if (node.kind === 'list') return node.items.map(plainValue);
  return Object.fromEntries(node.entries.map((entry) => [entry.key, plainValue(entry.value)]));
}

/** Entries of a mapping; none of anything else. */
export function entriesOf(node: DocumentNode | undefined): readonly MapEntry[] {
  return node?.kind === 'map' ? node.entries : [];
}

/** Items of a list; a single text counts as a list of one, as it does in audit.yaml. */
export function itemsOf(node: DocumentNode | undefined): readonly DocumentNode[] {
  if (node?.kind === 'list') return node.items;
  return node?.kind === 'text' ? [node] : [];
}

/** Texts among the items of a list, or the single text. */
export function textsOf(node: DocumentNode | undefined): readonly TextNode[] {
  return itemsOf(node).filter((item) => item.kind === 'text');
}

export function entryAt(node: DocumentNode | undefined, key: string): MapEntry | undefined {
  return entriesOf(node).find((entry) => entry.key === key);
}

/** What stands under a key, or under several, one inside the other. */
export function valueAt(node: DocumentNode | undefined, ...keys: readonly string[]): DocumentNode | undefined {
  return keys.reduce<DocumentNode | undefined>((inner, key) => entryAt(inner, key)?.value, node);
}

/** The text under a key, or under several; undefined where there is none, or something else. */
export function textAt(node: DocumentNode | undefined, ...keys: readonly string[]): string | undefined {
  const value = valueAt(node, ...keys);
  return value?.kind === 'text' ? value.text : undefined;
}

/**
 * Where a reader looks for the thing at this path: a text itself; the key above a mapping or list; and for what
 * is not there, the innermost thing that should hold it.
 */
export function placeAt(root: DocumentNode, path: Path): Place {
  let node = root;
  let place = root.place;
  for (const step of path) {
    const entry = entryAt(node, String(step));
    const next = entry?.value ?? (node.kind === 'list' ? node.items[Number(step)] : undefined);
    if (next === undefined) return place;
    place = next.kind === 'text' || entry === undefined ? next.place : entry.place;
    node = next;
  }
  return place;
}

/** The node at this path; undefined where there is none. */
export function nodeAt(root: DocumentNode, path: Path): DocumentNode | undefined {
  return path.reduce<DocumentNode | undefined>((node, step) => {
    return node?.kind === 'list' ? node.items[Number(step)] : entryAt(node, String(step))?.value;
  }, root);
}
