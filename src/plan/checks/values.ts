import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { type DocumentNode, entriesOf, type MapEntry, textsOf, valueAt } from '../document.js';
import { fault } from '../faults.js';
import { type FieldType, fieldNamed, fields } from '../fields.js';
import { nearest } from '../nearest.js';
import type { Survey } from '../survey.js';

const wordTypes: readonly FieldType[] = ['code', 'codes', 'category', 'laterality', 'yes-no'];
const listable = fields
  .filter(({ type, name }) => wordTypes.includes(type) && name !== 'patient')
  .map(({ name }) => name);

/** One spelling that stands for two of our values; letter case and outer blanks do not tell them apart. */
function spellingsTwice(lists: readonly MapEntry[]): readonly Fault[] {
  const meaning = new Map<string, string>();
  return lists.flatMap(({ key, value }) =>
    textsOf(value).flatMap(({ text, place }) => {
      const folded = text.trim().toLowerCase();
      const other = meaning.get(folded);
      meaning.set(folded, other ?? key);
      return other === undefined ? [] : [fault(place, words.spellingTwice(text, other))];
    }),
  );
}

function valuesFaults({ root, covariates }: Survey): readonly Fault[] {
  const known = [...listable, ...covariates.keys()];
  return entriesOf(valueAt(root, 'values')).flatMap(({ key, place, value }) => {
    if (!known.includes(key)) return [fault(place, words.unknownGroup(key, nearest(key, known), known))];
    const fixed = fieldNamed(key)?.values;
    const ours = entriesOf(value);
    const foreign = fixed ? ours.filter((entry) => !fixed.includes(entry.key)) : [];
    const unknown = foreign.map((entry) =>
      fault(entry.place, words.valueOfField(entry.key, key, words.expected.oneOf(fixed ?? []))),
    );
    return [...unknown, ...spellingsTwice(ours)];
  });
}

function wordsOfColumns({ sources }: Survey): readonly DocumentNode[] {
  const columns = sources.flatMap(({ blocks }) => blocks).flatMap((block) => block.columns);
  return [...new Set(columns.flatMap(({ value }) => valueAt(value, 'words') ?? []))];
}

/** Whether each spelling means one of our values, and these values are the field's. */
export function checkValues(about: Survey): readonly Fault[] {
  return [...valuesFaults(about), ...wordsOfColumns(about).flatMap((node) => spellingsTwice(entriesOf(node)))];
}
