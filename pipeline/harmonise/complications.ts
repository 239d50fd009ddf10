import type { Plan } from '../../src/records/plan.js';
import type { FactColumn, FactContext } from './facts.js';
import { codeCells } from './words.js';

/** Yes/no columns that are complications during surgery in their own right. */
const namedFields = ['anterior_tear', 'posterior_capsule_rupture', 'vitreous_loss'] as const;

/** What a code means that audit.yaml does not map. */
const other = 'other';

/** The outcome that a code means; codes that audit.yaml does not map count as "other". */
function outcomeOf(code: string, plan: Plan): string {
  const folded = code.toLowerCase();
  const found = Object.entries(plan.complications).find(([name, codes]) =>
    [name, ...codes].some((one) => one.toLowerCase() === folded),
  );
  return found?.[0] ?? other;
}

/** Outcomes of each eye from the complication codes; undefined where the cell is blank: missing, not "none". */
function codedOutcomes(context: FactContext): (readonly string[] | undefined)[] | undefined {
  const cells = context.blocks.map((block) =>
    block.plan.holds === 'surgery' ? codeCells(block, 'complication') : undefined,
  );
  if (!cells.some(Boolean)) return undefined;
  return context.rowsOfEye.map((rows) => {
    const lists = rows.flatMap(({ at, row }) => {
      const codes = cells[at]?.(row);
      return codes ? [codes] : [];
    });
    return lists.length === 0 ? undefined : lists.flat().map((code) => outcomeOf(code, context.plan));
  });
}

/** 1 where any source says that it happened, 0 where one says that it did not, NaN where none says anything. */
function sayings(eyes: number, ...sources: readonly ((eye: number) => boolean | undefined)[]): Float64Array {
  return Float64Array.from({ length: eyes }, (_, eye) => {
    const said = sources.map((source) => source(eye));
    if (said.includes(true)) return 1;
    return said.includes(false) ? 0 : Number.NaN;
  });
}

/** Names of the complications that an export can tell: declared and named ones in their order, then the rest. */
function namesOf(
  coded: readonly (readonly string[] | undefined)[] | undefined,
  facts: Readonly<Record<string, FactColumn>>,
  plan: Plan,
): readonly string[] {
  const declared = coded ? Object.keys(plan.complications) : [];
  const seen = coded?.some((codes) => codes?.includes(other)) ? [other] : [];
  return [...new Set([...declared, ...namedFields.filter((name) => facts[name]), ...seen])];
}

/**
 * Any complication during surgery, and each by name as `complication:<name>`: 1 recorded, 0 recorded as none, NaN not
 * recorded. Any is known only where every source that the export has is filled.
 *
 * @param facts  columns of the eyes, for outcomes that have a yes/no column of their own
 */
export function complicationColumns(
  context: FactContext,
  facts: Readonly<Record<string, FactColumn>>,
): Readonly<Record<string, Float64Array>> {
  const coded = codedOutcomes(context);
  const answers = namedFields.map((name) => facts[name]).filter((column) => column !== undefined);
  if (!coded && answers.length === 0) return {};
  const eyes = context.rowsOfEye.length;
  const any = new Float64Array(eyes);
  for (let eye = 0; eye < eyes; eye++) {
    const codes = coded?.[eye];
    const words = answers.map((column) => column.at(eye));
    const happened = (codes?.length ?? 0) > 0 || words.includes('yes');
    const known = coded ? codes !== undefined : words.every((word) => word !== undefined);
    any[eye] = happened ? 1 : known ? 0 : Number.NaN;
  }
  const named = namesOf(coded, facts, context.plan).map((name): [string, Float64Array] => {
    const column = facts[name];
    const answer = (eye: number): boolean | undefined => {
      const word = column?.at(eye);
      return word === undefined ? undefined : word === 'yes';
    };
    return [`complication:${name}`, sayings(eyes, (eye) => coded?.[eye]?.includes(name), answer)];
  });
  return { any_complication: any, ...Object.fromEntries(named) };
}
