import { publishedTables } from '../../src/tables/index.js';
import { en } from '../../src/words/index.js';
import { type Audit, auditOf } from './audit.js';

/**
 * Twelve eyes of twelve patients, made up so that every number can be told by hand. Columns: case, side, date, method,
 * machine, nucleus, codes, capsulotomy complete, return, energy, aim, predicted; then corrected before, uncorrected and
 * corrected after, near after (Snellen feet or words), cells before and after.
 */
const eyes = [
  'T01,R,2025-01-06,old,m1,2,none,yes,no,4.0,0,0,20/40,20/20,20/20,,2500,2250',
  'T02,R,2025-01-07,old,m1,3,PCR,yes,yes,6.0,0,0,20/20,20/40,20/32,,2000,1600',
  'T03,R,2025-01-08,old,m1,3,none,no,no,8.0,0,0,20/25,20/25,20/40,,2400,2400',
  'T04,R,2025-01-09,old,m1,2,,yes,no,5.0,0,0,CF,20/40,20/20,,,2000',
  'T05,R,2025-01-10,old,m1,2,none,yes,no,0,-2.50,-2.50,20/100,20/200,20/20,20/25,2600,',
  'T06,R,2025-01-13,old,m1,3,ODD,yes,no,7.0,0,0,20/50,20/20,20/20,,2000,1900',
  'T07,R,2025-01-14,new,m1,2,none,yes,no,2.0,0,0,20/40,20/25,20/25,,2200,2090',
  'T08,R,2025-01-15,new,m1,3,none,yes,no,3.0,0,0,20/40,20/20,20/20,,2400,2280',
  'T09,R,2025-01-16,new,m2,2,,yes,no,1.0,0,0,20/63,20/20,20/20,,2100,1995',
  'T10,R,2025-01-17,new,m2,3,none,yes,no,0,0,0,20/20,20/20,CF,,2500,2375',
  'T11,R,2025-01-20,new,m2,2,none,yes,no,1.5,-2.50,-2.50,20/80,20/125,20/20,20/20,2300,2185',
  'T12,R,2025-01-21,new,m2,3,none,yes,no,2.5,0,0,20/32,20/20,20/20,,2000,1900',
];
const columns =
  'case,side,date,method,machine,nucleus,codes,complete,return,energy,aim,predicted,cc0,sc1,cc1,near1,cells0,cells1';

function yamlOf(more: string): string {
  return `format: 1
title: Made up
sources:
  - file: eyes.csv
    columns: { patient: case, eye: side }
    blocks:
      - holds: surgery
        columns:
          surgery_date: date
          technique: method
          machine: machine
          nucleus_grade: nucleus
          complication: codes
          capsulotomy_complete: complete
          return_to_theatre: return
          effective_energy: energy
          target_se: aim
          predicted_se: predicted
${more}
      - holds: exam
        visit: before
        columns: { cdva: cc0, ecd: cells0 }
        constants: { device: scope }
      - holds: exam
        visit: later
        columns: { udva: sc1, cdva: cc1, unva: near1, ecd: cells1 }
        constants: { device: scope }
complications:
  posterior_capsule_rupture: [PCR]
  vitreous_loss: [VL]
follow_up:
  visits:
    - { name: later, labels: [later] }
cohorts: { by: technique, reference: old }
data_until: 2025-12-31
`;
}

/** @param more  lines of the surgery block, ten blanks in */
export function madeUpSafety(more = '', rows: readonly string[] = eyes): Promise<Audit> {
  return auditOf(yamlOf(more), { 'eyes.csv': `${[columns, ...rows].join('\n')}\n` });
}

/** Text of a table's cells by label, in the order of its columns; labels met twice keep the first. */
export function cellsOf({ results, plan }: Audit, name: string): ReadonlyMap<string, readonly string[]> {
  const found = publishedTables.get(name)?.(results, plan, en);
  if (!found) throw new RangeError(`cellsOf: no table ${name}`);
  const cells = new Map<string, readonly string[]>();
  for (const row of found.rows)
    if (!cells.has(row.label))
      cells.set(
        row.label,
        row.cells.map(({ text }) => text),
      );
  return cells;
}

export function footnotesOf({ results, plan }: Audit, name: string): string {
  return (publishedTables.get(name)?.(results, plan, en)?.footnotes ?? []).join('\n');
}
