import type { Plan, SourcePlan } from '../records/plan.js';
import { propose as words } from '../words/en/propose.js';
import { type Doubt, doubt } from './draft/doubt.js';
import { type YamlLine, yamlOf, yamlText } from './draft/lines.js';
import { type CarriedFile, carriedLines, columnsCarried } from './former.js';
import { sectionsOf } from './former-sections.js';
import { changedWords } from './former-words.js';
import type { Proposal } from './proposal.js';
import type { FileSummary, Sources } from './sources.js';
import { operationYears } from './years.js';

/** A former audit that is carried over. */
export interface Former {
  text: string;
  plan: Plan;
  /** Whether a path is one that a source names, or a pattern of it. */
  fits(path: string, pattern: string): boolean;
}

/** Sections that are written anew. */
const ownSections = ['format', 'title', 'name', 'period', 'data_until', 'allow_outside', 'sources'];

/** Years by which the audit moves on: from the end of the former period to the last operation found. */
function yearsOn({ period }: Plan, years: readonly number[]): number {
  const end = Number((period.to ?? period.from ?? '').slice(0, 4));
  const last = years.at(-1);
  return end > 0 && last !== undefined && last > end ? last - end : 0;
}

const moved = (text: string, years: number): string =>
  text.replace(/(?<!\d)(?:19|20|21)\d\d(?!\d)/g, (year) => String(Number(year) + years));

function headLines({ plan }: Former, files: number, years: number, outside: boolean): readonly YamlLine[] {
  const { from, to } = plan.period;
  const doubts = years > 0 ? [doubt('like', words.like.periodMoved(years))] : [doubt('like', words.like.periodKept)];
  const period: readonly YamlLine[] =
    from === undefined && to === undefined
      ? []
      : [
          { depth: 0, text: 'period:', doubts },
          ...(from === undefined ? [] : [{ depth: 1, text: `from: ${moved(from, years)}` }]),
          ...(to === undefined ? [] : [{ depth: 1, text: `to: ${moved(to, years)}` }]),
        ];
  return [
    { depth: 0, text: '# yaml-language-server: $schema=audit.schema.json' },
    { depth: 0, text: '', notes: words.like.head(files) },
    { depth: 0, text: 'format: 1' },
    { depth: 0, text: `title: ${yamlText(moved(plan.title, years))}` },
    { depth: 0, text: `name: ${moved(plan.name, years)}` },
    ...period,
    ...(plan.data_until === undefined
      ? []
      : [{ depth: 0, text: `data_until: ${moved(plan.data_until, years)}`, off: true, comment: words.like.dataUntil }]),
    ...(plan.allow_outside || outside ? [{ depth: 0, text: 'allow_outside: true' }] : []),
  ];
}

const operates = ({ blocks }: SourcePlan): boolean => blocks.some(({ holds }) => holds === 'surgery');

/** Files of one source of the former audit, in the order of the sources. */
function bySource(carried: readonly CarriedFile[], { plan }: Former): readonly (readonly CarriedFile[])[] {
  return plan.sources
    .map((source) => carried.filter((one) => one.source === source))
    .filter((files) => files.length > 0);
}

/** How the files of a source are named: by the former pattern where it fits all of them, else by their own paths. */
function namesOf(files: readonly CarriedFile[], { fits }: Former): readonly string[] {
  const paths = files.map(({ of }) => of.file.file);
  const pattern = files[0]?.source.file.filter((one) => one.includes('*')) ?? [];
  const covered = paths.every((path) => pattern.some((one) => fits(path, one)));
  return pattern.length > 0 && covered ? pattern : paths;
}

/** The former path of a file and the new one, where it is one for one: other sections may name it. */
function renamed(lines: readonly string[], groups: readonly (readonly CarriedFile[])[]): readonly string[] {
  const pairs = groups.flatMap((files) => {
    const [former, ...others] = files[0]?.source.file ?? [];
    const path = files.length === 1 ? files[0]?.of.file.file : undefined;
    return former === undefined || others.length > 0 || path === undefined || former === path
      ? []
      : [[former, path] as const];
  });
  return lines.map((line) => pairs.reduce((text, [former, path]) => text.replaceAll(former, path), line));
}

function carriedSummary(one: CarriedFile, lines: readonly YamlLine[]): FileSummary {
  const { placed, fresh } = columnsCarried(one);
  const left = fresh.map((header) => ({ header, reason: words.like.fresh }));
  return {
    file: one.of.file,
    placed,
    unsure: lines.flatMap(({ doubts = [] }) => doubts),
    left,
    note: words.like.carried,
  };
}

/** Sections of the former audit as they were written, with what has changed in the words they list. */
function keptSections(
  former: Former,
  carried: readonly CarriedFile[],
  groups: readonly (readonly CarriedFile[])[],
): readonly (readonly YamlLine[])[] {
  const changed: Readonly<Record<string, readonly Doubt[]>> = changedWords(former.plan, carried);
  const kept = sectionsOf(former.text).filter(({ key }) => !ownSections.includes(key));
  return kept.map(({ key, lines }) =>
    renamed(lines, groups).map((text, at) => ({ depth: 0, text, ...(at === 0 && { doubts: changed[key] ?? [] }) })),
  );
}

/** Files of the former audit for which none came. */
function filesGone({ plan }: Former, carried: readonly CarriedFile[]): readonly string[] {
  const gone = plan.sources.filter((source) => !carried.some((one) => one.source === source));
  return gone.flatMap(({ file }) => file);
}

/**
 * Last year's audit.yaml for the files of this year: the mapping of files whose headers are the same, everything else as
 * it was written, the period moved on, and new and vanished files, columns and words named.
 *
 * @param carried  files that are like a source of the former audit
 * @param anew     the others, looked at anew
 * @param outside  whether files lie outside the folder that audit.yaml is written to
 */
export function likeProposal(
  former: Former,
  carried: readonly CarriedFile[],
  anew: Sources,
  outside: boolean,
): Proposal {
  const groups = bySource(carried, former);
  const all = [...carried.map(({ of, source }) => ({ of, operates: operates(source) })), ...anew.arranged];
  const on = yearsOn(former.plan, operationYears(all).usual);
  const carriedSources = groups.map((files) => carriedLines(files[0] as CarriedFile, namesOf(files, former)));
  const [first = [], ...others] = [...carriedSources, ...anew.lines];
  const sections: readonly (readonly YamlLine[])[] = [
    headLines(former, carried.length + anew.summaries.length, on, outside),
    [{ depth: 0, text: 'sources:' }, ...first],
    ...others,
    ...keptSections(former, carried, groups),
  ];
  const summaries = groups.flatMap((files, at) => files.map((one) => carriedSummary(one, carriedSources[at] ?? [])));
  const gone = filesGone(former, carried);
  return {
    text: yamlOf(sections),
    files: [...summaries, ...anew.summaries.map((one) => ({ ...one, note: words.like.anew }))],
    doubts: sections.flat().flatMap(({ doubts = [] }) => doubts),
    notes: gone.length > 0 ? [words.like.filesGone(gone)] : [],
  };
}
