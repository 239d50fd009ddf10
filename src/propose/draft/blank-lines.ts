import { propose as words } from '../../words/en/propose.js';
import type { ArrangedBlock } from '../arrange.js';
import type { Answers } from '../choices.js';
import { settled } from '../choices.js';
import { blankComplicationChoice, blankLensCylinders, blankPowerChoices } from '../evidence/blanks.js';
import type { Placed, RecognisedFile } from '../placed.js';
import { choiceDoubt } from './column-line.js';
import { type Doubt, doubt } from './doubt.js';
import { headerName } from './header-name.js';
import type { YamlLine } from './lines.js';

const inBlock = ({ columns }: ArrangedBlock, { index }: Placed): boolean => columns.some((one) => one.index === index);

const named = (doubts: readonly Doubt[], { file }: RecognisedFile, index: number): readonly Doubt[] =>
  doubts.map((one) => ({ ...one, header: headerName(file, index) }));

/** What blank cells of a block stand for, where that is known or likely; what is open stands as a comment. */
export function blankLines(
  of: RecognisedFile,
  block: ArrangedBlock,
  answers: Answers,
  depth: number,
): readonly YamlLine[] {
  const powers = blankPowerChoices(of).filter(({ column }) => inBlock(block, column));
  const complication = block.columns.find(({ term }) => term === 'complication');
  const ofComplication = complication && blankComplicationChoice(of, complication);
  const all = [
    ...powers,
    ...(complication && ofComplication ? [{ column: complication, choice: ofComplication }] : []),
  ];
  const lines = all.map(({ column, choice }): YamlLine => {
    const taken = settled(choice, answers);
    const value = choice.options[0]?.value ?? '';
    const off = taken === undefined || taken === 'missing';
    return {
      depth: depth + 1,
      text: `${column.term}: ${value}`,
      doubts: named(choiceDoubt(choice, taken, answers), of, column.index),
      off,
    };
  });
  const lenses = block.columns.some(({ term }) => term === 'lens_cylinder') ? blankLensCylinders(of) : 0;
  if (lenses > 0) {
    const cylinder = block.columns.find(({ term }) => term === 'lens_cylinder');
    const doubts = named(
      [doubt('blank lens cylinder', words.doubts.blankLensCylinder(lenses))],
      of,
      cylinder?.index ?? -1,
    );
    lines.push({ depth: depth + 1, text: 'lens_cylinder: 0', doubts });
  }
  if (lines.length === 0) return [];
  return [{ depth, text: 'blank_means:', off: lines.every(({ off }) => off) }, ...lines];
}
