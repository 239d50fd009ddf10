import { toStep } from './devices.js';
import type { Random } from './random.js';
import type { Technique } from './truth.js';

/** What is measured beside refraction and cornea, as far as anything was written down. No effect is planted in it. */
export interface Further {
  /** Millimetres. */
  readonly lensThickness: number;
  readonly whiteToWhite: number;
  /** Micrometres. */
  readonly cornealThickness: number;
  /** mmHg before surgery, at one month, at three. */
  readonly pressure: readonly [number, number, number];
  /** Endothelial cells/mm² before surgery and at three months. */
  readonly cells: readonly [number, number];
  /** Seconds of ultrasound, its energy in the machine's own unit, minutes of the whole case. */
  readonly ultrasound: number;
  readonly energy: number;
  readonly duration: number;
}

/** Ultrasound that a nucleus takes on average, seconds: a laser has cut it beforehand. */
const ULTRASOUND: Readonly<Record<Technique, number>> = { manual: 44, 'laser-assisted': 31 };

/** Cells that are lost at least: two counts of one cornea differ by less than surgery takes. */
const LEAST_LOSS = 0.01;

function between(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

export function further(random: Random, technique: Technique): Further {
  const pressure = between(15 + 2.6 * random.normal(), 9, 23);
  const cells = between(2450 + 260 * random.normal(), 1500, 3200);
  const loss = between(0.08 + 0.05 * random.normal(), LEAST_LOSS, 0.3);
  const ultrasound = between(ULTRASOUND[technique] + 11 * random.normal(), 8, 110);
  return {
    lensThickness: toStep(between(4.6 + 0.35 * random.normal(), 3.5, 5.8), 0.01),
    whiteToWhite: toStep(between(11.9 + 0.35 * random.normal(), 10.9, 12.9), 0.1),
    cornealThickness: Math.round(between(545 + 32 * random.normal(), 450, 640)),
    pressure: [pressure, pressure - 0.5 + random.normal(), pressure - 1.2 + random.normal()],
    cells: [toStep(cells, 1), toStep(cells * (1 - loss), 1)],
    ultrasound: Math.round(ultrasound),
    energy: toStep(ultrasound * between(0.2 + 0.04 * random.normal(), 0.1, 0.3), 0.1),
    duration: Math.round(between(14 + 3 * random.normal(), 7, 32)),
  };
}
