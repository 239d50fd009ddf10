import { memoryIo } from '../../pipeline/memory-io.js';
import { plan as planFrom } from '../../pipeline/plan.js';
import { type ProposeOptions, type ProposeOutcome, proposeAudit } from '../../pipeline/propose/propose.js';
import type { Choice } from '../../src/propose/choices.js';
import type { ColumnPlan, Plan } from '../../src/records/plan.js';

export type Files = Readonly<Record<string, string | Uint8Array>>;

/** What `propose` makes of files held in memory. */
export function outcomeOf(files: Files, options: ProposeOptions = {}): Promise<ProposeOutcome> {
  return proposeAudit(Object.keys(files), options, memoryIo(files), () => {});
}

export interface Proposed {
  text: string;
  /** The plan that the text is; undefined where a choice is left open so that it has faults. */
  plan: Plan | undefined;
  faults: readonly string[];
  /** Kinds of doubt, each with the header it is about. */
  doubts: readonly string[];
  /** Kinds of the choices left open. */
  open: readonly string[];
}

/** The audit.yaml that is proposed for files. @throws where none is */
export async function proposedFor(files: Files, options: ProposeOptions = {}): Promise<Proposed> {
  const outcome = await outcomeOf(files, options);
  if (outcome.kind !== 'proposed') throw new RangeError(`nothing was proposed: ${JSON.stringify(outcome)}`);
  const { text, doubts } = outcome.proposal;
  const planned = planFrom(text);
  return {
    text,
    plan: 'plan' in planned ? planned.plan : undefined,
    faults: 'faults' in planned ? planned.faults.map(({ message }) => message) : [],
    doubts: doubts.map(({ kind, header }) => `${kind}${header === '' ? '' : `: ${header}`}`),
    open: outcome.open.map(({ kind }) => kind),
  };
}

/** A column as audit.yaml has it, without what is left out and its line. */
export function formOf({ field, line: _, ...form }: ColumnPlan): Record<string, unknown> {
  const given = Object.entries(form).filter(([, value]) => value !== undefined);
  return { field, ...Object.fromEntries(given) };
}

/** Field → header, of all blocks of one source; a field of several blocks is told with the block's visit or formula. */
export function mappingOf(plan: Plan | undefined, source = 0): Readonly<Record<string, string>> {
  const blocks = plan?.sources[source]?.blocks ?? [];
  const pairs = blocks.flatMap(({ visit, formula, holds, columns }) => {
    const about = holds === 'exam' ? visit : holds === 'prediction' ? formula : undefined;
    return columns
      .filter(({ field }) => field !== 'patient' && field !== 'eye')
      .map(({ field, column, position }) => [about ? `${about}: ${field}` : field, column ?? `column ${position}`]);
  });
  return Object.fromEntries(pairs);
}

/** Answers by the kind of choice; a kind that is not asked about is a mistake of the test. */
export function answering(answers: Readonly<Record<string, string | undefined>>, asked: Choice[] = []) {
  return async (choice: Choice): Promise<string | undefined> => {
    asked.push(choice);
    if (!Object.hasOwn(answers, choice.kind)) throw new RangeError(`the test was asked about ${choice.kind}`);
    return answers[choice.kind];
  };
}
