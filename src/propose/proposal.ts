import { reportName } from '../plan/report-name.js';
import { propose as words } from '../words/en/propose.js';
import type { Answers } from './choices.js';
import { type Doubt, doubt } from './draft/doubt.js';
import { type YamlLine, yamlOf, yamlText } from './draft/lines.js';
import { predictionLines, remainingLines } from './draft/remaining-lines.js';
import { complicationLines, valueLines } from './draft/values.js';
import { visitLines } from './draft/visit-lines.js';
import { placedAs } from './eye-rows.js';
import { type FileSummary, sourcesOf } from './sources.js';
import type { Known } from './survey.js';
import { type OperationYears, operationYears } from './years.js';

export interface Proposal {
  text: string;
  files: readonly FileSummary[];
  /** Everything that is in doubt, in the order of the file. */
  doubts: readonly Doubt[];
  /** What else has to be said of the audit as a whole. */
  notes: readonly string[];
}

/** The years of the operations found: all of them, so that nothing is left out unasked; a slip of a date is said. */
function periodLines({ all, rare, rows }: OperationYears): readonly YamlLine[] {
  const off = all.length === 0;
  const [first = exampleYear, last = first] = [all[0], all.at(-1)];
  const doubts = rare.map((one) => doubt('rare year', words.doubts.rareYear(one.year, one.rows, rows)));
  return [
    { depth: 0, text: 'period:', off, comment: words.sections.period, doubts },
    { depth: 1, text: `from: ${first}`, off },
    { depth: 1, text: `to: ${last}`, off },
  ];
}

/** Stands where no year is known. */
const exampleYear = 2025;

function headLines(years: OperationYears, files: number, outside: boolean): readonly YamlLine[] {
  const title = words.title(years.usual);
  return [
    { depth: 0, text: '# yaml-language-server: $schema=audit.schema.json' },
    { depth: 0, text: '', notes: words.sections.head(files) },
    { depth: 0, text: 'format: 1' },
    { depth: 0, text: `title: ${yamlText(title)}`, comment: words.unknown.title },
    { depth: 0, text: `name: ${reportName(title)}`, comment: words.unknown.name, off: true },
    ...periodLines(years),
    {
      depth: 0,
      text: `data_until: ${(years.usual.at(-1) ?? exampleYear) + 1}-03-31`,
      comment: words.unknown.dataUntil,
      off: true,
    },
    ...(outside ? [{ depth: 0, text: 'allow_outside: true', comment: words.outside }] : []),
  ];
}

/**
 * A commented audit.yaml from what is known of the files. What is in doubt is marked; what no export can tell stands as
 * a comment with its default; what would change numbers and is not settled is left open, so that a run stops and asks.
 *
 * @param reading  doubts about the numbers of a file, by its path
 * @param outside  whether files lie outside the folder that audit.yaml is written to
 */
export function proposalOf(
  found: Known,
  answers: Answers,
  reading: ReadonlyMap<string, readonly Doubt[]>,
  outside: boolean,
): Proposal {
  const { arranged, lines, summaries } = sourcesOf(found, answers, reading);
  const hasTechnique = arranged.some(({ of }) => placedAs(of, 'technique') !== undefined);
  const sections: readonly (readonly YamlLine[])[] = [
    headLines(operationYears(arranged), found.files.length, outside),
    ...lines.map((source, at): readonly YamlLine[] =>
      at === 0 ? [{ depth: 0, text: 'sources:' }, ...source] : source,
    ),
    valueLines(arranged),
    complicationLines(arranged),
    visitLines(found.visits),
    predictionLines(found.primaryFormula, answers),
    remainingLines(hasTechnique),
  ];
  const operates = arranged.some((one) => one.operates);
  return {
    text: yamlOf(sections),
    files: summaries,
    doubts: sections.flat().flatMap(({ doubts = [] }) => doubts),
    notes: operates ? [] : [words.noOperations],
  };
}
