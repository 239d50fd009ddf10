import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { entriesOf, type MapEntry, type MapNode, valueAt } from '../document.js';
import { fault } from '../faults.js';
import { type Field, type FieldType, fieldNamed, isNumeric } from '../fields.js';
import { writtenNumber } from '../leaves.js';
import type { BlockView, SourceView } from '../survey.js';
import { fieldFaults, sharedFaults } from './columns.js';

const constantTypes: readonly FieldType[] = ['number', 'clock-or-degrees', 'code', 'category', 'laterality', 'yes-no'];
const blankTypes: readonly FieldType[] = ['number', 'clock-or-degrees', 'code', 'codes', 'category', 'yes-no'];

/** The form that a value of this field has, where the text does not have it. */
export function wrongForm(field: Field, text: string): string | undefined {
  if (isNumeric(field)) return writtenNumber(text) === undefined ? words.expected.plainNumber : undefined;
  return field.values && !field.values.includes(text) ? words.expected.oneOf(field.values) : undefined;
}

function valueFault({ key, value }: MapEntry): readonly Fault[] {
  const field = fieldNamed(key);
  if (!field || value.kind !== 'text') return [];
  const form = wrongForm(field, value.text);
  return form === undefined ? [] : [fault(value.place, words.valueOfField(value.text, key, form))];
}

function constantFault(entry: MapEntry): readonly Fault[] {
  const field = fieldNamed(entry.key);
  if (field && (!constantTypes.includes(field.type) || field.required.length > 0 || field.name === 'patient')) {
    return [fault(entry.place, words.notConstant(entry.key))];
  }
  return valueFault(entry);
}

/** What a blank power is said to be where it is no zero: otherwise nobody knows which of the two was meant. */
const notRecorded = 'missing';

function saysMissing({ key, value }: MapEntry): boolean {
  return (key === 'sphere' || key === 'cylinder') && value.kind === 'text' && value.text === notRecorded;
}

function blankFault(entry: MapEntry, blocks: readonly BlockView[]): readonly Fault[] {
  const field = fieldNamed(entry.key);
  if (!field || !blocks.some(({ columns }) => columns.some(({ key }) => key === entry.key))) {
    return [fault(entry.place, words.notMappedHere(entry.key))];
  }
  if (!blankTypes.includes(field.type) || field.name === 'patient')
    return [fault(entry.place, words.notBlank(entry.key))];
  return saysMissing(entry) ? [] : valueFault(entry);
}

/** A field that is a column and a constant of the same rows. */
function givenTwice({ node }: BlockView): readonly Fault[] {
  const columns = entriesOf(valueAt(node, 'columns'));
  const twice = entriesOf(valueAt(node, 'constants')).filter(({ key }) => columns.some((column) => column.key === key));
  return twice.map(({ key, place }) => fault(place, words.keyTwice(key)));
}

/** What is wrong with constants and the meaning of blanks. */
export function constantFaults(source: SourceView): readonly Fault[] {
  const { node, blocks, hasBlocks } = source;
  const own = blocks.flatMap((block) => {
    const constants = entriesOf(valueAt(block.node, 'constants'));
    const blanks = entriesOf(valueAt(block.node, 'blank_means'));
    return [
      ...fieldFaults(constants, block.holds),
      ...constants.flatMap(constantFault),
      ...blanks.flatMap((entry) => blankFault(entry, [block])),
      ...givenTwice(block),
    ];
  });
  if (!hasBlocks) return own;
  const shared = entriesOf(valueAt(node as MapNode, 'constants'));
  const blanks = entriesOf(valueAt(node, 'blank_means')).flatMap((entry) => blankFault(entry, blocks));
  return [...own, ...sharedFaults(shared, source), ...shared.flatMap(constantFault), ...blanks];
}
