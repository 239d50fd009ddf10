import type { Holds } from '../records/plan.js';
import {
  type DocumentNode,
  entriesOf,
  entryAt,
  itemsOf,
  type MapEntry,
  type Place,
  type TextNode,
  textAt,
  textsOf,
  valueAt,
} from './document.js';
import { type Field, fieldNamed } from './fields.js';
import { defaultVisit } from './study-schema.js';

/** One block of a source, or a source without blocks, as written. */
export interface BlockView {
  node: DocumentNode;
  place: Place;
  /** Undefined where it is missing or no kind of row. */
  holds: Holds | undefined;
  /** Columns and constants by name, the block's own before those it shares with others. */
  columns: readonly MapEntry[];
  constants: readonly MapEntry[];
}

export interface SourceView {
  node: DocumentNode;
  /** Whether several kinds of row are declared. */
  hasBlocks: boolean;
  blocks: readonly BlockView[];
}

/** What audit.yaml declares, read as far as it can be: checks ask it whether a name is known. */
export interface Survey {
  root: DocumentNode;
  sources: readonly SourceView[];
  /** Own name → type; undefined where the data will tell. */
  covariates: ReadonlyMap<string, 'number' | 'category' | undefined>;
  /** Fields that some row has, by column or constant. */
  mapped: ReadonlySet<string>;
  visits: readonly TextNode[];
}

const rowKinds: readonly string[] = ['surgery', 'eye', 'exam', 'prediction'];

/** Entries shared with other blocks that fit the rows and that the block does not overrule. */
function fitting(shared: readonly MapEntry[], own: readonly MapEntry[], holds: Holds | undefined): readonly MapEntry[] {
  const fits = ({ key }: MapEntry): boolean => holds !== undefined && (fieldNamed(key)?.holds.includes(holds) ?? false);
  return shared.filter((entry) => fits(entry) && !own.some(({ key }) => key === entry.key));
}

function blockView(node: DocumentNode, place: Place, source: DocumentNode | undefined): BlockView {
  const written = textAt(node, 'holds');
  const holds = written !== undefined && rowKinds.includes(written) ? (written as Holds) : undefined;
  const own = (key: string) => entriesOf(valueAt(node, key));
  const overruled = [...own('columns'), ...own('constants')];
  const both = (key: string) => [...own(key), ...fitting(entriesOf(valueAt(source, key)), overruled, holds)];
  return { node, place, holds, columns: both('columns'), constants: both('constants') };
}

function sourceView(node: DocumentNode): SourceView {
  const blocks = entryAt(node, 'blocks');
  if (!blocks) return { node, hasBlocks: false, blocks: [blockView(node, node.place, undefined)] };
  return { node, hasBlocks: true, blocks: itemsOf(blocks.value).map((block) => blockView(block, block.place, node)) };
}

function covariateEntries({ node, blocks }: SourceView): readonly MapEntry[] {
  const nodes = new Set([node, ...blocks.map((block) => block.node)]);
  return [...nodes].flatMap((one) => entriesOf(valueAt(one, 'covariates')));
}

function typeOf({ value }: MapEntry): 'number' | 'category' | undefined {
  const type = textAt(value, 'type');
  return type === 'number' || type === 'category' ? type : undefined;
}

function visitNames(root: DocumentNode): readonly TextNode[] {
  const visits = itemsOf(valueAt(root, 'follow_up', 'visits'));
  return visits.flatMap((visit) => textsOf(valueAt(visit, 'name')));
}

export function survey(root: DocumentNode): Survey {
  const sources = itemsOf(valueAt(root, 'sources')).map(sourceView);
  const covariates = sources.flatMap(covariateEntries);
  const mapped = sources
    .flatMap(({ blocks }) => blocks)
    .flatMap(({ columns, constants }) => [...columns, ...constants]);
  return {
    root,
    sources,
    covariates: new Map(covariates.map((entry) => [entry.key, typeOf(entry)])),
    mapped: new Set(mapped.map(({ key }) => key)),
    visits: visitNames(root),
  };
}

/** Names of the declared visits, or of the one that stands where none is declared. */
export function visitNamesOf({ root, visits }: Survey): readonly string[] {
  return valueAt(root, 'follow_up', 'visits') ? visits.map(({ text }) => text) : [defaultVisit];
}

/** Whether a covariate may hold numbers. */
export function mayBeNumber(name: string, { covariates }: Survey): boolean {
  return covariates.has(name) && covariates.get(name) !== 'category';
}

/** Whether some source gives what the field stands for, in one form or another. */
export function isGiven(field: Field, { mapped, root }: Survey): boolean {
  if (mapped.has(field.name)) return true;
  if (field.name === 'surgery_year') return mapped.has('surgery_date');
  if (mapped.has('complication') && entryAt(valueAt(root, 'complications'), field.name)) return true;
  return field.kind !== undefined && [...mapped].some((name) => fieldNamed(name)?.kind === field.kind);
}
