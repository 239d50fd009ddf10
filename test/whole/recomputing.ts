import { auditText } from './sample.js';

/** Line of the sample's audit.yaml that says which prediction counts. */
export const declared = 'predictions: { primary_formula: planned }\n';

const asked = `predictions:
  primary_formula: planned
  recompute: [SRK/T, Holladay 1, Hoffer Q, Haigis]
  constants:
    A1: { SRK/T: 118.9, Holladay 1: 1.75, Hoffer Q: 5.5, Haigis: 1.3 }
    B2: { SRK/T: 118.9, Holladay 1: 1.75, Hoffer Q: 5.5, Haigis: 1.3 }
`;

/** The sample's audit.yaml, or another, that has the four formulas recomputed for two of its lenses. */
export function recomputing(text = auditText()): string {
  if (!text.includes(declared)) throw new RangeError(`recomputing: no line "${declared.trim()}"`);
  return text.replace(declared, asked);
}
