// eligibility.preset: publication, as ../shared/spec/2-data.md says: corrected 6/12 or better after surgery,
// uncomplicated, no earlier corneal surgery, one lens family per constant; each with its number of eyes lost.
import { describe, expect, it } from 'vitest';
import { auditOf } from '../whole/audit.js';

const rows = [
  // Everything as it should be.
  'E1,R,2025-03-01,A1,118.9,none,none',
  'E2,R,2025-03-01,A1,118.9,none,none',
  // 0.3010 logMAR is 6/12 itself, 0.3979 is 6/15.
  'E3,R,2025-03-01,A1,118.9,none,none',
  'E4,R,2025-03-01,A1,118.9,none,none',
  'E5,R,2025-03-01,A1,118.9,PCR,none',
  'E6,R,2025-03-01,A1,118.9,none,LASIK',
  // The constant of the four lenses and more above, under another lens.
  'E7,R,2025-03-01,B2,118.9,none,none',
  'E8,R,2025-03-01,B2,119.2,none,none',
  // Nothing recorded leaves no eye out.
  'E9,R,2025-03-01,A1,,,',
];
const acuities = ['6/6', '6/9', '6/12', '6/15', '6/6', '6/6', '6/6', '6/6', ''];
const files = {
  'theatre.csv': ['ID,Eye,Date,Lens,Constant,Compl,Cornea', ...rows].join('\n'),
  'lane.csv': [
    'ID,Eye,Date,Sph,Cyl,Axis,CDVA',
    ...acuities.map((acuity, i) => `E${i + 1},R,2025-05-01,0.25,-0.50,90,${acuity}`),
  ].join('\n'),
};

const audit = (preset: string): string => `format: 1
title: Preset
sources:
  - file: theatre.csv
    holds: surgery
    columns:
      patient: ID
      eye: Eye
      surgery_date: Date
      lens_model: Lens
      lens_constant: Constant
      complication: Compl
      prior_corneal_surgery: Cornea
  - file: lane.csv
    holds: exam
    columns: { patient: ID, eye: Eye, exam_date: Date, sphere: Sph, cylinder: Cyl, axis: Axis, cdva: CDVA }
complications: { posterior_capsule_rupture: [PCR] }
eligibility:
  preset: ${preset}
  exclude:
    - { where: lens_model, is: none such, reason: own rule }
`;

describe('the rule for publications', async () => {
  const [own, preset] = await Promise.all([auditOf(audit('none'), files), auditOf(audit('publication'), files)]);

  it('leaves out, after the audit’s own exclusions, each with its count', () => {
    const lost = preset.rows
      .filter(({ measure, group, statistic }) => {
        return measure === 'flow:eligible' && group === 'all' && statistic.startsWith('excluded:');
      })
      .map(({ statistic, value }) => [statistic.slice('excluded:'.length), value]);
    expect(lost).toEqual([
      ['own rule', 0],
      ['Corrected acuity worse than 6/12 after surgery', 1],
      ['Complication during surgery', 1],
      ['Earlier corneal surgery', 1],
      ['Lens constant of another lens family', 1],
    ]);
    expect(preset.results.get('flow:eligible', 'all', 'analysed').value).toBe(5);
  });

  it('is not the default, and leaves every operated eye in safety', () => {
    expect(own.results.get('flow:eligible', 'all', 'analysed').value).toBe(9);
    for (const { results } of [own, preset]) expect(results.get('any_complication', 'all', 'n').value).toBe(8);
  });
});
