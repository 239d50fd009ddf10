import { type Kind, kinds } from '../../src/records/canonical.js';
import { agree, tolerances } from './join.js';
import type { MeasurementRows } from './measurement-rows.js';

/** How far two records of one column may differ; axes are compared round the half-circle. */
const columnTolerance: Readonly<Record<string, readonly [tolerance: number, period?: number]>> = {
  sphere: [tolerances.D],
  cylinder: [tolerances.D],
  recordedCylinder: [tolerances.D],
  axis: [tolerances.deg, 180],
  flat: [tolerances.keratometry],
  steep: [tolerances.keratometry],
  steepAxis: [tolerances.deg, 180],
  logMAR: [tolerances.logMAR],
};

/** What must be there for a row to serve at all: without it the row is set aside. */
const essential: Readonly<Partial<Record<Kind, number>>> = { refractions: 2, keratometries: 2 };

/** A measurement while rows are joined into its first one. */
export interface Joining {
  first: number;
  /** Row that gave each column its value; −1 none yet. */
  holder: number[];
  /** Columns left out because rows contradict each other. */
  disputed: Set<number>;
}

export function startJoining(rows: MeasurementRows, first: number): Joining {
  const holder = rows.own.map((values) => (Number.isNaN(values[first]) ? -1 : first));
  return { first, holder, disputed: new Set() };
}

/** What a row brought to its measurement. */
export interface Joined {
  /** A row that it contradicts. */
  against: number | undefined;
  /** What the contradiction left out, because neither file is preferred: a value, or all that the kind needs. */
  leftOut: 'nothing' | 'value' | 'measurement';
  /** Whether it told anything that was not known. */
  adds: boolean;
}

/**
 * Joins a row into a measurement, field by field: a blank takes the row's value, values that agree are one, values
 * that differ are left out unless audit.yaml prefers the file of the one that is there. Rows come preferred ones first.
 *
 * @param ranks  rank of each file, the smaller is preferred
 */
export function joinRow(
  rows: MeasurementRows,
  joining: Joining,
  row: number,
  { kind, ranks }: { kind: Kind; ranks: readonly number[] },
): Joined {
  const { first, holder, disputed } = joining;
  const joined: Joined = { against: undefined, leftOut: 'nothing', adds: false };
  const rankOfRow = (of: number): number => ranks[rows.source[of] as number] as number;
  kinds[kind].forEach((column, i) => {
    const values = rows.own[i] as Float64Array;
    const value = values[row] as number;
    const held = holder[i] as number;
    const [tolerance, period] = columnTolerance[column] ?? [tolerances.exact];
    if (Number.isNaN(value) || disputed.has(i)) return;
    if (held < 0) {
      values[first] = value;
      holder[i] = row;
      joined.adds = true;
    } else if (!agree(values[first] as number, value, tolerance, period)) {
      joined.against ??= held;
      if (rankOfRow(held) < rankOfRow(row)) return;
      leaveOut(rows, joining, i, kind);
      joined.leftOut = rows.state[first] === 2 ? 'measurement' : 'value';
    }
  });
  for (const flag of [rows.axisGiven, rows.unread]) flag[first] = Math.max(flag[first] as number, flag[row] as number);
  return joined;
}

function leaveOut(rows: MeasurementRows, { first, disputed }: Joining, column: number, kind: Kind): void {
  (rows.own[column] as Float64Array)[first] = Number.NaN;
  disputed.add(column);
  if (column < (essential[kind] ?? 1)) rows.state[first] = 2;
}
