import { integersOf, numbersOf, statesOf } from '../columns/table.js';
import { locateColumn } from '../findings/header.js';
import { missingWords } from '../intake/missing.js';
import { keptColumn } from '../records/raw-table.js';
import { millionths } from '../units.js';
import type { Rule, RuleContext } from './rule.js';

/** A smaller cylinder has no direction worth asking for: blank axis and |cylinder| < 0.01 D is a zero vector. */
const smallest = 0.01;

/** Where a block writes the axis, and whether a cell of it is blank. */
interface AxisColumn {
  header: string;
  field: string;
  written(row: number): string;
  isBlank(row: number): boolean;
}

/** The column that holds the axis, alone or within a refraction; undefined where the block maps neither. */
function axisColumn({ raw, plan }: RuleContext, source: number, block: number): AxisColumn | undefined {
  const table = raw[source];
  const sourcePlan = table && plan.sources[table.source];
  const columns = sourcePlan?.blocks[block]?.columns ?? [];
  const column = columns.find(({ field }) => field === 'axis') ?? columns.find(({ field }) => field === 'refraction');
  const located = table && column && locateColumn(table.header, column);
  if (!table || !sourcePlan || !column || located?.index === undefined) return undefined;
  const words = keptColumn(table, located.index);
  const isMissing = missingWords(sourcePlan.reading.missing);
  return {
    header: table.header[located.index] ?? '',
    field: column.field,
    written: (row) => words.at(row),
    // A refraction in one cell is not blank, but has no axis.
    isBlank: (row) => column.field === 'refraction' || isMissing(words.at(row)),
  };
}

function judge(context: RuleContext): void {
  const table = context.tables.measurements.refractions;
  const [cylinder, axis, state] = [numbersOf(table, 'cylinder'), numbersOf(table, 'axis'), statesOf(table)];
  const [source, block, row] = [integersOf(table, 'source'), integersOf(table, 'block'), integersOf(table, 'row')];
  const [eye, day, axisGiven] = [integersOf(table, 'eye'), integersOf(table, 'day'), statesOf(table, 'axisGiven')];
  const columns = new Map<string, AxisColumn | undefined>();
  const without = new Map<number, number>();

  for (let i = 0; i < axis.length; i++) {
    // Where an axis was written, in this row or in one joined with it, another rule says what is wrong with it.
    if ((eye[i] as number) < 0 || state[i] === 2 || axisGiven[i] === 1) continue;
    if (!Number.isNaN(axis[i]) || !(millionths(cylinder[i] as number) >= millionths(smallest))) continue;
    const [file, part, at] = [source[i] as number, block[i] as number, row[i] as number];
    const key = `${file} ${part}`;
    if (!columns.has(key)) columns.set(key, axisColumn(context, file, part));
    const column = columns.get(key);
    if (!column) without.set(file, (without.get(file) ?? 0) + 1);
    if (!column?.isBlank(at)) continue;
    context.report(
      {
        rule: 'axis-missing',
        severity: 'query',
        effect: 'vector left out',
        source: file,
        row: context.raw[file]?.rowNumber(at) ?? 0,
        column: column.header,
        field: column.field,
        written: column.written(at),
        eye: eye[i] as number,
        day: day[i] as number,
        detail: cylinder[i] as number,
      },
      { table: 'refractions', row: i, as: 'queried' },
    );
  }
  // A file that has no axis at all is told once, not at its every row.
  for (const [file, rows] of without) {
    context.report({
      rule: 'axis-not-mapped',
      severity: 'query',
      effect: 'vector left out',
      source: file,
      detail: rows,
    });
  }
}

/** A cylinder without an axis: its direction is not known, so the vector is left out and the powers are kept. */
export const axisMissing: Rule = { id: 'axis-missing', judge };
