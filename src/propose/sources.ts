import { foldedHeader } from '../findings/header.js';
import { propose as words } from '../words/en/propose.js';
import type { ArrangedFile } from './arrange.js';
import type { Answers } from './choices.js';
import type { Doubt } from './draft/doubt.js';
import { headerName } from './draft/header-name.js';
import { leftLines } from './draft/left-lines.js';
import { type YamlLine, yamlText } from './draft/lines.js';
import { type SourceSettings, sourceLines } from './draft/source-lines.js';
import type { ExportedFile } from './exported.js';
import type { Known, KnownFile } from './survey.js';

/** What became of one file. */
export interface FileSummary {
  file: ExportedFile;
  placed: number;
  unsure: readonly Doubt[];
  left: readonly { header: string; reason: string }[];
  /** Where its mapping comes from; '' where it was looked at anew. */
  note: string;
}

/** A file with the lines that describe it. */
interface Source {
  one: KnownFile;
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
    visits: visits.found.map(({ name }) => name),
  };
  return { one, lines: sourceLines(one.arranged, settings) };
}

/** What two sources must share to be one: headers, and every line but the file's name. */
function likenessOf({ one, lines }: Source): string {
  return JSON.stringify([one.of.file.header.map(foldedHeader), lines(['']).map(({ text }) => text)]);
}

/** Doubts, each once: two eyes or two files may share one. */
function distinct(doubts: readonly Doubt[]): readonly Doubt[] {
  const isSame = (a: Doubt, b: Doubt): boolean => a.text === b.text && a.header === b.header;
  return doubts.filter((one, i) => doubts.findIndex((other) => isSame(one, other)) === i);
}

/** Lines of a family of files: those of the first, with the doubts of all. */
function familyLines(family: readonly Source[]): readonly YamlLine[] {
  const files = family.map(({ one }) => one.of.file.file);
  const all = family.map(({ lines }) => lines(files));
  return (all[0] ?? []).map((line, at) => {
    return { ...line, doubts: distinct(all.flatMap((lines) => lines[at]?.doubts ?? [])) };
  });
}

function families(sources: readonly Source[]): readonly (readonly Source[])[] {
  const found = new Map<string, Source[]>();
  for (const source of sources) found.set(likenessOf(source), [...(found.get(likenessOf(source)) ?? []), source]);
  return [...found.values()];
}

/** A file that says nothing of an eye: its headers, and why no column serves. */
function uselessLines({ arranged }: KnownFile): readonly YamlLine[] {
  const { file } = arranged.of;
  const headers = file.header.map((_, index) => headerName(file, index));
  const notes = [words.lacks(arranged.lacks ?? 'anything', headers)];
  const reasons = arranged.lacks === 'anything' ? leftLines(arranged, 1) : [];
  return [{ depth: 1, text: `- file: ${yamlText(file.file)}`, off: true, notes }, ...reasons];
}

function summaryOf({ one, lines }: Source): FileSummary {
  const { arranged } = one;
  const columns = [...arranged.shared, ...arranged.blocks.flatMap((block) => block.columns)];
  return {
    file: one.of.file,
    note: '',
    placed: new Set(columns.map(({ index }) => index)).size,
    unsure: distinct(lines(['']).flatMap(({ doubts = [] }) => doubts)),
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
    reason: words.noKey(one.arranged.lacks ?? 'anything'),
  }));
  return { file, placed: 0, unsure: [], left, note: '' };
}

/** The entries under `sources`, and what became of every file. */
export interface Sources {
  arranged: readonly ArrangedFile[];
  lines: readonly (readonly YamlLine[])[];
  summaries: readonly FileSummary[];
}

/**
 * The entries under `sources` for all files; files that are alike in all but their rows are one.
 *
 * @param reading  doubts about the numbers of a file, by its path
 */
export function sourcesOf(found: Known, answers: Answers, reading: ReadonlyMap<string, readonly Doubt[]>): Sources {
  const usable = found.files.filter(({ arranged }) => !arranged.lacks);
  const useless = found.files.filter(({ arranged }) => arranged.lacks);
  const sources = usable.map((one) => sourceOf(one, found, answers, reading.get(one.of.file.file) ?? []));
  return {
    arranged: usable.map(({ arranged }) => arranged),
    lines: [...families(sources).map(familyLines), ...useless.map(uselessLines)],
    summaries: [...sources.map(summaryOf), ...useless.map(uselessSummary)],
  };
}
