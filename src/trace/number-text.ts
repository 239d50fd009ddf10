import { axisText } from '../format/axis.js';
import { fixed } from '../format/number.js';
import { axisOf } from '../optics/axis.js';
import { vectorMagnitude } from '../optics/double-angle.js';
import type { Measure } from '../records/measure.js';
import type { Words } from '../words/index.js';

type TraceWords = Words['trace'];

const decimals: Readonly<Record<Measure['unit'], number>> = {
  D: 3,
  deg: 1,
  logMAR: 3,
  mm: 2,
  '%': 1,
  years: 0,
  months: 1,
  days: 0,
  min: 1,
  s: 1,
  'cells/mm²': 0,
  share: 0,
  '': 3,
};

/** A number as it stands in a working: three decimals, without the zeros that say nothing. */
export function plainNumber(value: number, words: TraceWords): string {
  if (Number.isNaN(value)) return words.none;
  if (!Number.isFinite(value)) return words.beyondChart;
  return fixed(value, 3).replace(/\.?0+$/, '');
}

/** A value with its unit; what has none says so. A meridian is a whole degree in (0, 180], a turn has a sign. */
export function valueWithUnit(value: number, { unit, better }: Measure, words: TraceWords): string {
  if (Number.isNaN(value)) return words.missing;
  if (!Number.isFinite(value)) return words.beyondChart;
  if (unit === 'deg') return `${better === 'nearer zero' ? fixed(value, 1) : axisText(value)}°`;
  if (unit === '') return plainNumber(value, words);
  return unit === 'share' ? words.property(value === 1) : `${fixed(value, decimals[unit])} ${unit}`;
}

/** A vector whose angle is counted from the incision: as a meridian of the eye it would mislead. */
const incisionFrame = 'induced_in_incision_frame';

/** A vector as magnitude at its steep meridian, as surgeons write it; in the incision frame its two components. */
export function vectorText({ vector }: Measure, x: number, y: number, words: TraceWords): string {
  if (vector?.name === incisionFrame) return words.inFrame(fixed(x, 3), fixed(y, 3));
  const meridian = axisOf(x, y);
  const size = `${fixed(vectorMagnitude(x, y), 3)} D`;
  return Number.isNaN(meridian) ? size : `${size} @ ${axisText(meridian)}°`;
}

/** A refraction as it is written: '−0.25 +0.50 × 10'; without a cylinder the sphere alone. */
export function refractionText(sphere: number, cylinder: number, axis: number, words: TraceWords): string {
  const sign = cylinder > 0 ? '+' : '';
  const power = `${fixed(sphere, 2)} ${sign}${fixed(cylinder, 2)}`;
  return Number.isNaN(axis) ? `${power} (${words.noAxis})` : `${power} × ${axisText(axis)}`;
}

/** An input by its name, as readers see it: 'sphere@outcome' is 'sphere (outcome)'. */
export function inputLabel(input: string, words: TraceWords): string {
  const [name = '', at] = input.split('@');
  const when: Readonly<Record<string, string>> = words.at;
  return at === undefined ? measureLabel(name) : `${measureLabel(name)} (${when[at] ?? at})`;
}

/** A measure by its name in eyes.csv and results.csv, in words. */
export function measureLabel(name: string): string {
  const spaced = name.replace(/([a-z])([A-Z])/g, (_, end: string, start: string) => `${end} ${start.toLowerCase()}`);
  return spaced.replaceAll('_', ' ').replaceAll(':', ': ').replaceAll('.', ', ');
}
