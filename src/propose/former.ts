import { locateColumn } from '../findings/header.js';
import { fieldNamed } from '../plan/fields.js';
import type { BlockPlan, ColumnPlan, Condition, Plan, SourcePlan } from '../records/plan.js';
import { propose as words } from '../words/en/propose.js';
import { doubt } from './draft/doubt.js';
import { headerName } from './draft/header-name.js';
import { columnsMapping, type YamlLine, yamlBraces, yamlList, yamlText } from './draft/lines.js';
import { samplesOf } from './draft/samples.js';
import type { Placed, RecognisedFile } from './placed.js';

/** A file whose headers are those of a source of the former audit. */
export interface CarriedFile {
  of: RecognisedFile;
  source: SourcePlan;
}

const columnsOf = ({ blocks }: SourcePlan): readonly ColumnPlan[] =>
  blocks.flatMap((block) => [...block.columns, ...block.covariates]);

const isThere = ({ header }: { header: readonly string[] }, column: ColumnPlan): boolean =>
  locateColumn(header, column).index !== undefined;

/** Share of a source's columns that a file must have to be taken for one like it. */
const mostColumns = 0.6;

/** The source of a former audit that a file is like: the one of which most columns are there. */
export function sourceLike(of: RecognisedFile, former: Plan): SourcePlan | undefined {
  const scored = former.sources.map((source) => {
    const columns = columnsOf(source);
    const found = columns.filter((column) => isThere(of.file, column));
    const keyed = ['patient', 'eye'].every((field) =>
      columns.every((one) => one.field !== field || isThere(of.file, one)),
    );
    return { source, found: found.length, fits: keyed && found.length >= mostColumns * columns.length };
  });
  return scored.filter(({ fits }) => fits).toSorted((a, b) => b.found - a.found)[0]?.source;
}

/** A file with the meaning that a source of the former audit gives its columns; the others keep what they look like. */
export function asBefore(of: RecognisedFile, source: SourcePlan): RecognisedFile {
  const mapped = columnsOf(source).flatMap((column): readonly Placed[] => {
    const { index } = locateColumn(of.file.header, column);
    const context = { visit: undefined, side: undefined };
    return index === undefined
      ? []
      : [{ index, term: column.field, context, by: 'header', likeness: 1, against: undefined }];
  });
  const used = new Set(mapped.map(({ index }) => index));
  return { ...of, placed: [...mapped, ...of.placed.filter(({ index }) => !used.has(index))] };
}

/** Where a column stands, and how it is read, as the former audit wrote it. */
function columnText(column: ColumnPlan): string {
  const { position, occurrence, unit, index, view, numbers, notation, plane, from, words: lists, type } = column;
  const own = Object.entries({ position, occurrence, unit, index, view, numbers, notation, plane, from, type });
  const keys = own.flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)] as const]));
  const spelled = Object.entries(lists ?? {}).map(([ours, list]) => [yamlText(ours), yamlList(list)] as const);
  if (spelled.length > 0) keys.push(['words', yamlBraces(spelled)]);
  if (column.column === undefined) return yamlBraces(keys);
  return keys.length === 0 ? yamlText(column.column) : yamlBraces([['column', yamlText(column.column)], ...keys]);
}

/** A column of the former audit; where the file has it no longer it stands as a comment. */
function columnLine(column: ColumnPlan, of: RecognisedFile, gone: boolean, depth: number): YamlLine {
  const { index } = locateColumn(of.file.header, column);
  const text = `${yamlText(column.field)}: ${columnText(column)}`;
  if (index === undefined || gone) {
    const header = column.column ?? words.columnNumber(column.position ?? 0);
    return { depth, text, off: true, doubts: [{ ...doubt('like', words.like.columnGone), header }] };
  }
  return { depth, text, comment: words.behind(samplesOf(of, { index, term: column.field }), words.like.asBefore) };
}

/** Fields of a block that cannot stand any more: their columns are gone, or those they need. */
function fieldsGone({ columns, constants }: BlockPlan, of: RecognisedFile): ReadonlySet<string> {
  const gone = new Set(columns.filter((column) => !isThere(of.file, column)).map(({ field }) => field));
  for (let before = -1; before < gone.size; ) {
    before = gone.size;
    for (const { field } of columns) {
      const lacks = (fieldNamed(field)?.needs ?? []).some((name) => gone.has(name) && constants[name] === undefined);
      if (lacks) gone.add(field);
    }
  }
  return gone;
}

function conditionText({ where, at, operator, value, and }: Condition): string {
  const written = Array.isArray(value) ? yamlList(value.map(String)) : yamlText(String(value));
  const keys: (readonly [string, string])[] = [
    ['where', yamlText(where)],
    ...(at === undefined ? [] : [['at', yamlText(at)] as const]),
    [operator, written],
  ];
  if (and.length > 0) keys.push(['and', `[${and.map(conditionText).join(', ')}]`]);
  return yamlBraces(keys);
}

function valueLines(
  name: string,
  values: Readonly<Record<string, string | number>>,
  gone: ReadonlySet<string>,
  depth: number,
): readonly YamlLine[] {
  const entries = Object.entries(values);
  if (entries.length === 0) return [];
  const lines = entries.map(
    ([field, value]): YamlLine => ({
      depth: depth + 1,
      text: `${field}: ${yamlText(String(value))}`,
      off: gone.has(field),
    }),
  );
  return [{ depth, text: `${name}:`, off: lines.every(({ off }) => off) }, ...lines];
}

