import type { ColumnTable } from 'arquero';
import { hasColumn, statesOf } from '../src/columns/table.js';
import { findingsBuilder } from '../src/findings/builder.js';
import { type CanonicalTables, type Kind, kinds } from '../src/records/canonical.js';
import type { Findings } from '../src/records/finding.js';
import type { Plan } from '../src/records/plan.js';
import type { RawTable } from '../src/records/raw-table.js';
import { rules } from '../src/rules/index.js';
import type { Mark, Place } from '../src/rules/rule.js';

/** Books of one table, or of one judged field of the eyes: rows = kept + set aside, by the first rule that did. */
export interface TableBooks {
  table: Kind | `eyes.${string}`;
  rows: number;
  /** Kept, those that are asked about included. */
  kept: number;
  queried: number;
  setAside: number;
  reasons: Readonly<Record<string, number>>;
}

export interface Qualified {
  tables: CanonicalTables;
  findings: Findings;
  books: readonly TableBooks[];
}

/** States of a row; the greater one wins. */
const state = { kept: 0, queried: 1, setAside: 2 } as const;

/** Column of the eyes that holds the state of one of their fields. */
const stateColumn = (field: string): string => `${field}.state`;

/** The states of one column while rules are marking it, and which rule set each row aside first. */
interface Marks {
  states: Uint8Array;
  reasons: Map<string, number>;
}

function marksOf(before: Uint8Array): Marks {
  const earlier = before.reduce((count, one) => count + (one === state.setAside ? 1 : 0), 0);
  // What harmonise set aside, it told of: rows of one key that differ.
  return { states: before.slice(), reasons: new Map(earlier > 0 ? [['same-key-differs', earlier]] : []) };
}

function apply({ states, reasons }: Marks, { row, as }: Mark, rule: string): void {
  const after = as === 'set aside' ? state.setAside : state.queried;
  const before = states[row];
  if (before === undefined)
    throw new RangeError(`qualify: ${rule} marks row ${row}; expected 0 to ${states.length - 1}`);
  if (after <= before) return;
  states[row] = after;
  if (after === state.setAside) reasons.set(rule, (reasons.get(rule) ?? 0) + 1);
}

/** The marks of every measurement table, and of the fields of eyes as rules come to them. */
function allMarks(tables: CanonicalTables): {
  of(place: Place): Marks;
  all(): ReadonlyMap<TableBooks['table'], Marks>;
} {
  const marks = new Map<TableBooks['table'], Marks>();
  for (const kind of Object.keys(kinds) as Kind[]) marks.set(kind, marksOf(statesOf(tables.measurements[kind])));
  const ofField = (field: string): Marks => {
    const name = stateColumn(field);
    return marksOf(hasColumn(tables.eyes, name) ? statesOf(tables.eyes, name) : new Uint8Array(tables.eyes.numRows()));
  };
  return {
    of(place) {
      const name: TableBooks['table'] = place.table === 'eyes' ? `eyes.${place.field}` : place.table;
      const known = marks.get(name) ?? (place.table === 'eyes' ? ofField(place.field) : undefined);
      if (!known) throw new RangeError(`qualify: there is no table ${name}`);
      marks.set(name, known);
      return known;
    },
    all: () => marks,
  };
}

/** Closes the books of one table. @throws {RangeError} when a row was lost, or set aside without a reason */
function balance(table: TableBooks['table'], { states, reasons }: Marks, rows: number): TableBooks {
  const count = (of: number): number => states.reduce((sum, one) => sum + (one === of ? 1 : 0), 0);
  const [kept, queried, setAside] = [
    count(state.kept) + count(state.queried),
    count(state.queried),
    count(state.setAside),
  ];
  const explained = [...reasons.values()].reduce((sum, one) => sum + one, 0);
  if (kept + setAside !== rows || explained !== setAside) {
    throw new RangeError(
      `qualify: ${table} has ${rows} rows; kept ${kept}, set aside ${setAside}, explained ${explained}`,
    );
  }
  return { table, rows, kept, queried, setAside, reasons: Object.fromEntries(reasons) };
}

/**
 * Stage 3 · qualify: which measurements are fit to analyse?
 *
 * in       canonical tables, from harmonise; raw cells, to quote them
 * out      the same tables with `state` set, a finding for every doubt, and the books of every table
 * promise  kept + set aside = rows, per table (checked); order unchanged; no column but `state` changes
 */
export function qualify(tables: CanonicalTables, raw: readonly RawTable[], plan: Plan): Qualified {
  const found = findingsBuilder();
  const marks = allMarks(tables);
  const off = new Set(plan.quality.off.map(({ rule }) => rule));
  for (const rule of rules) {
    if (off.has(rule.id)) continue;
    rule.judge({
      tables,
      raw,
      plan,
      report(finding, mark) {
        found.add(finding);
        if (mark) apply(marks.of(mark), mark, finding.rule);
      },
    });
  }
  const marked = withStates(tables, marks.all());
  const books = [...marks.all()].map(([table, one]) => balance(table, one, rowsOf(marked, table)));
  return { tables: marked, findings: found.build(), books };
}

function rowsOf({ eyes, measurements }: CanonicalTables, table: TableBooks['table']): number {
  return table in measurements ? measurements[table as Kind].numRows() : eyes.numRows();
}

/** The same tables with the marked states; every other column is the very same one. */
function withStates(tables: CanonicalTables, marks: ReadonlyMap<TableBooks['table'], Marks>): CanonicalTables {
  let { eyes } = tables;
  const measurements: Record<Kind, ColumnTable> = { ...tables.measurements };
  for (const [name, { states }] of marks) {
    if (name in measurements) measurements[name as Kind] = measurements[name as Kind].assign({ state: states });
    else eyes = eyes.assign({ [stateColumn(name.slice('eyes.'.length))]: states });
  }
  return { ...tables, eyes, measurements };
}
