import { axisText } from '../../format/axis.js';
import { fixed, signed } from '../../format/number.js';
import { inAudit, plain, type RuleWords } from './finding-words.js';

const dioptres = (value: number): string => `${signed(value, 2)} D`;
const power = (value: number): string => `${fixed(value, 2)} D`;
const length = (value: number): string => `${fixed(value, 2)} mm`;
const logMAR = (value: number): string => `logMAR ${fixed(value, 2)}`;

const sides = 'check that right and left, and the patient, were not exchanged; measure again where that is possible';

/** English words: values beside one another. */
export const comparisons = {
  'prediction-far': {
    title: (t) =>
      `prediction over ${t.threshold(t.severity === 'set aside' ? 'prediction_possible' : 'prediction_usual')} D from the target`,
    sentence: (t) => `${dioptres(t.other)} was predicted where ${dioptres(t.detail)} was aimed at`,
    expected: (t) => `a prediction at most ${t.threshold('prediction_usual')} D from the target`,
    act: () => 'check the plan of the lens; a sign or a decimal mark may have slipped',
  },
  'corrected-worse': {
    title: () => 'corrected acuity worse than uncorrected',
    sentence: (t) => `${logMAR(t.detail)} with correction and ${logMAR(t.other)} without`,
    expected: (t) => `with correction at most ${t.threshold('corrected_worse')} logMAR worse than without`,
    act: () => 'check the chart; the two acuities may have been exchanged',
  },
  'acuity-columns-exchanged': {
    title: () => 'the two columns of acuity look exchanged',
    sentence: (t) => `in ${t.detail} of ${t.other} rows the acuity is worse with correction than without`,
    expected: () => 'the corrected acuity in the column named for it',
    act: (t) => `${inAudit(t)}check which column is udva and which cdva`,
  },
  'acuity-worse-after': {
    title: () => 'corrected acuity worse after surgery',
    sentence: (t) => `${logMAR(t.detail)} before surgery and ${logMAR(t.other)} after`,
    expected: (t) => `a loss of less than ${t.threshold('corrected_loss')} logMAR`,
    act: () => 'check the chart; confirm it if the eye did lose vision',
  },
  'endothelium-rises': {
    title: () => 'more endothelial cells after surgery',
    sentence: (t) => `${fixed(t.detail, 0)} cells/mm² before surgery and ${fixed(t.other, 0)} after`,
    expected: (t) => `no more than a rise by a share of ${t.threshold('endothelium_rise')}`,
    act: () => 'check that the counts, and the eyes, were not exchanged',
  },
  'axial-length-sides': {
    title: () => 'axial length differs between the eyes',
    sentence: (t) => `${length(t.detail)} here and ${length(t.other)} in the fellow eye`,
    expected: (t) =>
      `at most ${t.threshold(t.severity === 'note' ? 'axial_length_sides_noted' : 'axial_length_sides')} mm apart`,
    act: () => sides,
  },
  'keratometry-sides': {
    title: () => 'keratometry differs between the eyes',
    sentence: (t) => `a mean of ${power(t.detail)} here and ${power(t.other)} in the fellow eye`,
    expected: (t) =>
      `at most ${t.threshold(t.severity === 'note' ? 'keratometry_sides_noted' : 'keratometry_sides')} D apart`,
    act: () => sides,
  },
  'sides-copied': plain(
    'both eyes with the same biometry',
    'length, keratometry and chamber are those of the fellow eye to the last digit',
    'the biometry of this eye',
    'check the device; the values of one eye may have been copied to the other',
  ),
  'keratometry-remeasure': {
    title: () => 'keratometry that is commonly measured again',
    sentence: (t) => `${t.field === 'k_cylinder' ? 'a corneal cylinder' : 'a mean'} of ${power(t.detail)}`,
    expected: (t) => `most lie in ${t.limits}`,
    act: () => 'nothing, if it was repeated',
  },
  'keratometry-meridians': {
    title: () => 'meridians not at right angles',
    sentence: (t) => `${axisText(t.detail)} and ${axisText(t.other)}`,
    expected: (t) => `90 degrees apart, give or take ${t.threshold('meridians_apart')}`,
    act: () => 'check the axes; confirm it if the cornea is irregular',
  },
  'keratometry-carried-forward': plain(
    'keratometry after surgery is that of before',
    'both powers and the axis are those of before surgery to the last digit',
    'a measurement of its own after surgery',
    'check whether the cornea was measured again; the values may have been carried forward',
  ),
  'keratometry-exchanged': {
    title: () => 'steep meridian turned by a right angle',
    sentence: (t) => `the steep meridian was ${axisText(t.detail)} before surgery and is ${axisText(t.other)} after`,
    expected: () => 'a marked astigmatism that keeps its meridian',
    act: () => 'check which axis belongs to which power; the two may have been exchanged',
  },
  'fellow-eye-fits': {
    title: () => 'biometry that fits the fellow eye better',
    sentence: (t) =>
      t.field === 'axial_length'
        ? `another file gives ${length(t.detail)} here, and this length to the fellow eye`
        : `${power(t.detail)} from what else is known of this eye, ${power(t.other)} from the fellow eye`,
    expected: () => 'the measurement of this eye',
    act: () => 'check that right and left were not exchanged',
  },
  'other-patient-fits': {
    title: () => 'biometry that fits another patient better',
    sentence: (t) => {
      const own =
        t.field === 'axial_length'
          ? `another file gives ${length(t.detail)} here`
          : `${power(t.detail)} from what else is known of this eye`;
      return `${own}, and this value fits the patient of row ${t.other}, whose own fits here`;
    },
    expected: () => 'the measurement of this patient',
    act: () => 'check that the two patients were not exchanged',
  },
  'lens-power-biometry': {
    title: () => 'lens power does not fit the biometry',
    sentence: (t) => `a lens of ${power(t.detail)} where length and keratometry ask for about ${power(t.other)}`,
    expected: (t) =>
      `within ${t.threshold('lens_power')} D of a simple regression, ${t.threshold('lens_power_extreme')} D in short and long eyes`,
    act: () => 'check power, length and keratometry; one of them, or the patient, may be mistaken',
  },
  'refraction-equivalent': {
    title: () => 'spherical equivalent is not that of sphere and cylinder',
    sentence: (t) => `the export says ${dioptres(t.detail)}, sphere and cylinder make ${dioptres(t.other)}`,
    expected: (t) => `sphere + half the cylinder, within ${t.threshold('equivalent')} D`,
    act: () => 'check the chart; one of the three is mistyped',
  },
  'refraction-sign-slip': {
    title: () => 'two visits with opposite refraction',
    sentence: (t) => `${dioptres(t.detail)} here and ${dioptres(t.other)} at the other visit`,
    expected: () => 'refractions of one sign at both visits',
    act: () => 'check the chart; a sign is likely lost at one of them',
  },
  'refraction-acuity': {
    title: () => 'refraction does not fit the uncorrected acuity',
    sentence: (t) => `an equivalent of ${dioptres(t.detail)} and ${logMAR(t.other)} without correction`,
    expected: () => 'an eye out of focus that reads less without correction, an eye in focus that reads as much',
    act: () => 'check the chart; a sign, a column or a row may have slipped',
  },
  'refraction-surprise': {
    title: (t) =>
      `achieved over ${t.threshold(t.severity === 'note' ? 'surprise_noted' : 'surprise')} D from predicted`,
    sentence: (t) => {
      const missed = `achieved − predicted is ${dioptres(t.detail)}`;
      return Number.isNaN(t.other)
        ? missed
        : `${missed}; with the opposite ${t.field} sign it would be ${dioptres(t.other)}`;
    },
    expected: (t) => `within ${t.threshold('surprise_noted')} D`,
    act: () => 'check refraction, prediction and lens; confirm it if the eye did end there',
  },
} satisfies Record<string, RuleWords>;
