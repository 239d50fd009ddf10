import { findingAt } from '../../src/findings/builder.js';
import { type QueryRow, queryColumns, queryRows } from '../../src/findings/queries.js';
import { type TellingContext, tell } from '../../src/findings/telling.js';
import { fieldNamed } from '../../src/plan/fields.js';
import type { Finding } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import type { Words } from '../../src/words/index.js';
import { spreadsheetFile } from './csv-file.js';
import type { Gathered } from './everything.js';
import type { OutputFile } from './replace.js';

/** What to set right or to confirm, in the order of patients; none before there are eyes. */
export function queriesOf(found: Gathered, plan: Plan, words: Words): readonly QueryRow[] {
  return found.tables ? queryRows(found.findings, found.tables, contextOf(found, plan, words)) : [];
}

/** queries.csv, the list that goes back to the clinic. */
export function queriesFile(path: string, queries: readonly QueryRow[], { outputs }: Plan): OutputFile {
  const cells = queries.map((query) => queryColumns.map((name) => query[name]));
  return spreadsheetFile(path, queryColumns, cells, outputs.spreadsheet);
}

const findingColumns = [
  'rule',
  'severity',
  'file',
  'row',
  'column',
  'value',
  'found',
  'expected',
  'please_check',
  'effect',
] as const;

/** findings.csv: every finding, those that stop and those that are only noted among them, in the order of stages. */
export function findingsFile(path: string, found: Gathered, plan: Plan, words: Words): OutputFile {
  const context = contextOf(found, plan, words);
  function* rows(): Generator<readonly string[]> {
    for (let i = 0; i < found.findings.length; i++) yield findingRow(findingAt(found.findings, i), context, words);
  }
  return spreadsheetFile(path, findingColumns, rows(), plan.outputs.spreadsheet);
}

/** What is needed to put the findings of a run into words. */
export function contextOf({ raw, answers, answered }: Gathered, plan: Plan, words: Words): TellingContext {
  return { raw: [...raw, ...answers], plan, words: words.findings, answered };
}

function findingRow(finding: Finding, context: TellingContext, words: Words): readonly string[] {
  const { rule, severity, source, row, column = '', written } = finding;
  const { sentence, expected, act, lines, effect } = tell(finding, context);
  const place = [context.raw[source]?.label ?? '', row === 0 ? '' : String(row), column];
  const shown = written === undefined || isDate(finding) ? '' : words.screens.value(written);
  return [rule, severity, ...place, shown, sentence, expected, [act, ...lines].join(' '), effect];
}

/** A full date is read but never written. */
function isDate({ field }: Finding): boolean {
  return fieldNamed(field ?? '')?.type === 'date';
}
