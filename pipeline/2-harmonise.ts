import type { ColumnTable } from 'arquero';
import { integersOf } from '../src/columns/table.js';
import { type FindingParts, type FindingsBuilder, findingsBuilder } from '../src/findings/builder.js';
import { parseDate } from '../src/intake/date.js';
import { primaryFormula } from '../src/predictions/primary.js';
import {
  type CanonicalTables,
  type FieldReading,
  type FileBooks,
  type Kind,
  kinds,
  noDay,
} from '../src/records/canonical.js';
import type { Findings } from '../src/records/finding.js';
import type { Plan } from '../src/records/plan.js';
import type { RawTable } from '../src/records/raw-table.js';
import { blocksOf } from './harmonise/blocks.js';
import { bookEyeRows, eventTable, eyeTable, rowContexts } from './harmonise/eyes.js';
import { joinedTable } from './harmonise/joined-measurements.js';
import { readKeys } from './harmonise/keys.js';
import { type Gathered, gatherMeasurements } from './harmonise/measurements.js';
import { operatedEyes, readOperations } from './harmonise/operations.js';
import { predictionTable } from './harmonise/predictions.js';
import { repeatCounter } from './harmonise/repeats.js';
import { type RowBooks, rowBooks } from './harmonise/row-books.js';

/**
 * Stage 2 · harmonise: the same names, units, notation, order for every export
 *
 * in       files as words
 * out      canonical tables, and a finding for every cell that could not be read or said two things
 * promise  rows read = used + set aside, per file (asserted); canonical order; no calendar date but `surgeryDay`
 */
export function harmonise(raw: readonly RawTable[], plan: Plan): { tables: CanonicalTables; findings: Findings } {
  const findings = findingsBuilder();
  const readings: FieldReading[] = [];
  const books = raw.map(rowBooks);
  const blocks = blocksOf(raw, plan);
  const keys = readKeys(blocks, books, findings);
  const operations = readOperations(blocks, keys.ofBlock, books, plan, findings);
  const { eyes, outside } = operatedEyes(operations, plan);
  if (eyes.length === 0) findings.add(withoutEyes(outside.size));
  const contexts = rowContexts(blocks, keys, eyes, outside, findings, readings);
  bookEyeRows(blocks, contexts, eyes, books, findings);

  const eyeColumns = eyeTable(blocks, contexts, eyes, plan);
  const surgeryDay = integersOf(eyeColumns, 'surgeryDay');
  const gathered = gatherMeasurements(blocks, contexts, books, surgeryDay, plan);
  const measurements = joinMeasurements(gathered, raw, books, plan, findings);
  const { predictions, formulas } = predictionTable(blocks, contexts, books, plan);
  if (formulas.length > 0 && primaryFormula(formulas, plan.predictions.primary_formula) === undefined) {
    findings.add({
      rule: 'prediction-open',
      severity: 'stop',
      written: formulas.join(', '),
      effect: 'nothing published',
    });
  }
  const tables: CanonicalTables = {
    patients: keys.patients,
    eyes: eyeColumns,
    events: eventTable(blocks, eyes, noDay),
    measurements,
    predictions,
    devices: gathered.devices,
    formulas,
    files: raw.map(({ file }) => file),
    readings,
    dataUntil: dataUntil(plan, gathered.latest, surgeryDay),
    books: raw.map((_, source) => balanced((books[source] as RowBooks).close(source))),
  };
  return { tables, findings: findings.build() };
}

/** Why there is nothing to audit. @param outside  eyes operated outside the period */
function withoutEyes(outside: number): FindingParts {
  const rule = outside > 0 ? 'period-empty' : 'operations-none';
  return { rule, severity: 'stop', detail: outside, effect: 'nothing published' };
}

function joinMeasurements(
  { rows }: Gathered,
  raw: readonly RawTable[],
  books: readonly RowBooks[],
  plan: Plan,
  findings: FindingsBuilder,
): Readonly<Record<Kind, ColumnTable>> {
  const repeats = repeatCounter(raw, books, findings);
  const names = Object.keys(kinds) as Kind[];
  const joined = names.map((kind) => [
    kind,
    joinedTable(rows[kind], { kind, raw, plan, findings, repeats: repeats.met }),
  ]);
  repeats.close(Object.values(rows));
  return Object.fromEntries(joined) as Record<Kind, ColumnTable>;
}

/**
 * The export's day: declared, else the latest date in any file. Where no examination has a date nobody knows which
 * visits were due, and all eyes count as due.
 */
function dataUntil(plan: Plan, latestExam: number, surgeryDay: Int32Array): number {
  if (plan.data_until !== undefined) return parseDate(plan.data_until, 'year-first') ?? noDay;
  if (latestExam === noDay) return noDay;
  return surgeryDay.reduce((latest, day) => Math.max(latest, day), latestExam);
}

function balanced(books: FileBooks): FileBooks {
  const setAside = Object.values(books.setAside).reduce((sum, n) => sum + n, 0);
  if (books.read !== books.used + setAside) {
    throw new RangeError(
      `harmonise: file ${books.source} read ${books.read} rows, used ${books.used}, set aside ${setAside}`,
    );
  }
  return books;
}
