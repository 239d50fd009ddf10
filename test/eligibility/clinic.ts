import type { Membership } from '../../src/records/derived.js';
import type { Family } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import { planOf } from '../findings/plan.js';
import { auditBy } from '../whole/audit.js';

const theatre = {
  file: 'theatre.csv',
  holds: 'surgery',
  columns: {
    patient: 'ID',
    eye: 'Eye',
    surgery_date: 'Date',
    axial_length: 'AL',
    lens_model: 'Lens',
    comorbidity: 'Ill',
    target_se: 'Aim',
    predicted_se: 'Pred',
  },
} as const;

const lane = {
  file: 'lane.csv',
  columns: {
    patient: 'ID',
    eye: 'Eye',
    days: 'Day',
    sphere: 'Sph',
    cylinder: 'Cyl',
    axis: 'Ax',
    udva: { column: 'UDVA', numbers: 'logmar' },
    cdva: { column: 'CDVA', numbers: 'logmar' },
  },
} as const;

/** One operated eye of a patient of its own and one examination of it; what is left out is as in most eyes. */
export interface EyeForm {
  date?: string;
  al?: string;
  lens?: string;
  ill?: string;
  aim?: string;
  pred?: string;
  /** Day from surgery, sphere, cylinder, axis, uncorrected and corrected logMAR; undefined: never seen again. */
  exam?: readonly [day: number, sph: string, cyl: string, axis: string, udva: string, cdva: string] | undefined;
}

const usual = { date: '2025-03-01', al: '23.5', lens: 'A1', ill: 'none', aim: '0.00', pred: '-0.10' };
const seen = [74, '0.25', '-0.50', '90', '0.1', '0.0'] as const;

/** Where each eye, E1, E2 …, stands in a family. */
export async function standing(
  eyes: readonly EyeForm[],
  more: Partial<Plan> = {},
): Promise<{ of(family: Family): readonly string[]; membership: Membership }> {
  const operated = eyes.map((eye, i) => {
    const { date, al, lens, ill, aim, pred } = { ...usual, ...eye };
    return [`E${i + 1}`, 'R', date, al, lens, ill, aim, pred].join(',');
  });
  const exams = eyes.flatMap((eye, i) => {
    const exam = 'exam' in eye ? eye.exam : seen;
    return exam ? [[`E${i + 1}`, 'R', ...exam].join(',')] : [];
  });
  const { derived } = await auditBy(planOf([theatre, lane], { data_until: '2026-03-31', ...more }), {
    'theatre.csv': ['ID,Eye,Date,AL,Lens,Ill,Aim,Pred', ...operated].join('\n'),
    'lane.csv': ['ID,Eye,Day,Sph,Cyl,Ax,UDVA,CDVA', ...exams].join('\n'),
  });
  const { membership } = derived;
  const of = (family: Family): readonly string[] => {
    const { steps, code } = membership[family];
    return Array.from(code, (step) => steps[step] as string);
  };
  return { of, membership };
}
