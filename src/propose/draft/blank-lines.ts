import { propose as words } from '../../words/en/propose.js';
import type { ArrangedBlock } from '../arrange.js';
import { type Answers, type Choice, settled } from '../choices.js';
import { blankComplicationChoice, blankLensCylinders, blankPowerChoices } from '../evidence/blanks.js';
import type { Placed, RecognisedFile } from '../placed.js';
import { type Doubt, doubt } from './doubt.js';
import { choiceDoubt } from './field-forms.js';
import { headerName } from './header-name.js';
import type { YamlLine } from './lines.js';

const inBlock = ({ columns }: ArrangedBlock, { index }: Placed): boolean => columns.some((one) => one.index === index);

const named = (doubts: readonly Doubt[], { file }: RecognisedFile, index: number): readonly Doubt[] =>
  doubts.map((one) => ({ ...one, header: headerName(file, index) }));

/** Choices about blank cells of a block. */
function blankChoices(of: RecognisedFile, block: ArrangedBlock): readonly { column: Placed; choice: Choice }[] {
  const powers = blankPowerChoices(of).filter(({ column }) => inBlock(block, column));
  const complications = block.columns.flatMap((column) => {
    const choice = column.term === 'complication' ? blankComplicationChoice(of, column) : undefined;
    return choice ? [{ column, choice }] : [];
  });
  return [...powers, ...complications];
}

/** Lenses without a cylinder, where they have no axis either. */
function lensLines(of: RecognisedFile, { columns }: ArrangedBlock, depth: number): readonly YamlLine[] {
  const cylinder = columns.find(({ term }) => term === 'lens_cylinder');
  const blank = cylinder ? blankLensCylinders(of) : 0;
  if (!cylinder || blank === 0) return [];
  const doubts = named([doubt('blank lens cylinder', words.doubts.blankLensCylinder(blank))], of, cylinder.index);
  return [{ depth, text: 'lens_cylinder: 0', doubts }];
}

/** What blank cells of a block stand for, where that is known or likely; what is open stands as a comment. */
export function blankLines(
  of: RecognisedFile,
  block: ArrangedBlock,
  answers: Answers,
  depth: number,
): readonly YamlLine[] {
  const chosen = blankChoices(of, block).map(({ column, choice }): YamlLine => {
    const taken = settled(choice, answers);
    const doubts = named(choiceDoubt(choice, taken, answers), of, column.index);
    const off = taken === undefined || taken === 'missing';
    return { depth: depth + 1, text: `${column.term}: ${choice.options[0]?.value ?? ''}`, doubts, off };
  });
  const lines = [...chosen, ...lensLines(of, block, depth + 1)];
  if (lines.length === 0) return [];
  return [{ depth, text: 'blank_means:', off: lines.every(({ off }) => off) }, ...lines];
}
