// `lens_power_is: sphere`: the power of a toric lens is its sphere, and the equivalent is sphere + cylinder/2
// (../shared/spec/6-settled.md). Expected values are arithmetic.
import { describe, expect, it } from 'vitest';
import { auditOf } from '../whole/audit.js';

const rows = [
  'E1,R,2025-03-01,20.00,3.00',
  // Not toric, and nothing said of a cylinder: the power is what it is.
  'E2,R,2025-03-01,21.50,0.00',
  'E3,R,2025-03-01,22.00,',
  // No such cylinder: the power that stands on it is none either.
  'E4,R,2025-03-01,18.00,15.00',
  // No such power, toric.
  'E5,R,2025-03-01,185,1.50',
];
const files = { 'theatre.csv': ['ID,Eye,Date,Power,Tor', ...rows].join('\n') };
const audit = (is: string): string => `format: 1
title: Lenses
sources:
  - file: theatre.csv
    holds: surgery
    lens_power_is: ${is}
    columns: { patient: ID, eye: Eye, surgery_date: Date, lens_power: Power, lens_cylinder: Tor }
`;
const powers = async (text: string) => {
  const { derived, findings } = await auditOf(text, files);
  const { eyes } = derived;
  const state = (eye: number) => (eyes.column('lens_power.state') as { at(row: number): number } | undefined)?.at(eye);
  const kept = Array.from({ length: rows.length }, (_, eye) =>
    state(eye) === 2 ? 'set aside' : Number(eyes.get('lens_power', eye)),
  );
  return {
    kept,
    rules: findings
      .filter(({ severity }) => severity === 'set aside')
      .map(({ rule }) => rule)
      .sort(),
  };
};

describe('lens_power_is', () => {
  it('sphere: powers become equivalents, and an impossible cylinder takes its power along', async () => {
    const { kept, rules } = await powers(audit('sphere'));
    expect(kept).toEqual([21.5, 21.5, 22, 'set aside', 'set aside']);
    expect(rules).toEqual(['lens-cylinder-range', 'lens-power-range']);
  });

  it('se, the default: powers stand as they are, whatever the cylinder', async () => {
    const { kept, rules } = await powers(audit('se'));
    expect(kept).toEqual([20, 21.5, 22, 18, 'set aside']);
    expect(rules).toEqual(['lens-cylinder-range', 'lens-power-range']);
  });
});
