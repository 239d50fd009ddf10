import { all, doThis, exampleIs, expectedIs, knownAre, nearestIs, oneOf, type Told, told } from './plan-told.js';

/** Faults of keys that name something said elsewhere in the file. */
export const references = {
  unknownVisit: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`‘${name}’ is not a declared visit`, nearestIs(near), knownAre(known)),
  visitTwice: (name: string): Told =>
    told(`the visit ‘${name}’ is declared twice`, doThis('give each visit a name of its own')),
  visitReserved: (name: string): Told =>
    told(`‘${name}’ cannot name a visit here`, doThis('choose another name, such as 1 month')),
  overlap: (name: string, other: string, days: readonly [number, number]): Told =>
    told(
      `the windows of ‘${name}’ and ‘${other}’ overlap on days ${days[0]} to ${days[1]}`,
      doThis('end one window before the next begins'),
    ),
  aimOutside: (from: number, to: number): Told =>
    told('the day aimed at lies outside the window', expectedIs(`a day from ${from} to ${to}`)),
  aimAlone: (): Told => told('an aim needs days', doThis('add days: [from, to], or remove aim')),
  outcomeMissing: (visits: readonly string[]): Told =>
    told(
      'several visits are declared and none is the outcome',
      doThis('say which counts, or several in order'),
      exampleIs(`outcome: ${visits[0]}`),
    ),
  labelTwice: (label: string, name: string): Told =>
    told(`the label ‘${label}’ means ‘${name}’ already`, doThis('keep it in one place')),
  unknownArtwork: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`‘${name}’ is not a profile of artwork`, nearestIs(near), knownAre(known)),
  tooNarrow: (type: string, least: string): Told =>
    told(`charts with letters of ${type} pt cannot be read in this width`, expectedIs(`at least ${least} mm each`)),
  panelNameTaken: (name: string): Told =>
    told(`‘${name}’ names a table or figure already`, doThis('choose another name')),
  figureTwice: (name: string): Told =>
    told(`‘${name}’ stands in a figure of panels already`, doThis('keep it in one place')),
  periodTurned: (): Told => told('the period ends before it begins', doThis('exchange from and to')),
  unknownGroup: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`‘${name}’ is neither a field that fits here nor a covariate`, nearestIs(near), knownAre(known)),
  notMapped: (name: string): Told =>
    told(`no source maps ‘${name}’`, doThis('map its column under sources, or remove it here')),
  byAndDefine: (): Told =>
    told('cohorts are declared twice, by a field and by conditions', doThis('keep by, or define')),
  noCohorts: (key: string): Told =>
    told(`"${key}" needs cohorts`, expectedIs('by: a field, or define: a list of conditions')),
  unknownCohort: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`‘${name}’ is not a cohort`, nearestIs(near), knownAre(known)),
  cohortTwice: (name: string): Told => told(`the cohort ‘${name}’ stands here twice`, doThis('keep one of them')),
  spellingTwice: (spelling: string, value: string): Told =>
    told(`‘${spelling}’ is a spelling of ‘${value}’ already`, doThis('keep it in one place')),
  formulaOpen: (formulas: readonly string[]): Told =>
    told(
      'several formulas predict, and none is the primary one',
      expectedIs(oneOf(formulas)),
      exampleIs(`primary_formula: ${formulas[0]}`),
    ),
  unknownFormula: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`no source gives predictions of ‘${name}’`, nearestIs(near), knownAre(known)),
  unknownMeasure: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`‘${name}’ is not one of our measures`, nearestIs(near), knownAre(known)),
  unknownShare: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`this measure has no statistic ‘${name}’`, nearestIs(near), knownAre(known)),
  notCompared: (name: string, known: readonly string[]): Told =>
    told(`cohorts are not compared by ‘${name}’`, knownAre(known)),
  ratioMargin: (statistic: string): Told =>
    told(`‘${statistic}’ is compared as a ratio`, expectedIs('a ratio above 1'), exampleIs('1.2')),
  notANumberField: (name: string): Told =>
    told(`‘${name}’ is not a number`, expectedIs('a field or covariate that holds numbers')),
  nameFromTitle: (): Told =>
    told(
      'the title gives no name for the folder of the report',
      doThis('add a name'),
      exampleIs('name: cataract-2025'),
    ),
  unknownRule: (name: string, near: string | undefined): Told =>
    told(
      `‘${name}’ is no rule that can be switched off`,
      nearestIs(near),
      expectedIs('a rule as queries.csv names it'),
    ),
  ratesEqual: (): Told => told('the unacceptable share is the acceptable one', doThis('write two shares that differ')),
} as const;

/** Faults of conditions. */
export const ofConditions = {
  operators: (found: readonly string[], known: readonly string[]): Told =>
    told(
      found.length === 0
        ? 'the condition does not say what to compare'
        : `the condition has ${found.length} operators: ${all(found)}`,
      doThis(found.length === 0 ? 'add one operator' : 'keep one, and put the others under and: [{ where: …, … }]'),
      knownAre(known),
    ),
  unknownSubject: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`‘${name}’ is neither a field nor a covariate`, nearestIs(near), knownAre(known)),
  notAskable: (name: string, known: readonly string[]): Told =>
    told(`‘${name}’ cannot be asked about`, knownAre(known)),
  presence: (name: string): Told =>
    told(
      `"is" asks of ‘${name}’ only whether there is a value`,
      expectedIs('present or missing'),
      doThis('use worse_than or better_than'),
    ),
  comparedWith: (written: string, name: string, form: string): Told =>
    told(`‘${written}’ cannot be compared with ‘${name}’`, expectedIs(form)),
  operatorUnfit: (operator: string, name: string, known: readonly string[]): Told =>
    told(`"${operator}" does not fit ‘${name}’`, knownAre(known)),
  atUnfit: (name: string): Told => told(`‘${name}’ does not belong to an examination`, doThis('remove at')),
  atColumns: (): Told =>
    told('"at" has no meaning here: conditions of only look at the row itself', doThis('remove at')),
} as const;
