import { dayOf, weekday } from './calendar.js';
import { type Random, stream } from './random.js';
import { BILATERAL, PATIENTS, PERIOD, type Technique } from './truth.js';

export interface Operation {
  readonly laterality: 'right' | 'left';
  readonly technique: Technique;
  readonly day: number;
  /** Intended spherical equivalent, dioptres. */
  readonly aim: number;
  readonly complication: string;
}

export interface Patient {
  readonly code: string;
  readonly site: 'North' | 'South';
  readonly surgeon: 'S1' | 'S2' | 'S3';
  readonly age: number;
  readonly sex: 'F' | 'M';
  /** A code, `none`, or blank where nobody wrote anything. */
  readonly comorbidity: string;
  /** The lens without cylinder that this patient gets, and whether a toric one is wanted where it would help. */
  readonly lens: 'A1' | 'B2';
  readonly wantsToric: boolean;
  /** Day of the examination before surgery, the same for both eyes. */
  readonly assessed: number;
  /** Day of the biometry, always earlier. */
  readonly measured: number;
  readonly operations: readonly Operation[];
}

/** Shares of eyes; the rest is aimed at plano. */
const AIM_QUARTER = 0.3;
const NEAR_SECOND_EYE = 0.2;
const STAY_SHORT_SIGHTED = 0.03;
const MIXED_TECHNIQUE = 0.12;
const LASER = 0.48;

function anyOf<T>(random: Random, choices: readonly (readonly [T, number])[], otherwise: T): T {
  let left = random.uniform();
  for (const [value, share] of choices) {
    left -= share;
    if (left < 0) return value;
  }
  return otherwise;
}

const COMPLICATIONS: readonly (readonly [string, number])[] = [
  ['PCR', 0.006],
  ['PCR+VL', 0.003],
  ['ACT', 0.007],
  ['IP', 0.005],
];
const COMORBIDITIES: readonly (readonly [string, number])[] = [
  ['AMD', 0.09],
  ['GL', 0.06],
  ['DR', 0.04],
  ['AMD, GL', 0.01],
  ['', 0.03],
];

function otherTechnique(technique: Technique): Technique {
  return technique === 'manual' ? 'laser-assisted' : 'manual';
}

function operationsOf(random: Random, bilateral: boolean): Operation[] {
  const from = dayOf(PERIOD.from) + 7;
  const gap = bilateral ? random.whole(7, 49) : 0;
  const first = weekday(random.whole(from, dayOf(PERIOD.to) - 11 - gap));
  const technique: Technique = random.chance(LASER) ? 'laser-assisted' : 'manual';
  const second = random.chance(MIXED_TECHNIQUE) ? otherTechnique(technique) : technique;
  const near = random.chance(NEAR_SECOND_EYE);
  const stay = random.chance(STAY_SHORT_SIGHTED);
  const distance = () => (stay ? -2.5 : random.chance(AIM_QUARTER) ? -0.25 : 0);
  const firstSide = random.chance(0.5) ? 'right' : 'left';
  const complication = () => anyOf(random, COMPLICATIONS, '');
  const operations: Operation[] = [
    { laterality: firstSide, technique, day: first, aim: distance(), complication: complication() },
  ];
  if (bilateral) {
    const laterality = firstSide === 'right' ? 'left' : 'right';
    const aim = near && !stay ? -1.75 : distance();
    operations.push({ laterality, technique: second, day: weekday(first + gap), aim, complication: complication() });
  }
  return operations;
}

/** Codes in an order that tells nothing about the date of surgery. */
function codes(random: Random): string[] {
  const numbers = Array.from({ length: PATIENTS }, (_, i) => 1001 + 3 * i);
  for (let i = numbers.length - 1; i > 0; i--) {
    const j = random.whole(0, i);
    [numbers[i], numbers[j]] = [numbers[j] as number, numbers[i] as number];
  }
  return numbers.map((number) => `P${number}`);
}

/** The patients of one sample, with their operations. */
export function people(seed: number): Patient[] {
  const random = stream(seed, 'people');
  return codes(random).map((code, i) => {
    const site = random.chance(0.58) ? 'North' : 'South';
    const surgeon = random.chance(0.35) ? 'S2' : site === 'North' ? 'S1' : 'S3';
    const age = Math.round(Math.min(96, Math.max(44, 73 + 8.5 * random.normal())));
    const operations = operationsOf(random, i < BILATERAL);
    const first = Math.min(...operations.map(({ day }) => day));
    const assessed = weekday(first - random.whole(6, 50));
    return {
      code,
      site,
      surgeon,
      age,
      sex: random.chance(0.57) ? 'F' : 'M',
      comorbidity: anyOf(random, COMORBIDITIES, 'none'),
      lens: random.chance(site === 'North' ? 0.75 : 0.45) ? 'A1' : 'B2',
      wantsToric: random.chance(0.7),
      assessed,
      measured: weekday(assessed - random.whole(4, 14)),
      operations,
    };
  });
}
