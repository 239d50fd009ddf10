import type { Fault } from '../../records/plan.js';
import { rules } from '../../rules/index.js';
import { thresholds } from '../../rules/thresholds.js';
import { plan as words } from '../../words/en/plan.js';
import {
  type DocumentNode,
  entriesOf,
  entryAt,
  itemsOf,
  type TextNode,
  textAt,
  textsOf,
  valueAt,
} from '../document.js';
import { fault } from '../faults.js';
import { type Field, fieldNamed, fields, isNumeric } from '../fields.js';
import { nearest } from '../nearest.js';
import { isGiven, mayBeNumber, type Survey } from '../survey.js';

/** Whether eyes can be grouped by a field: one of the eye itself, no date, and mean K before surgery. */
const groups = ({ name, holds, type }: Field): boolean =>
  name === 'k_mean' || (holds.includes('surgery') && type !== 'date' && name !== 'patient');

/** Rules that an audit may switch off; one that judges columns tells while the files are read. */
const switchable = [...rules.flatMap(({ id, tells = [] }) => [id, ...tells]), 'unit-differs'];

/** The year of surgery, from a date or as a field of its own. */
const year = 'year';

const groupNames = [...fields.filter(groups).map(({ name }) => name), year];

const isGroupGiven = (name: string, about: Survey): boolean => {
  const field = fieldNamed(name === year ? 'surgery_year' : name);
  return name === 'eye' || field === undefined || isGiven(field, about);
};

/** Names by which eyes are grouped, or adjusted for. */
function groupFaults(named: readonly TextNode[], about: Survey): readonly Fault[] {
  const known = [...groupNames, ...about.covariates.keys()];
  return named.flatMap(({ text, place }) => {
    if (!known.includes(text)) return [fault(place, words.unknownGroup(text, nearest(text, known), known))];
    return isGroupGiven(text, about) ? [] : [fault(place, words.notMapped(text))];
  });
}

/** Keys that must be fields, or covariates, of numbers. */
function numberFaults(
  node: DocumentNode | undefined,
  fits: (field: Field) => boolean,
  about: Survey,
  further: readonly string[] = [],
): readonly Fault[] {
  const known = [...fields.filter(fits).map(({ name }) => name), ...about.covariates.keys(), ...further];
  return entriesOf(node).flatMap(({ key, place }) => {
    if (further.includes(key)) return [];
    const field = fieldNamed(key);
    if (!field && !about.covariates.has(key))
      return [fault(place, words.unknownGroup(key, nearest(key, known), known))];
    const isNumber = field ? fits(field) : mayBeNumber(key, about);
    return isNumber ? [] : [fault(place, words.notANumberField(key))];
  });
}

/** Rules that are switched off must be rules of plausibility: what keeps a file from being read, no audit can pass over. */
function offFaults(root: DocumentNode): readonly Fault[] {
  const named = itemsOf(valueAt(root, 'quality', 'off')).flatMap((one) => textsOf(valueAt(one, 'rule')));
  const unknown = named.filter(({ text }) => !switchable.includes(text));
  return unknown.map(({ text, place }) => fault(place, words.unknownRule(text, nearest(text, switchable))));
}

/** Names of the cohorts, where audit.yaml itself lists them. */
function cohortNames({ root }: Survey): readonly TextNode[] | undefined {
  const define = valueAt(root, 'cohorts', 'define');
  if (define) return itemsOf(define).flatMap((one) => textsOf(valueAt(one, 'name')));
  const values = valueAt(root, 'values', textAt(root, 'cohorts', 'by') ?? '');
  return values && entriesOf(values).map(({ key, place }) => ({ kind: 'text', text: key, place }));
}

function repeated(names: readonly TextNode[]): readonly Fault[] {
  const twice = names.filter(({ text }, i) => names.findIndex((other) => other.text === text) < i);
  return twice.map(({ text, place }) => fault(place, words.cohortTwice(text)));
}

function cohortFaults(about: Survey): readonly Fault[] {
  const cohorts = valueAt(about.root, 'cohorts');
  const [by, define] = [entryAt(cohorts, 'by'), entryAt(cohorts, 'define')];
  const named = ['reference', 'compare'].flatMap((key) => entryAt(cohorts, key) ?? []);
  if (!by && !define) return named.map(({ key, place }) => fault(place, words.noCohorts(key)));
  if (by && define) return [fault(define.place, words.byAndDefine())];
  const names = cohortNames(about);
  const known = names?.map(({ text }) => text);
  const used = named.flatMap(({ value }) => textsOf(value));
  const unknown = known ? used.filter(({ text }) => !known.includes(text)) : [];
  return [
    ...unknown.map(({ text, place }) =>
      fault(place, words.unknownCohort(text, nearest(text, known ?? []), known ?? [])),
    ),
    ...repeated(define ? (names ?? []) : []),
    ...repeated(used),
  ];
}

/** Whether groups, bands and limits stand on something that eyes have. */
export function checkGroups(about: Survey): readonly Fault[] {
  const { root } = about;
  const named = [['cohorts', 'by'], ['subgroups'], ['statistics', 'adjust_for']].flatMap((path) =>
    textsOf(valueAt(root, ...path)),
  );
  const measured = (field: Field): boolean => isNumeric(field) || field.type === 'acuity';
  return [
    ...groupFaults(named, about),
    ...cohortFaults(about),
    ...numberFaults(valueAt(root, 'bands'), (field) => groups(field) && isNumeric(field), about),
    ...numberFaults(valueAt(root, 'quality', 'limits'), measured, about, Object.keys(thresholds)),
    ...offFaults(root),
  ];
}
