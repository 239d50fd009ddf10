import { integersOf, numbersOf } from '../columns/table.js';
import type { CanonicalTables } from '../records/canonical.js';
import type { Plan } from '../records/plan.js';

/** Everything the choice of one eye a patient may look at: nothing of the follow-up. */
export interface EyeOrder {
  patient: Int32Array;
  patients: readonly string[];
  /** 0 right, 1 left. */
  laterality: Int32Array;
  surgeryDay: Int32Array;
  year: Float64Array;
  order: Float64Array;
}

/** What the canonical eyes tell of the order of operations. */
export function eyeOrderOf({ eyes, patients }: Pick<CanonicalTables, 'eyes' | 'patients'>): EyeOrder {
  return {
    patient: integersOf(eyes, 'patient'),
    patients,
    laterality: integersOf(eyes, 'laterality'),
    surgeryDay: integersOf(eyes, 'surgeryDay'),
    year: numbersOf(eyes, 'year'),
    order: numbersOf(eyes, 'order'),
  };
}

/** 32-bit FNV-1a hash of a text: the declared lot by which a random eye is drawn. */
function lot(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** Negative where eye a goes before eye b by the rule 'first': date, else year and rank; the right eye on one day. */
export function byOperation(of: EyeOrder, a: number, b: number): number {
  const day = (of.surgeryDay[a] as number) - (of.surgeryDay[b] as number);
  const year = (of.year[a] as number) - (of.year[b] as number) || 0;
  const rank = (of.order[a] as number) - (of.order[b] as number) || 0;
  return day || year || rank || (of.laterality[a] as number) - (of.laterality[b] as number);
}

/**
 * The eyes that the one-eye rule leaves out, among eligible eyes and before follow-up is looked at.
 *
 * @param eligible  1 where the eye met no declared exclusion; eyes of one patient are adjacent
 * @returns 1 where the rule leaves the eye out
 */
export function leftOutByOneEyeRule(of: EyeOrder, eligible: Uint8Array, plan: Plan): Uint8Array {
  const rule = plan.eligibility.eyes_per_patient;
  const out = new Uint8Array(eligible.length);
  if (rule === 'both') return out;
  if (rule === 'right' || rule === 'left') {
    const kept = rule === 'right' ? 0 : 1;
    return out.map((_, eye) => (eligible[eye] && of.laterality[eye] !== kept ? 1 : 0));
  }
  const goesBefore = rule === 'first' ? byOperation : byLot(plan.statistics.seed);
  for (let eye = 1; eye < eligible.length; eye++) {
    const other = eye - 1;
    if (!eligible[eye] || !eligible[other] || of.patient[eye] !== of.patient[other]) continue;
    out[goesBefore(of, eye, other) < 0 ? other : eye] = 1;
  }
  return out;
}

function byLot(seed: number): (of: EyeOrder, a: number, b: number) => number {
  const draw = (of: EyeOrder, eye: number): number =>
    lot(`${seed}|${of.patients[of.patient[eye] as number]}|${of.laterality[eye] === 0 ? 'right' : 'left'}`);
  return (of, a, b) => draw(of, a) - draw(of, b);
}
