import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import { cohortPairs } from '../tables/cohort-pairs.js';
import { cohortColumns } from '../tables/cohorts.js';
import { type Concern, concernsOf } from '../tables/concerns.js';
import { machinesOf } from '../tables/machines.js';
import { laneNote, recomputedNote } from '../tables/recomputed-notes.js';
import type { Column } from '../tables/shapes.js';
import { valueText } from '../tables/value-text.js';
import { millionths } from '../units.js';
import type { Words } from '../words/index.js';

/** Something that changes how the numbers of the report are to be read. */
export interface Warning {
  id:
    | 'recomputed'
    | 'lane'
    | 'few-patients'
    | 'follow-up-low'
    | 'follow-up-uneven'
    | 'both-eyes'
    | 'machines'
    | 'former-report'
    | Concern['id'];
  text: string;
}

/** Fewer patients than this are warned of. */
const manyPatients = 30;
/** Lowest share of due eyes with outcome, and the widest gap between cohorts, that need no warning. */
const goodFollowUp = 0.8;
const evenFollowUp = 0.1;

/**
 * What changes how to read the report: what audit.yaml asks for in vain, few patients, poor or uneven follow-up, what
 * else differs between cohorts, both eyes of patients.
 *
 * @throws {RangeError} when a row on eyes operated or completeness is not there
 * @source thresholds settled for this project
 */
export function warnings(results: Results, plan: Plan, words: Words): readonly Warning[] {
  const columns = cohortColumns(results, plan, words);
  return [
    ...recomputedNote(results, plan, words).map((text) => ({ id: 'recomputed' as const, text })),
    ...laneNote(plan, words).map((text) => ({ id: 'lane' as const, text })),
    ...fewPatients(results, columns, words),
    ...lowFollowUp(results, columns, words),
    ...unevenFollowUp(results, columns, words),
    ...cohortPairs(results, words).flatMap((pair) => concernsOf(results, pair, words)),
    ...bothEyes(results, words),
    ...severalMachines(results, words),
    ...formerMissing(results, plan, words),
  ];
}

function fewPatients(results: Results, columns: readonly Column[], words: Words): readonly Warning[] {
  const say = words.tables.text.warnings;
  const few = columns
    .map(({ group, label }) => ({ label, patients: results.get('eyes_operated', group, 'count').patients }))
    .filter(({ patients }) => patients < manyPatients)
    .map(({ label, patients }) => say.fewPatientsIn(label, count(patients)));
  return few.length === 0 ? [] : [{ id: 'few-patients', text: say.fewPatients(few.join('; ')) }];
}

interface Known {
  column: Column;
  share: ResultRow;
  told: string;
}

/** Completeness of the columns in which any eye was due. */
function completeness(results: Results, columns: readonly Column[], words: Words): readonly Known[] {
  return columns.flatMap((column) => {
    const share = results.get('completeness', column.group, 'share');
    if (share.value === undefined) return [];
    const known = valueText(results.get('completeness', column.group, 'count'), words);
    const { followUpLowIn } = words.tables.text.warnings;
    return [{ column, share, told: followUpLowIn(column.label, known, count(share.n), valueText(share, words)) }];
  });
}

function lowFollowUp(results: Results, columns: readonly Column[], words: Words): readonly Warning[] {
  const low = completeness(results, columns, words).filter(
    ({ share }) => millionths(share.value ?? 1) < millionths(goodFollowUp),
  );
  if (low.length === 0) return [];
  const text = words.tables.text.warnings.followUpLow(low.map(({ told }) => told).join('; '));
  return [{ id: 'follow-up-low', text }];
}

function unevenFollowUp(results: Results, columns: readonly Column[], words: Words): readonly Warning[] {
  const cohorts = completeness(results, columns, words).filter(({ column }) => column.group !== 'all');
  const shares = cohorts.map(({ share }) => share.value ?? 0);
  if (cohorts.length < 2) return [];
  if (millionths(Math.max(...shares) - Math.min(...shares)) <= millionths(evenFollowUp)) return [];
  const text = words.tables.text.warnings.followUpUneven(cohorts.map(({ told }) => told).join('; '));
  return [{ id: 'follow-up-uneven', text }];
}

function bothEyes(results: Results, words: Words): readonly Warning[] {
  const both = results.get('eyes_operated', 'all', 'patients_both_eyes');
  if (both.value === 0) return [];
  const patients = count(results.get('eyes_operated', 'all', 'count').patients);
  return [{ id: 'both-eyes', text: words.tables.text.warnings.bothEyes(valueText(both, words), patients) }];
}

function severalMachines(results: Results, words: Words): readonly Warning[] {
  const machines = machinesOf(results, words);
  if (machines.length < 2) return [];
  return [{ id: 'machines', text: words.tables.safety.warnings.machines(machines.join(', ')) }];
}

/** A former report that audit.yaml names, and of which nothing could be compared. */
function formerMissing({ rows }: Results, plan: Plan, words: Words): readonly Warning[] {
  const folder = plan.benchmarks.former_report;
  if (folder === undefined || rows.some(({ measure }) => measure.startsWith('former:'))) return [];
  return [{ id: 'former-report', text: words.tables.standing.warnings.noFormer(folder) }];
}
