import { integersOf } from '../columns/table.js';
import { type RowKeys, rowKeys } from '../findings/row-keys.js';
import { type Kind, kinds } from '../records/canonical.js';
import type { BlockPlan } from '../records/plan.js';
import type { RawTable } from '../records/raw-table.js';
import type { Rule, RuleContext } from './rule.js';

/** One text for one eye. */
function eyeKey(keys: RowKeys, row: number): string {
  return `${keys.eye(row)}\t${keys.patient(row)}`;
}

function blocksOf({ raw, plan }: RuleContext, source: number): readonly BlockPlan[] {
  return plan.sources[raw[source]?.source ?? -1]?.blocks ?? [];
}

/** Every eye that any surgery row names, inside the period or not. */
function operatedEyes(context: RuleContext): ReadonlySet<string> {
  const operated = new Set<string>();
  context.raw.forEach((raw, source) => {
    for (const block of blocksOf(context, source)) {
      if (block.holds !== 'surgery') continue;
      const keys = rowKeys(raw, block);
      for (let row = 0; row < raw.rows; row++) operated.add(eyeKey(keys, row));
    }
  });
  return operated;
}

/** The keys of a file's rows as each of its blocks reads them, looked up once. */
function keysOfBlocks(context: RuleContext): (source: number, block: number) => { keys: RowKeys; raw: RawTable } {
  const known = new Map<string, { keys: RowKeys; raw: RawTable }>();
  return (source, block) => {
    const found = known.get(`${source} ${block}`);
    if (found) return found;
    const raw = context.raw[source];
    const plan = blocksOf(context, source)[block];
    if (!raw || !plan) throw new RangeError(`exam-without-surgery: no file ${source} with a block ${block}`);
    const fresh = { keys: rowKeys(raw, plan), raw };
    known.set(`${source} ${block}`, fresh);
    return fresh;
  };
}

/** Tells of each eye once, at the first row that measures it. */
function judge(context: RuleContext): void {
  const keysOf = keysOfBlocks(context);
  const told = new Set<string>();
  let operated: ReadonlySet<string> | undefined;
  for (const kind of Object.keys(kinds) as Kind[]) {
    const table = context.tables.measurements[kind];
    const [eye, day] = [integersOf(table, 'eye'), integersOf(table, 'day')];
    const [source, block, row] = [integersOf(table, 'source'), integersOf(table, 'block'), integersOf(table, 'row')];
    for (let i = 0; i < eye.length; i++) {
      if ((eye[i] as number) >= 0) continue;
      operated ??= operatedEyes(context);
      const { keys, raw } = keysOf(source[i] as number, block[i] as number);
      const at = row[i] as number;
      const key = eyeKey(keys, at);
      if (operated.has(key) || told.has(key)) continue;
      told.add(key);
      context.report({
        rule: 'exam-without-surgery',
        severity: 'query',
        effect: 'row left out',
        source: source[i] as number,
        row: raw.rowNumber(at),
        day: day[i] as number,
      });
    }
  }
}

/**
 * An examined eye that no surgery list names: its code or its side may be written differently there. An eye operated
 * outside the period is named, and not asked about.
 */
export const examWithoutSurgery: Rule = { id: 'exam-without-surgery', judge };
