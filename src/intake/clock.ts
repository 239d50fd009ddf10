import type { Degree } from '../units.js';
import type { Laterality } from './laterality.js';
import { plainSigns } from './signs.js';

/** From where the dial was read: facing the patient, or from one of the surgeon's seats. */
export type ClockView = 'facing' | 'surgeon-superior' | 'surgeon-temporal';

/**
 * Hours on a dial as people type them: `10`, `10:10`, `10h30`, `10.5`, `10 o'clock`.
 *
 * @param text  one cell as written
 * @returns hours from 0 to below 12, 12 o'clock being 0; undefined where the text is no time on the dial. Of decimal
 *          fractions only halves are read: 10.10 may mean ten past ten
 * @source spellings in common practice, no source
 * @example parseClock('10:10') // 10.1667
 */
export function parseClock(text: string): number | undefined {
  const plain = plainSigns(text).replace(/ ?(?:o['’ ]?clock|uhr|hours?|heures?|hrs?|h)\.?$/i, '');
  const [, hours, minutes, half] = /^(\d{1,2})(?:[:h](\d{2})|[.,]([05])0?)?$/i.exec(plain) ?? [];
  if (hours === undefined || Number(hours) > 12 || Number(minutes ?? 0) > 59) return undefined;
  return (Number(hours) % 12) + (minutes === undefined ? Number(half ?? 0) / 10 : Number(minutes) / 60);
}

/**
 * Position on the limbus of an hour on the dial, in the convention of axes: counter-clockwise as the observer faces the
 * patient, 0° at the observer's right, for both eyes. Facing the patient 3 o'clock is 0, 12 is 90, 9 is 180.
 *
 * @param hours  0 to 12; 10:10 is 10 + 10/60
 * @param view   from where the dial was read
 * @param eye    matters for the temporal seat only
 * @returns degrees in [0, 360): a position, of which the half-turn matters; its meridian is `wrap180` of it
 * @source geometry: one hour is 30°, a seat turns the dial so that it lies below (common practice, no source)
 * @example clockPosition(4 + 10 / 60, 'surgeon-superior', 'right') // 145
 */
export function clockPosition(hours: number, view: ClockView, eye: Laterality): Degree {
  return within360(90 - 30 * hours + seat(view, eye) - 270);
}

/**
 * The hour on the dial of a position on the limbus, as it is read from a seat, to the nearest minute of the dial.
 *
 * @param position  degrees, counter-clockwise as the observer faces the patient
 * @param view      from where the dial is read
 * @param eye       matters for the temporal seat only
 * @returns text such as '10:10'
 * @source geometry, as `clockPosition`
 * @example clockText(145, 'facing', 'right') // '10:10'
 */
export function clockText(position: Degree, view: ClockView, eye: Laterality): string {
  const turned = position - seat(view, eye) + 270;
  const minutes = Math.round(2 * within360(90 - turned)) % 720;
  const hours = Math.floor(minutes / 60);
  return `${hours === 0 ? 12 : hours}:${String(minutes % 60).padStart(2, '0')}`;
}

/** Where the observer sits, as a position on the limbus; facing the patient is below it, at 270°. */
function seat(view: ClockView, eye: Laterality): Degree {
  if (view === 'facing') return 270;
  if (view === 'surgeon-superior') return 90;
  return eye === 'right' ? 180 : 0;
}

function within360(angle: Degree): Degree {
  return ((angle % 360) + 360) % 360;
}
