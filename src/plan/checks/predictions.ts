import { plannedFormula } from '../../predictions/primary.js';
import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { entryAt, textAt, textsOf, valueAt } from '../document.js';
import { fault } from '../faults.js';
import { nearest } from '../nearest.js';
import type { BlockView, Survey } from '../survey.js';

const maps = ({ columns, constants }: BlockView, name: string): boolean =>
  [...columns, ...constants].some(({ key }) => key === name);

/** Formulas that the sources predict by; open: a column names them row by row. */
function formulasOf({ sources }: Survey): { names: readonly string[]; open: boolean } {
  const blocks = sources.flatMap((source) => source.blocks);
  const predicting = blocks.filter(({ holds }) => holds === 'prediction');
  const named = predicting.filter((block) => !maps(block, 'formula'));
  const planned = blocks.some((block) => block.holds === 'surgery' && maps(block, 'predicted_se'))
    ? [plannedFormula]
    : [];
  const names = [...planned, ...named.map(({ node }) => textAt(node, 'formula') ?? plannedFormula)];
  return { names: [...new Set(names)], open: named.length < predicting.length };
}

/** A formula said twice of the same rows: once for all of them, once row by row. */
function formulaTwice({ sources }: Survey): readonly Fault[] {
  const blocks = sources.flatMap((source) => source.blocks).filter((block) => maps(block, 'formula'));
  const entries = blocks.flatMap(({ node }) => entryAt(node, 'formula') ?? []);
  return entries.map(({ place }) => fault(place, words.keyTwice('formula')));
}

/** Whether one prediction counts, and is given. */
export function checkPredictions(about: Survey): readonly Fault[] {
  const { root, sources } = about;
  const { names, open } = formulasOf(about);
  const [primary] = textsOf(valueAt(root, 'predictions', 'primary_formula'));
  const known = [...names, ...textsOf(valueAt(root, 'predictions', 'recompute')).map(({ text }) => text)];
  if (primary) {
    const unknown = !open && !known.includes(primary.text);
    const told = words.unknownFormula(primary.text, nearest(primary.text, known), known);
    return [...formulaTwice(about), ...(unknown ? [fault(primary.place, told)] : [])];
  }
  if (names.length < 2 || names.includes(plannedFormula)) return formulaTwice(about);
  const predicting = sources.flatMap(({ blocks }) => blocks).filter(({ holds }) => holds === 'prediction');
  const place = entryAt(root, 'predictions')?.place ?? predicting[1]?.place ?? root.place;
  return [...formulaTwice(about), fault(place, words.formulaOpen(names))];
}
