import { fieldNamed } from '../../plan/fields.js';
import { defaultVisit } from '../../plan/study-schema.js';
import { propose as words } from '../../words/en/propose.js';
import type { ArrangedBlock, ArrangedFile } from '../arrange.js';
import type { Choice } from '../choices.js';
import { settled } from '../choices.js';
import { isUnsigned } from '../evidence/notation.js';
import { cylinderDoubts } from '../evidence/refraction-doubts.js';
import type { Placed, RecognisedFile } from '../placed.js';
import { blankLines } from './blank-lines.js';
import { columnDraft, columnLines } from './column-line.js';
import { type Doubt, doubt } from './doubt.js';
import { choiceDoubt, type FileSettings } from './field-forms.js';
import { headerName } from './header-name.js';
import { leftLines } from './left-lines.js';
import { columnsMapping, type YamlLine, yamlBraces, yamlList, yamlText } from './lines.js';

/** Everything that has been settled about one file. */
export interface SourceSettings extends FileSettings {
  /** Day-first or month-first, where the dates do not tell. */
  dateOrder: Choice | undefined;
  /** Whether rows without any operation are taken for one each. */
  operated: Choice | undefined;
  /** Words that mean "no value" in this file. */
  missing: readonly string[];
  /** What keeps the file's numbers from being read. */
  reading: readonly Doubt[];
  /** Name of a visit in audit.yaml. */
  visitName(name: string): string;
  /** Names of the visits after surgery. */
  visits: readonly string[];
}

/** A column that says nothing without one whose form is open stands as a comment, too; others are told by plan. */
const quietPartners: readonly string[] = ['predicted_cylinder'];

function columnsOf(
  of: RecognisedFile,
  columns: readonly Placed[],
  settings: SourceSettings,
  depth: number,
): readonly YamlLine[] {
  const drafts = columns.map((one) => ({ one, draft: columnDraft(of, one, settings) }));
  const open = drafts.filter(({ draft }) => draft.ways.length > 0).map(({ one }) => one.term);
  return drafts.flatMap(({ one, draft }) => {
    const needs = fieldNamed(one.term)?.needs ?? [];
    const off = needs.some((name) => quietPartners.includes(name) && open.includes(name));
    const odd = one.term === 'cylinder' || one.term === 'refraction' ? oddRefractions(of, one) : [];
    const header = headerName(of.file, one.index);
    const doubts = [...draft.doubts, ...odd.map((each) => ({ ...each, header }))];
    return columnLines(of, one, { ...draft, doubts }, depth, off);
  });
}

/** Mixed signs, and rows whose cells look moved. */
function oddRefractions(of: RecognisedFile, one: Placed): readonly Doubt[] {
  const { minority, shifted } = cylinderDoubts(of, one);
  const found: Doubt[] = [];
  if (minority && !isUnsigned(of, one))
    found.push(
      doubt('mixed signs', words.doubts.mixedSigns(minority.sign, minority.cells, minority.of, minority.rows)),
    );
  if (shifted.length > 0) found.push(doubt('shifted row', words.doubts.shifted(shifted)));
  return found;
}

function constantsOf({ holds, side, columns }: ArrangedBlock, depth: number): readonly YamlLine[] {
  const own: YamlLine[] = side ? [{ depth: depth + 1, text: `eye: ${side}` }] : [];
  const has = (name: string): boolean => columns.some(({ term }) => term === name);
  const refracts = holds === 'exam' && (has('sphere') || has('refraction'));
  const unknown: YamlLine[] = [];
  if (refracts && !has('vertex_mm'))
    unknown.push({ depth: depth + 1, text: 'vertex_mm: 12', comment: words.unknown.vertex, off: true });
  if (refracts && !has('lane_m'))
    unknown.push({ depth: depth + 1, text: 'lane_m: 6', comment: words.unknown.lane, off: true });
  if (holds === 'exam' && !has('device') && columns.some(({ term }) => /^k/.test(term)))
    unknown.push({ depth: depth + 1, text: 'device: keratometer-a', comment: words.unknown.device, off: true });
  if (own.length + unknown.length === 0) return [];
  return [{ depth, text: 'constants:', off: own.length === 0 }, ...own, ...unknown];
}

/** Keys that say what the rows of a block are. */
function kindLines(block: ArrangedBlock, settings: SourceSettings, depth: number): readonly YamlLine[] {
  const { holds, visit, assumed, formula } = block;
  const lines: YamlLine[] = [{ depth, text: `holds: ${holds}` }];
  if (visit) {
    const doubts = assumed ? assumedDoubts(visit.name, settings) : [];
    lines.push({ depth, text: `visit: ${yamlText(settings.visitName(visit.name))}`, doubts });
  }
  if (isOpenVisit(block)) lines.push(...openVisitLines(settings, depth));
  if (holds === 'prediction' && formula !== undefined) lines.push({ depth, text: `formula: ${yamlText(formula)}` });
  return lines;
}

const isTime = ({ term }: Placed): boolean => ['exam_date', 'days', 'visit'].includes(term);

/** Whether nothing says when the examinations of a block were, and nothing is likely. */
function isOpenVisit({ holds, visit, columns }: ArrangedBlock): boolean {
  return holds === 'exam' && visit === undefined && !columns.some(isTime);
}

