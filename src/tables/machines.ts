import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { strataColumns } from './strata.js';

const measures = ['effective_energy', 'phaco_time_s', 'laser_time_s', 'case_time_min'] as const;

/** Machines that the audit's times and energies come from; none where no export names them. */
export function machinesOf(results: Results, words: Words): readonly string[] {
  const named = measures.flatMap((measure) => strataColumns(results, measure, 'machine', words));
  return [...new Set(named.map(({ label }) => label))];
}
