import { fixed } from '../../format/number.js';
import { quoted, type RuleWords, type Telling } from './finding-words.js';

const checkChart = 'check the chart; correct the export if this is a slip';

const lostMark = 'a lost decimal mark is likely';
const slippedDigit = 'a slipped digit is likely';
const unitOrMark = 'a slip of decimal mark or unit is likely';

const article = (what: string): string => `${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what}`;

/** A rule on single values: what is impossible, what is unusual. */
function range(what: string, slip: string): RuleWords {
  const outside = (t: Telling): boolean => t.severity === 'set aside';
  return {
    title: (t) => (outside(t) ? `${what} outside ${t.limits}` : `unusual ${what}`),
    sentence: (t) => (outside(t) ? `${quoted(t.value)} cannot be ${article(what)}` : `${quoted(t.value)} is unusual`),
    expected: (t) => (outside(t) ? t.limits : `most lie in ${t.limits}`),
    act: (t) => (outside(t) ? `check the chart; ${slip}` : checkChart),
  };
}

const vertex = range('vertex distance', slippedDigit);

/** English words: rules on single values. */
export const ranges = {
  'sphere-range': range('sphere', lostMark),
  'cylinder-range': range('cylinder', lostMark),
  'axis-range': range('axis', slippedDigit),
  'keratometry-range': range('keratometry', unitOrMark),
  'axial-length-range': range('axial length', 'a slip of the decimal mark is likely'),
  'acuity-range': range('acuity', 'a slip of decimal mark or scale is likely'),
  'chamber-depth-range': range('depth of the anterior chamber', lostMark),
  'lens-thickness-range': range('thickness of the lens', lostMark),
  'white-to-white-range': range('corneal diameter', lostMark),
  'endothelium-range': range('count of endothelial cells', slippedDigit),
  'corneal-thickness-range': range('thickness of the cornea', unitOrMark),
  'pressure-range': range('pressure of the eye', slippedDigit),
  'vertex-range': {
    ...vertex,
    sentence: (t) =>
      t.other > 0
        ? `${quoted(t.value)} looks like metres: ${fixed(t.other, 0)} mm`
        : `${quoted(t.value)} cannot be a vertex distance`,
    act: (t) => (t.other > 0 ? 'write the distance in millimetres' : vertex.act(t)),
  },
  'lane-range': range('distance of the chart', 'a distance in feet or centimetres is likely'),
  'age-range': range('age', slippedDigit),
  'incision-width-range': range('width of the incision', lostMark),
  'lens-power-range': range('lens power', lostMark),
  'lens-cylinder-range': range('cylinder of the lens', 'a lost decimal mark, or a minus, is likely'),
  'time-range': range('time', 'a minus has slipped in'),
  'energy-range': range('energy', 'a minus has slipped in'),
} satisfies Record<string, RuleWords>;
