import type { ColumnTable } from 'arquero';
import { hasColumn, statesOf } from '../../src/columns/table.js';
import { type CanonicalTables, type Kind, kinds } from '../../src/records/canonical.js';
import type { Mark, Place, SideValue } from '../../src/rules/rule.js';

/** What has states of its own: a table, one value in a table, or one judged field of the eyes. */
export type Stated = Kind | `${Kind}.${SideValue}` | 'predictions' | `eyes.${string}`;

/** Books of it: rows = kept + set aside, by the first rule that did. */
export interface TableBooks {
  table: Stated;
  rows: number;
  /** Kept, those that are asked about included. */
  kept: number;
  queried: number;
  setAside: number;
  reasons: Readonly<Record<string, number>>;
}

/** States of a row; the greater one wins. */
const state = { kept: 0, queried: 1, setAside: 2 } as const;

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

function statedBy(place: Place): Stated {
  if (place.table === 'eyes') return `eyes.${place.field}`;
  if (place.table === 'predictions' || place.value === undefined) return place.table;
  return `${place.table}.${place.value}`;
}

/** The table that something stated belongs to, and its column of states there. */
function columnOf(stated: Stated): { table: Kind | 'predictions' | 'eyes'; column: string } {
  const [table = '', field] = stated.split(/\.(.*)/);
  return { table: table as Kind, column: field === undefined ? 'state' : `${field}.state` };
}

const tableOf = (tables: CanonicalTables, name: Kind | 'predictions' | 'eyes'): ColumnTable =>
  name === 'eyes' || name === 'predictions' ? tables[name] : tables.measurements[name];

/** Every state of an audit while rules are marking it. */
export interface AllMarks {
  apply(mark: Mark, rule: string): void;
  /** The tables with the states as they stand now; every other column is the very same one. */
  tables(): CanonicalTables;
  books(): readonly TableBooks[];
}

/** States of every measurement and prediction, and of the fields of eyes as rules come to them. */
export function allMarks(given: CanonicalTables): AllMarks {
  const marks = new Map<Stated, Marks>();
  const open = (stated: Stated): Marks => {
    const known = marks.get(stated);
    if (known) return known;
    const { table, column } = columnOf(stated);
    const of = tableOf(given, table);
    const fresh = marksOf(hasColumn(of, column) ? statesOf(of, column) : new Uint8Array(of.numRows()));
    marks.set(stated, fresh);
    return fresh;
  };
  for (const kind of Object.keys(kinds) as Kind[]) open(kind);
  open('predictions');
  return {
    apply: (mark, rule) => apply(open(statedBy(mark)), mark, rule),
    tables: () => withStates(given, marks),
    books: () => [...marks].map(([stated, one]) => balance(stated, one)),
  };
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

/** Closes the books of one table. @throws {RangeError} when a row was set aside without a reason */
function balance(table: Stated, { states, reasons }: Marks): TableBooks {
  const count = (of: number): number => states.reduce((sum, one) => sum + (one === of ? 1 : 0), 0);
  const [queried, setAside] = [count(state.queried), count(state.setAside)];
  const kept = count(state.kept) + queried;
  const explained = [...reasons.values()].reduce((sum, one) => sum + one, 0);
  if (kept + setAside !== states.length || explained !== setAside) {
    throw new RangeError(
      `qualify: ${table} has ${states.length} rows; kept ${kept}, set aside ${setAside}, explained ${explained}`,
    );
  }
  return { table, rows: states.length, kept, queried, setAside, reasons: Object.fromEntries(reasons) };
}

function withStates(tables: CanonicalTables, marks: ReadonlyMap<Stated, Marks>): CanonicalTables {
  let { eyes, predictions } = tables;
  const measurements: Record<Kind, ColumnTable> = { ...tables.measurements };
  for (const [stated, { states }] of marks) {
    const { table, column } = columnOf(stated);
    // Later rounds go on marking, so that a table gets states of its own.
    const marked = { [column]: states.slice() };
    if (table === 'eyes') eyes = eyes.assign(marked);
    else if (table === 'predictions') predictions = predictions.assign(marked);
    else measurements[table] = measurements[table].assign(marked);
  }
  return { ...tables, eyes, predictions, measurements };
}
