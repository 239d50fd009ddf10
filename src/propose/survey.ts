import type { DateOrder } from '../intake/date.js';
import { type ArrangedBlock, type ArrangedFile, arrange } from './arrange.js';
import type { Answers, Choice } from './choices.js';
import { settled } from './choices.js';
import { type Visits, visitsOf } from './draft/visits.js';
import { type AcuityReading, acuityReading } from './evidence/acuity-scale.js';
import { blankComplicationChoice, blankPowerChoices } from './evidence/blanks.js';
import { dateOrderChoice } from './evidence/date-order.js';
import { isUnsigned, notationChoice } from './evidence/notation.js';
import { operatedChoice } from './evidence/operated.js';
import { primaryFormulaChoice } from './evidence/primary-formula.js';
import { withoutRepeats } from './evidence/repeated.js';
import { type SurveyedFile, surveyed } from './evidence/surveyed.js';
import { clockChoice, isClock, residualChoice } from './evidence/unsaid.js';
import { eyesOf } from './eyes-of-file.js';
import { auditView } from './operations.js';
import type { RecognisedFile } from './placed.js';

/** A file with everything that is known of it, and everything that is in doubt. */
export interface KnownFile extends SurveyedFile {
  arranged: ArrangedFile;
  acuity: AcuityReading;
  notation: Choice | undefined;
  dateOrder: Choice | undefined;
  operated: Choice | undefined;
}

/** All files together, under the answers given so far. */
export interface Known {
  files: readonly KnownFile[];
  visits: Visits;
  primaryFormula: Choice | undefined;
}

/** The file with the order of its dates, where an answer or the data settle it. */
function withDateOrder(of: RecognisedFile, choice: Choice | undefined, answers: Answers): RecognisedFile {
  const order = choice && settled(choice, answers);
  return order === undefined ? of : { ...of, file: { ...of.file, dateOrder: order as DateOrder } };
}

const has = (of: RecognisedFile, type: 'cylinder' | 'refraction') => of.placed.filter(({ term }) => term === type);

function notationOf(one: SurveyedFile, all: readonly SurveyedFile[]): Choice | undefined {
  const columns = [...has(one.of, 'cylinder'), ...has(one.of, 'refraction')];
  const open = columns.filter(
    (column) => isUnsigned(one.of, column) && one.of.headers[column.index]?.sign === undefined,
  );
  return open.length > 0 ? notationChoice(one, open, all) : undefined;
}

/** Rows without an operation as operations, where that was chosen, with their examination at the visit chosen. */
function withOperations(arranged: ArrangedFile, operated: Choice | undefined, answers: Answers): ArrangedFile {
  const chosen = operated && settled(operated, answers);
  if (chosen !== 'outcome' && chosen !== 'before') return arranged;
  const columns = arranged.blocks.filter(({ holds }) => holds === 'eye').flatMap((block) => block.columns);
  const surgery: ArrangedBlock = {
    holds: 'surgery',
    side: undefined,
    visit: undefined,
    assumed: true,
    open: false,
    only: undefined,
    formula: undefined,
    columns,
  };
  const visit = { name: chosen, days: undefined };
  const others = arranged.blocks.filter(({ holds }) => holds !== 'eye');
  return {
    ...arranged,
    operates: true,
    blocks: [surgery, ...others.map((block) => (block.holds === 'exam' ? { ...block, visit } : block))],
  };
}

/**
 * Puts together what all files know: which eye a row is of, which rows are operations, which visits there are. Whatever
 * stays in doubt is a choice, with its evidence.
 *
 * @param recognised  every file by itself
 * @param answers     to choices, so far
 */
export function known(recognised: readonly RecognisedFile[], answers: Answers): Known {
  const others = (of: RecognisedFile) => recognised.filter((one) => one !== of);
  const dated = recognised.map((of) => {
    const choice = of.file.dateOrder === undefined ? dateOrderChoice(of, others(of)) : undefined;
    return { choice, of: withDateOrder(of, choice, answers) };
  });
  const all = dated.map(({ of }) => of);
  const eyed = all.map((of) =>
    surveyed(
      of,
      eyesOf(
        of,
        all.filter((one) => one !== of),
        answers,
      ),
    ),
  );
  const distinct = withoutRepeats(eyed);
  const audit = auditView(all);
  const arranged = distinct.map((one) => ({ ...one, arranged: arrange(one.of, audit) }));
  const files = arranged.map((one, at) => {
    const operated = operatedChoice(one, audit);
    return {
      ...one,
      arranged: withOperations(one.arranged, operated, answers),
      acuity: acuityReading(one.of),
      notation: notationOf(one, eyed),
      dateOrder: dated[at]?.choice,
      operated,
    };
  });
  const usable = files.filter((one) => !one.arranged.lacks);
  return { files, visits: visitsOf(usable), primaryFormula: primaryFormulaChoice(usable.map((one) => one.arranged)) };
}

/** Choices of one file, in the order in which they are asked. */
function choicesOfFile({ of, arranged, eyes, acuity, notation, dateOrder, operated }: KnownFile): readonly Choice[] {
  if (arranged.lacks) return [];
  const columns = arranged.blocks.flatMap((block) => block.columns);
  const used = (term: string) => columns.filter((one) => one.term === term);
  const complications = used('complication').map((column) => blankComplicationChoice(of, column));
  const blanks = blankPowerChoices(of).filter(({ column }) => columns.some(({ index }) => index === column.index));
  const clocks = used('incision_axis')
    .filter((column) => isClock(of, column))
    .map((column) => clockChoice(of, column));
  const residuals = used('predicted_cylinder').map((column) => residualChoice(of, column));
  const all = [
    dateOrder,
    eyes.choice,
    operated,
    notation,
    acuity.choice,
    ...blanks.map(({ choice }) => choice),
    ...complications,
    ...clocks,
    ...residuals,
  ];
  return all.filter((choice) => choice !== undefined);
}

/** Every choice that is in doubt, in the order in which they are asked. */
export function choicesOf({ files, primaryFormula }: Known): readonly Choice[] {
  return [...files.flatMap(choicesOfFile), ...(primaryFormula ? [primaryFormula] : [])];
}
