import { foldedHeader } from '../findings/header.js';
import { reportName } from '../plan/report-name.js';
import { propose as words } from '../words/en/propose.js';
import type { ArrangedBlock, ArrangedFile } from './arrange.js';
import { type Answers, settled } from './choices.js';
import type { Doubt } from './draft/doubt.js';
import { headerName } from './draft/header-name.js';
import { type YamlLine, yamlOf, yamlText } from './draft/lines.js';
import { predictionLines, remainingLines } from './draft/remaining-lines.js';
import { yearsOf } from './draft/samples.js';
import { type SourceSettings, sourceLines } from './draft/source-lines.js';
import { complicationLines, valueLines } from './draft/values.js';
import { visitLines } from './draft/visit-lines.js';
import { placedAs } from './eye-rows.js';
import type { Known, KnownFile } from './survey.js';

/** What became of one file. */
export interface FileSummary {
  file: KnownFile;
  placed: number;
  unsure: readonly Doubt[];
  left: readonly { header: string; reason: string }[];
}

export interface Proposal {
  text: string;
  files: readonly FileSummary[];
  /** Everything that is in doubt, in the order of the file. */
  doubts: readonly Doubt[];
  /** Years of the operations, ascending. */
  years: readonly number[];
}

/** Rows without an operation as operations, where that was chosen, with their examination at the visit chosen. */
function withOperations({ arranged, operated }: KnownFile, answers: Answers): ArrangedFile {
  const chosen = operated && settled(operated, answers);
  if (chosen !== 'outcome' && chosen !== 'before') return arranged;
  const columns = arranged.blocks.filter(({ holds }) => holds === 'eye').flatMap((block) => block.columns);
  const surgery: ArrangedBlock = {
    holds: 'surgery',
    side: undefined,
    visit: undefined,
    assumed: true,
    formula: undefined,
    columns,
  };
  const visit = { name: chosen, days: undefined };
  const others = arranged.blocks.filter(({ holds }) => holds !== 'eye');
  return {
    ...arranged,
    operates: true,
    blocks: [surgery, ...others.map((block) => (block.holds === 'exam' ? { ...block, visit } : block))],
  };
}

/** A file with the lines that describe it. */
interface Source {
  one: KnownFile;
  arranged: ArrangedFile;
  lines: (files: readonly string[]) => readonly YamlLine[];
}

function sourceOf(one: KnownFile, { visits }: Known, answers: Answers, reading: readonly Doubt[]): Source {
  const { eyes, acuity, notation, dateOrder, operated, of } = one;
  const visitName = visits.nameOf;
  const settings: SourceSettings = {
    eyes,
    acuity,
    notation,
    dateOrder,
    operated,
    answers,
    missing: of.file.missing,
    reading,
    visitName,
  };
  const arranged = withOperations(one, answers);
  return { one, arranged, lines: sourceLines(arranged, settings) };
}

/** What two sources must share to be one: headers, and every line but the file's name. */
function likenessOf({ one, lines }: Source): string {
  return JSON.stringify([one.of.file.header.map(foldedHeader), lines(['']).map(({ text }) => text)]);
}

/** Lines of a family of files: those of the first, with the doubts of all. */
function familyLines(family: readonly Source[]): readonly YamlLine[] {
  const files = family.map(({ one }) => one.of.file.file);
  const all = family.map(({ lines }) => lines(files));
  return (all[0] ?? []).map((line, at) => {
    const doubts = all.flatMap((lines) => lines[at]?.doubts ?? []);
    const distinct = doubts.filter(({ text }, i) => doubts.findIndex((other) => other.text === text) === i);
    return { ...line, doubts: distinct };
  });
}

function families(sources: readonly Source[]): readonly (readonly Source[])[] {
  const found = new Map<string, Source[]>();
  for (const source of sources) found.set(likenessOf(source), [...(found.get(likenessOf(source)) ?? []), source]);
  return [...found.values()];
}

