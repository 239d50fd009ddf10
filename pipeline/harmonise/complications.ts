import type { Plan } from '../../src/records/plan.js';
import type { FactColumn, FactContext } from './facts.js';
import { codeCells } from './words.js';

/** Yes/no columns that are complications during surgery in their own right. */
const namedFields = ['anterior_tear', 'posterior_capsule_rupture', 'vitreous_loss'] as const;

/** The outcome that a code means; codes that audit.yaml does not map count as "other". */
function outcomeOf(code: string, plan: Plan): string {
  const folded = code.toLowerCase();
  const found = Object.entries(plan.complications).find(([name, codes]) =>
    [name, ...codes].some((one) => one.toLowerCase() === folded),
  );
  return found?.[0] ?? 'other';
}

/** Outcomes of each eye from the complication codes; undefined where the cell is blank: missing, not "none". */
function codedOutcomes(context: FactContext): ((eye: number) => readonly string[] | undefined) | undefined {
  const cells = context.blocks.map((block) =>
    block.plan.holds === 'surgery' ? codeCells(block, 'complication') : undefined,
  );
  if (!cells.some(Boolean)) return undefined;
  return (eye) => {
    const lists = (context.rowsOfEye[eye] ?? []).flatMap(({ at, row }) => {
      const codes = cells[at]?.(row);
      return codes ? [codes] : [];
    });
    return lists.length === 0 ? undefined : lists.flat().map((code) => outcomeOf(code, context.plan));
  };
}

/**
 * Any complication during surgery, and each named one: 1 recorded, 0 recorded as none, NaN not recorded.
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
    const codes = coded?.(eye);
    const words = answers.map((column) => column.at(eye));
    const happened = (codes?.length ?? 0) > 0 || words.includes('yes');
    const known = coded ? codes !== undefined : words.every((word) => word !== undefined);
    any[eye] = happened ? 1 : known ? 0 : Number.NaN;
  }
  return { any_complication: any };
}