function openVisitLines({ visits }: SourceSettings, depth: number): readonly YamlLine[] {
  const names = [...(visits.length > 0 ? visits : [defaultVisit]), 'before'];
  return names.map((name, at) => ({
    depth,
    text: `visit: ${yamlText(name)}`,
    off: true,
    doubts: at === 0 ? [doubt('open visit', words.doubts.openVisit)] : [],
  }));
}

/** Rows of one eye are those that say something of it. */
function onlyLines({ file }: RecognisedFile, { only }: ArrangedBlock, depth: number): readonly YamlLine[] {
  if (!only) return [];
  const header = yamlText(file.header[only.index] ?? '');
  return [
    {
      depth,
      text: `only: [${yamlBraces([
        ['where', header],
        ['is', 'present'],
      ])}]`,
    },
  ];
}

function assumedDoubts(visit: string, { operated }: SourceSettings): readonly Doubt[] {
  return operated ? [] : [doubt('assumed visit', words.doubts.assumedVisit(visit))];
}

function blockLines(
  { of, shared }: ArrangedFile,
  block: ArrangedBlock,
  settings: SourceSettings,
  alone: boolean,
): readonly YamlLine[] {
  const depth = alone ? 2 : 4;
  const columns = alone ? [...shared, ...block.columns] : block.columns;
  const body = [
    ...kindLines(block, settings, depth),
    ...columnsMapping(depth, columnsOf(of, columns, settings, depth + 1), words.emptied),
    ...constantsOf(block, depth),
    ...onlyLines(of, block, depth),
    ...blankLines(of, block, settings.answers, depth),
  ];
  if (alone) return body;
  const [first, ...rest] = body;
  const lines = first ? [{ ...first, depth: depth - 1, text: `- ${first.text}` }, ...rest] : [];
  return block.open ? asComment(lines) : lines;
}

/** A whole block that somebody must take. */
function asComment(lines: readonly YamlLine[]): readonly YamlLine[] {
  const doubts = [doubt('open eye', words.doubts.openEye)];
  return lines.map((line, at) => ({ ...line, off: true, ...(at === 0 && { doubts }) }));
}

/** Day-first or month-first, or both as comments where nothing settles it. */
function dateOrderLines({ dateOrder, answers }: SourceSettings, depth: number): readonly YamlLine[] {
  if (!dateOrder) return [];
  const taken = settled(dateOrder, answers);
  const doubts = choiceDoubt(dateOrder, taken, answers);
  const options = taken ? [taken] : dateOrder.options.map(({ value }) => value);
  return options.map((value, at) => ({
    depth,
    text: `date_order: ${value}`,
    off: taken === undefined,
    doubts: at === 0 ? doubts : [],
  }));
}

/** What a run would not find out by itself about the reading of a file. */
function readingLines({ of }: ArrangedFile, settings: SourceSettings, depth: number): readonly YamlLine[] {
  const { missing, reading } = settings;
  const { headerRow, delimiter } = of.file;
  const at = depth + 1;
  const keys: YamlLine[] = [...dateOrderLines(settings, at)];
  if (headerRow > 1) {
    keys.push({ depth: at, text: `header_row: ${headerRow}`, comment: words.headerRow(headerRow - 1) });
    keys.push({ depth: at, text: `delimiter: ${delimiter}` });
  }
  if (missing.length > 0) {
    keys.push({ depth: at, text: `missing: ${yamlList(missing)}`, comment: words.missingWords });
  }
  if (reading.length > 0) {
    keys.push({ depth: at, text: 'decimal: point', off: true, doubts: reading });
    keys.push({ depth: at, text: 'decimal: comma', off: true });
  }
  if (keys.length === 0) return [];
  return [{ depth, text: 'reading:', off: keys.every(({ off }) => off) }, ...keys];
}

function readAs({ file }: RecognisedFile): string {
  return words.readAs(file.rows, file.delimiter, file.decimal, file.dateOrder ?? 'none', file.encoding);
}

/** The first line of a source: its file, or files that are alike. */
function fileLine(files: readonly string[]): string {
  return files.length === 1 ? `- file: ${yamlText(files[0] ?? '')}` : `- file: ${yamlList(files)}`;
}

/** One file as an entry under `sources`. */
export function sourceLines(
  arranged: ArrangedFile,
  settings: SourceSettings,
): (files: readonly string[]) => readonly YamlLine[] {
  const { of, shared, blocks } = arranged;
  const alone = blocks.length === 1;
  const [only] = blocks;
  const operated = settings.operated;
  const doubts = operated
    ? choiceDoubt(operated, settled(operated, settings.answers), settings.answers).map((one) => ({
        ...one,
        kind: 'assumed operations' as const,
      }))
    : [];
  const body: readonly YamlLine[] =
    alone && only
      ? blockLines(arranged, only, settings, true)
      : [
          ...columnsMapping(2, columnsOf(of, shared, settings, 3), words.emptied),
          { depth: 2, text: 'blocks:' },
          ...blocks.flatMap((block) => blockLines(arranged, block, settings, false)),
        ];
  const end = [...readingLines(arranged, settings, 2), ...leftLines(arranged, 2)];
  return (files) => [{ depth: 1, text: fileLine(files), notes: [readAs(of)], doubts }, ...body, ...end];
}
