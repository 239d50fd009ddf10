import type { Fault, Holds } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { entriesOf, entryAt, type MapEntry, type Place, valueAt } from '../document.js';
import { fault, isAbsent } from '../faults.js';
import { alternatives, fieldNamed, fields, fieldsOn } from '../fields.js';
import { nearest } from '../nearest.js';
import type { BlockView, SourceView } from '../survey.js';

const namesOn = (holds: Holds | undefined): readonly string[] =>
  (holds ? fieldsOn(holds) : fields).map(({ name }) => name);

/** A field that is none, or that these rows do not carry. */
export function fieldFaults(entries: readonly MapEntry[], holds: Holds | undefined): readonly Fault[] {
  const known = namesOn(holds);
  return entries.flatMap(({ key, place }) => {
    const field = fieldNamed(key);
    if (!field) return [fault(place, words.unknownField(key, nearest(key, known), known))];
    if (!holds || field.holds.includes(holds)) return [];
    return [fault(place, words.unfitField(key, holds, field.holds, known))];
  });
}

/** A field beside blocks of which none can carry it. */
export function sharedFaults(entries: readonly MapEntry[], { blocks }: SourceView): readonly Fault[] {
  const kinds = blocks.flatMap(({ holds }) => holds ?? []);
  const unfit = entries.flatMap(({ key, place }) => {
    const fits = fieldNamed(key)?.holds;
    const held = !fits || kinds.length < blocks.length || kinds.some((holds) => fits.includes(holds));
    return held ? [] : [fault(place, words.noBlockFor(key, fits))];
  });
  return [...fieldFaults(entries, undefined), ...unfit];
}

/** Where a fault of a block's columns as a whole is told. */
const columnsPlace = ({ node, place }: BlockView): Place => entryAt(node, 'columns')?.place ?? place;

/** Columns and constants of a block by name. */
const given = ({ columns, constants }: BlockView): readonly MapEntry[] => [...columns, ...constants];

const has = (block: BlockView, name: string): boolean => given(block).some(({ key }) => key === name);

/** Fields without which a kind of row says nothing. */
const rowNeeds = (holds: Holds): readonly string[] =>
  holds === 'prediction' ? ['patient', 'eye', 'predicted_se'] : ['patient', 'eye'];

/** Whether a field is missing from a block and what it shares, and not just misspelled there. */
function lacks(block: BlockView, source: SourceView, name: string): boolean {
  const known = namesOn(block.holds);
  const places = [block.node, source.node].flatMap((node) => [valueAt(node, 'columns'), valueAt(node, 'constants')]);
  return !has(block, name) && places.every((node) => isAbsent(node, name, known));
}

function missingFields(block: BlockView, source: SourceView): readonly Fault[] {
  if (!block.holds) return [];
  const missing = rowNeeds(block.holds).filter((name) => lacks(block, source, name));
  return missing.map((name) => fault(columnsPlace(block), words.keyMissing(name)));
}

function missingTime(block: BlockView, source: SourceView): readonly Fault[] {
  const timed =
    !isAbsent(block.node, 'visit', ['visit']) ||
    ['exam_date', 'days', 'visit'].some((name) => !lacks(block, source, name));
  return block.holds !== 'exam' || timed ? [] : [fault(columnsPlace(block), words.noTime())];
}

function missingPartners(block: BlockView): readonly Fault[] {
  return given(block).flatMap(({ key, place }) => {
    const wanted = (fieldNamed(key)?.needs ?? []).filter((name) => !has(block, name));
    return wanted.length > 0 ? [fault(place, words.needs(key, wanted))] : [];
  });
}

/** Two forms of one measurement: told where the second is written. */
function competing(block: BlockView): readonly Fault[] {
  return alternatives.flatMap((forms) => {
    const found = forms
      .map((names) => given(block).find(({ key }) => names.includes(key)))
      .filter((one) => one !== undefined);
    const [first, second] = found.toSorted((a, b) => a.place.line - b.place.line || a.place.column - b.place.column);
    return first && second ? [fault(second.place, words.alternatives(second.key, first.key))] : [];
  });
}

/** What is wrong with which fields a source maps, block by block. */
export function columnFaults(source: SourceView, blocks: readonly BlockView[]): readonly Fault[] {
  const own = blocks.flatMap((block) => fieldFaults(entriesOf(valueAt(block.node, 'columns')), block.holds));
  const shared = source.hasBlocks ? sharedFaults(entriesOf(valueAt(source.node, 'columns')), source) : [];
  const whole = blocks.flatMap((block) => [
    ...missingFields(block, source),
    ...missingTime(block, source),
    ...missingPartners(block),
    ...competing(block),
  ]);
  return [...own, ...shared, ...whole];
}
