import { inAudit, plain, quoted, type RuleWords, writeOne } from './finding-words.js';

/** English words: what whole columns and files say. */
export const columnHabits = {
  'column-blank': {
    title: () => 'column without any value',
    sentence: (t) => `the column is blank in all ${t.detail} rows: nothing is told from it`,
    expected: (t) => `the ${t.field} of at least some rows`,
    act: (t) => `${inAudit(t)}name the column that holds it, or take the line out`,
  },
  'refraction-half-blank': {
    title: () => 'blank beside a recorded sphere or cylinder',
    sentence: (t) => `in ${t.detail} of ${t.other} refractions the ${t.field} is blank beside the other number`,
    expected: () => 'what a blank means: nothing to correct, or not recorded',
    act: writeOne,
  },
  'constant-column': {
    title: () => 'one value in every row',
    sentence: (t) => `${quoted(t.value)} stands in all ${t.detail} rows that have one`,
    expected: (t) => `a ${t.field} that differs from eye to eye`,
    act: () => 'check whether the column was filled down, or another one was meant',
  },
  'prediction-is-target': {
    title: () => 'every prediction equals the target',
    sentence: (t) => `in all ${t.detail} rows the predicted refraction is the one aimed at`,
    expected: () => 'what the formula predicted for the lens that was implanted',
    act: (t) => `${inAudit(t)}name the column of the prediction, or take the line out`,
  },
  'cylinder-notation': {
    title: () => 'cylinder with the other sign',
    sentence: (t) => `${quoted(t.value)} has the sign that the other cylinders of the file have not`,
    expected: () => 'one notation in a file',
    act: () => 'check the chart; a sign lost or added changes sphere and axis too',
  },
  'cylinder-notation-file': {
    title: () => 'cylinders with both signs',
    sentence: (t) => `${t.detail} of ${t.other} cylinders have the other sign`,
    expected: () => 'one notation in a file, or two lanes with a file each',
    act: () => 'confirm that both are meant; each is read by its own sign',
  },
  'notation-contradicted': {
    title: () => 'cylinder with another sign than declared',
    sentence: (t) =>
      `${t.detail} of ${t.other} rows write the sign that ${t.audit} says the column has not, the first ${quoted(t.value)}; the sign was passed over`,
    expected: () => 'cylinders of the sign declared, or without one',
    act: (t) =>
      t.settles
        ? `look at one of these eyes: if its sphere and axis go with the sign, ${inAudit(t)}write this line, provided that cylinders without a sign are plus; else correct the export`
        : `look at one of these eyes and correct the export, or the notation (${inAudit(t).trim().replace(/,$/, '')})`,
  },
  'refraction-grid': {
    title: () => 'power between two lenses of the trial set',
    sentence: (t) => `${quoted(t.value)} is no multiple of an eighth of a dioptre`,
    expected: () => 'steps of 0.25 or 0.125 D, as the other rows of the file have',
    act: () => 'check the chart; a slipped digit is likely',
  },
  'refraction-grid-file': {
    title: () => 'powers between the lenses of a trial set',
    sentence: (t) => `${t.detail} of ${t.other} refractions are in finer steps: this looks like an autorefractor`,
    expected: () => 'a refraction by trial lenses, in steps of 0.25 or 0.125 D',
    act: () => 'confirm that the column holds the refraction that the audit is about',
  },
  'label-similar': {
    title: () => 'two spellings of what may be one',
    sentence: (t) => `${quoted(t.value)} are counted apart: ${t.detail} and ${t.other} eyes`,
    expected: (t) => `one spelling of each ${t.field}`,
    act: (t) => `if they are one, declare both under values in ${t.audit}: values: { ${t.field}: { … } }`,
  },
  'lens-axis-not-mapped': {
    title: () => 'toric lenses without a column for their axis',
    sentence: (t) => `${t.detail} eyes have a toric lens, and no column is named for the axis intended`,
    expected: () => 'a column with the axis that the lens was meant for',
    act: (t) => `${inAudit(t)}name it, if it was recorded: lens_axis_intended: …`,
  },
  'lens-axis-not-observed': {
    title: () => 'toric lenses whose axis no file records after surgery',
    sentence: (t) => `${t.detail} eyes have a toric lens, and no examination gives the axis it lies at`,
    expected: () => 'a column with the axis observed',
    act: (t) => `${inAudit(t)}name it, if it was recorded: lens_axis: …`,
  },
  'lens-power-step': plain(
    'lens power between the usual steps',
    'the power is no multiple of a quarter dioptre',
    'steps of 0.25 or 0.5 D',
    'nothing, if such lenses are in use',
  ),
} satisfies Record<string, RuleWords>;