/** Years of all operations, ascending. */
function operationYears(files: readonly ArrangedFile[]): readonly number[] {
  const years = files
    .filter(({ operates }) => operates)
    .flatMap(({ of }) => {
      const date = placedAs(of, 'surgery_date');
      const profile = of.profiles[(date ?? placedAs(of, 'surgery_year'))?.index ?? -1];
      if (!profile) return [];
      return date ? yearsOf(of.file, profile) : profile.words.map(({ value }) => value).filter(Number.isInteger);
    });
  return [...new Set(years)].sort((a, b) => a - b);
}

function headLines(years: readonly number[], files: number): readonly YamlLine[] {
  const title = words.title(years);
  const off = years.length === 0;
  const [first = 2025, last = first] = [years[0], years.at(-1)];
  return [
    { depth: 0, text: '# yaml-language-server: $schema=audit.schema.json' },
    { depth: 0, text: '', notes: words.sections.head(files) },
    { depth: 0, text: 'format: 1' },
    { depth: 0, text: `title: ${yamlText(title)}`, comment: words.unknown.title },
    { depth: 0, text: `name: ${reportName(title)}`, comment: words.unknown.name, off: true },
    { depth: 0, text: 'period:', off, comment: words.sections.period },
    { depth: 1, text: `from: ${first}`, off },
    { depth: 1, text: `to: ${last}`, off },
    { depth: 0, text: `data_until: ${last + 1}-03-31`, comment: words.unknown.dataUntil, off: true },
  ];
}

/** A file that says neither whom nor which eye its rows are of. */
function uselessLines({ arranged }: KnownFile): readonly YamlLine[] {
  const { file } = arranged.of;
  return [
    {
      depth: 1,
      text: `- file: ${yamlText(file.file)}`,
      off: true,
      notes: [
        words.lacks(
          arranged.lacks ?? 'patient',
          file.header.map((_, index) => headerName(file, index)),
        ),
      ],
    },
  ];
}

function summaryOf({ one, arranged, lines }: Source): FileSummary {
  const columns = [...arranged.shared, ...arranged.blocks.flatMap((block) => block.columns)];
  return {
    file: one,
    placed: new Set(columns.map(({ index }) => index)).size,
    unsure: lines(['']).flatMap(({ doubts = [] }) => doubts),
    left: arranged.left.map(({ index, why, term }) => ({
      header: headerName(one.of.file, index),
      reason: words.left[why](term ?? ''),
    })),
  };
}

function uselessSummary(one: KnownFile): FileSummary {
  const { file } = one.of;
  const left = file.header.map((_, index) => ({
    header: headerName(file, index),
    reason: words.noKey(one.arranged.lacks ?? 'patient'),
  }));
  return { file: one, placed: 0, unsure: [], left };
}

/**
 * A commented audit.yaml from what is known of the files. What is in doubt is marked; what no export can tell stands as
 * a comment with its default; what would change numbers and is not settled is left open, so that a run stops and asks.
 *
 * @param reading  doubts about the numbers of a file, by its path
 */
export function proposalOf(found: Known, answers: Answers, reading: ReadonlyMap<string, readonly Doubt[]>): Proposal {
  const usable = found.files.filter(({ arranged }) => !arranged.lacks);
  const useless = found.files.filter(({ arranged }) => arranged.lacks);
  const sources = usable.map((one) => sourceOf(one, found, answers, reading.get(one.of.file.file) ?? []));
  const arranged = sources.map((source) => source.arranged);
  const years = operationYears(arranged);
  const hasTechnique = arranged.some(({ of }) => placedAs(of, 'technique') !== undefined);
  const sections: readonly (readonly YamlLine[])[] = [
    headLines(years, found.files.length),
    ...families(sources).map((family, at): readonly YamlLine[] =>
      at === 0 ? [{ depth: 0, text: 'sources:' }, ...familyLines(family)] : familyLines(family),
    ),
    ...useless.map(uselessLines),
    valueLines(arranged),
    complicationLines(arranged),
    visitLines(found.visits),
    predictionLines(found.primaryFormula, answers),
    remainingLines(hasTechnique),
  ];
  const summaries = [...sources.map(summaryOf), ...useless.map(uselessSummary)];
  return {
    text: yamlOf(sections),
    files: summaries,
    doubts: sections.flat().flatMap(({ doubts = [] }) => doubts),
    years,
  };
}