/** Columns that all blocks share: they stand on the same line of the former audit. */
function sharedColumns({ blocks }: SourcePlan): readonly ColumnPlan[] {
  const [first, ...others] = blocks;
  if (!first || others.length === 0) return [];
  return first.columns.filter(({ line }) => others.every((block) => block.columns.some((one) => one.line === line)));
}

function blockLines(
  block: BlockPlan,
  shared: readonly ColumnPlan[],
  of: RecognisedFile,
  depth: number,
): readonly YamlLine[] {
  const gone = fieldsGone(block, of);
  const own = block.columns.filter((column) => !shared.some(({ line }) => line === column.line));
  const lines: YamlLine[] = [{ depth, text: `holds: ${block.holds}` }];
  if (block.visit !== undefined) lines.push({ depth, text: `visit: ${yamlText(block.visit)}` });
  if (block.holds === 'prediction' && !block.columns.some(({ field }) => field === 'formula'))
    lines.push({ depth, text: `formula: ${yamlText(block.formula)}` });
  const mapped = own.map((column) => columnLine(column, of, gone.has(column.field), depth + 1));
  lines.push(...columnsMapping(depth, mapped, words.emptied));
  if (block.covariates.length > 0)
    lines.push(
      { depth, text: 'covariates:' },
      ...block.covariates.map((column) => columnLine(column, of, false, depth + 1)),
    );
  lines.push(
    ...valueLines('constants', block.constants, new Set(), depth),
    ...valueLines('blank_means', block.blank_means, gone, depth),
  );
  if (block.only.length > 0)
    lines.push(
      { depth, text: 'only:' },
      ...block.only.map((condition): YamlLine => ({ depth: depth + 1, text: `- ${conditionText(condition)}` })),
    );
  return lines;
}

function readingLines(
  { reading, letters_per_line: letters, lens_power_is: power }: SourcePlan,
  depth: number,
): readonly YamlLine[] {
  const own: YamlLine[] = [];
  if (letters !== undefined) own.push({ depth, text: `letters_per_line: ${letters}` });
  if (power !== 'se') own.push({ depth, text: `lens_power_is: ${power}` });
  const { missing, header_row: row, ...rest } = reading;
  const keys = Object.entries(rest)
    .filter(([, value]) => value !== 'auto')
    .map(([key, value]) => `${key}: ${value}`);
  if (row !== 1) keys.push(`header_row: ${row}`);
  if (missing.length > 0) keys.push(`missing: ${yamlList(missing)}`);
  return keys.length === 0
    ? own
    : [...own, { depth, text: 'reading:' }, ...keys.map((text): YamlLine => ({ depth: depth + 1, text }))];
}

const conditionHeaders = (conditions: readonly Condition[]): readonly string[] =>
  conditions.flatMap(({ where, and }) => [where, ...conditionHeaders(and)]);

/** Header indices of the file that the former audit did not use. */
function freshIndices(of: RecognisedFile, source: SourcePlan): readonly number[] {
  const asked = conditionHeaders(source.blocks.flatMap(({ only }) => only));
  const places = [
    ...columnsOf(source),
    ...asked.map((column) => ({ column, position: undefined, occurrence: undefined })),
  ];
  const used = new Set(places.map((place) => locateColumn(of.file.header, place).index));
  return of.file.header.flatMap((_, index) => (used.has(index) ? [] : [index]));
}

/** Columns that the former audit did not use, with what they look like. */
function freshNotes(of: RecognisedFile, source: SourcePlan): readonly string[] {
  return freshIndices(of, source).map((index) =>
    words.like.columnFresh(headerName(of.file, index), of.placed.find((one) => one.index === index)?.term),
  );
}

/** One source of the former audit for the files that are like it now. @param files  as audit.yaml will name them */
export function carriedLines({ of, source }: CarriedFile, files: readonly string[]): readonly YamlLine[] {
  const shared = sharedColumns(source);
  const [only] = source.blocks;
  const name = files.length === 1 ? yamlText(files[0] ?? '') : yamlList(files);
  const head: YamlLine = {
    depth: 1,
    text: `- file: ${name}`,
    notes: [
      words.readAs(of.file.rows, of.file.delimiter, of.file.decimal, of.file.dateOrder ?? 'none', of.file.encoding),
    ],
  };
  const body =
    source.blocks.length === 1 && only
      ? blockLines(only, [], of, 2)
      : [
          ...columnsMapping(
            2,
            shared.map((column) => columnLine(column, of, false, 3)),
            words.emptied,
          ),
          { depth: 2, text: 'blocks:' },
          ...source.blocks.flatMap((block) => {
            const [first, ...rest] = blockLines(block, shared, of, 4);
            return first ? [{ ...first, depth: 3, text: `- ${first.text}` }, ...rest] : [];
          }),
        ];
  const notes = freshNotes(of, source);
  return [head, ...body, ...readingLines(source, 2), ...(notes.length > 0 ? [{ depth: 2, text: '', notes }] : [])];
}

/** Columns of one file that are carried over, and headers that the former audit did not know. */
export function columnsCarried({ of, source }: CarriedFile): { placed: number; fresh: readonly string[] } {
  const found = columnsOf(source).map((column) => locateColumn(of.file.header, column).index);
  const placed = new Set(found.filter((index) => index !== undefined)).size;
  return { placed, fresh: freshIndices(of, source).map((index) => headerName(of.file, index)) };
}
