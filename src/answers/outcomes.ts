import { type FindingParts, findingsBuilder } from '../findings/builder.js';
import { fieldNamed } from '../plan/fields.js';
import type { Finding, Findings } from '../records/finding.js';
import type { GivenAnswer } from './given.js';

/** What became of an answer. */
export type Outcome =
  | {
      kind: 'corrected' | 'confirmed' | 'cannot tell' | 'not applied' | 'contradicted';
      answer: GivenAnswer;
      finding: Finding;
    }
  | { kind: 'without query' | 'unreadable' | 'incomplete'; answer: GivenAnswer };

/** The cell that a query was about. */
const placeOf = ({ source, row, column, field, written, eye, day }: Finding) => {
  return { source, row, column, field, written, eye, day };
};

/** A date is read and never told. */
const isDate = ({ field }: Finding): boolean => fieldNamed(field ?? '')?.type === 'date';

/** One outcome as a finding; answers that are counted together have none of their own. */
function told(outcome: Outcome, files: number): FindingParts | undefined {
  const { answer } = outcome;
  const inList = { source: files + answer.list, row: answer.row, effect: 'kept' } as const;
  switch (outcome.kind) {
    case 'corrected': {
      const { finding } = outcome;
      const written = isDate(finding) ? undefined : `${finding.written ?? ''}’ → ‘${answer.corrected}`;
      return { rule: 'answer-corrected', severity: 'note', ...placeOf(finding), written, effect: 'kept' };
    }
    case 'confirmed': {
      const { finding } = outcome;
      if (finding.severity !== 'set aside') return undefined;
      return { rule: 'answer-impossible', severity: 'note', ...placeOf(finding), effect: finding.effect };
    }
    case 'not applied':
      return { rule: 'answer-not-applied', severity: 'query', ...inList, column: 'answer', written: answer.query };
    case 'contradicted':
      return {
        rule: 'answer-contradicted',
        severity: 'query',
        ...inList,
        column: 'corrected_value',
        written: answer.corrected,
      };
    case 'without query':
      return { rule: 'answer-without-query', severity: 'note', ...inList, column: 'query', written: answer.query };
    case 'unreadable':
      return { rule: 'answer-unreadable', severity: 'query', ...inList, column: 'answer', written: answer.written };
    case 'incomplete':
      return { rule: 'answer-incomplete', severity: 'query', ...inList, column: 'corrected_value' };
    case 'cannot tell':
      return undefined;
  }
}

/**
 * What became of the answers, as findings: each cell that was corrected, each answer that could not be used, and how many
 * were confirmed or could not be told by anybody.
 *
 * @param files  how many files stand before the lists
 */
export function tellOutcomes(outcomes: readonly Outcome[], files: number): Findings {
  const found = findingsBuilder();
  for (const outcome of outcomes) {
    const finding = told(outcome, files);
    if (finding) found.add(finding);
  }
  const count = (kind: Outcome['kind']): number => outcomes.filter((one) => one.kind === kind).length;
  const [detail, other] = [count('confirmed'), count('cannot tell')];
  if (detail + other > 0) found.add({ rule: 'answers-read', severity: 'note', effect: 'kept', detail, other });
  return found.build();
}
