import type { Fault, Operator } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { operators } from '../condition-schema.js';
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
import { isDay, isYear, writtenNumber } from '../leaves.js';
import { nearest } from '../nearest.js';
import { isGiven, type Survey, visitNamesOf } from '../survey.js';
import { wrongForm } from './constants.js';

/** Fields of an examination in a form that harmonising gives up: the canonical ones are asked instead. */
const writtenForms = ['refraction', 'k1', 'k1_axis', 'k2', 'k2_axis'];

/** Whether a condition can ask about a field: one of the eye, or a measurement in its canonical form. */
function isAskable({ holds, kind, name }: Field): boolean {
  if (holds.includes('surgery')) return name !== 'patient';
  return kind !== undefined && !writtenForms.includes(name);
}

const askable = fields.filter(isAskable).map(({ name }) => name);

const equality: readonly Operator[] = ['is', 'is_not'];
const ordering: readonly Operator[] = ['below', 'at_most', 'above', 'at_least', 'between'];
const byLine: readonly Operator[] = ['worse_than', 'better_than'];

/** What a condition looks at: a field, a covariate, or a column of the file whose nature is not known. */
interface Subject {
  name: string;
  operators: readonly Operator[];
  /** Whether equality asks only if there is a value: acuities are compared by line. */
  presenceOnly: boolean;
  /** The form expected of a value, where the text does not have it. */
  wrong(text: string, operator: Operator): string | undefined;
}

const isPresence = (text: string): boolean => text === 'present' || text === 'missing';

function wrongNumberOrDay(text: string): string | undefined {
  return writtenNumber(text) !== undefined || isDay(text) ? undefined : words.expected.numberOrDay;
}

function wrongDay(text: string): string | undefined {
  return isDay(text) || isYear(text) ? undefined : words.expected.dayOrYear;
}

function operatorsOf(field: Field): readonly Operator[] {
  if (isNumeric(field) || field.type === 'date') return [...equality, ...ordering];
  return field.type === 'acuity' ? [...equality, ...byLine] : equality;
}

function ofField(field: Field): Subject {
  const wrong = (text: string): string | undefined => (field.type === 'date' ? wrongDay(text) : wrongForm(field, text));
  return { name: field.name, operators: operatorsOf(field), presenceOnly: field.type === 'acuity', wrong };
}

/** A covariate, or a column under `only`: text, unless the covariate is declared a number. */
function ofColumn(name: string, type: 'number' | 'category' | undefined): Subject {
  const wrongNumber = (text: string) => (writtenNumber(text) === undefined ? words.expected.plainNumber : undefined);
  const wrong = (text: string, operator: Operator): string | undefined => {
    if (type === 'number') return wrongNumber(text);
    return equality.includes(operator) ? undefined : wrongNumberOrDay(text);
  };
  return { name, operators: type === 'category' ? equality : [...equality, ...ordering], presenceOnly: false, wrong };
}

function valueFaults(condition: DocumentNode, subject: Subject): readonly Fault[] {
  return entriesOf(condition).flatMap(({ key, place, value }) => {
    const operator = operators.find((one) => one === key);
    if (!operator || byLine.includes(operator)) {
      return operator && !subject.operators.includes(operator)
        ? [fault(place, words.operatorUnfit(key, subject.name, subject.operators))]
        : [];
    }
    if (!subject.operators.includes(operator))
      return [fault(place, words.operatorUnfit(key, subject.name, subject.operators))];
    return textsOf(value).flatMap((text) => comparison(text, operator, subject));
  });
}

function comparison(value: TextNode, operator: Operator, subject: Subject): readonly Fault[] {
  if (equality.includes(operator)) {
    if (isPresence(value.text)) return [];
    if (subject.presenceOnly) return [fault(value.place, words.presence(subject.name))];
  }
  const form = subject.wrong(value.text, operator);
  return form === undefined ? [] : [fault(value.place, words.comparedWith(value.text, subject.name, form))];
}

function turnedPair(condition: DocumentNode): readonly Fault[] {
  const between = valueAt(condition, 'between');
  const [low, high] = textsOf(between);
  if (!between || !low || !high) return [];
  const [from, to] = [writtenNumber(low.text), writtenNumber(high.text)];
  const turned = from !== undefined && to !== undefined ? from > to : low.text > high.text;
  return turned ? [fault(high.place, words.wrongValue(high.text, words.expected.pair, undefined, undefined))] : [];
}

function operatorCount(condition: DocumentNode): readonly Fault[] {
  const found = entriesOf(condition).filter(({ key }) => operators.some((one) => one === key));
  if (found.length === 1) return [];
  const misspelled = entriesOf(condition).some(
    ({ key }) => !known.includes(key) && nearest(key, operators) !== undefined,
  );
  if (found.length === 0 && misspelled) return [];
  return [
    fault(
      found[1]?.place ?? condition.place,
      words.operators(
        found.map(({ key }) => key),
        operators,
      ),
    ),
  ];
}

const known: readonly string[] = ['where', 'at', 'and', 'reason', 'name', ...operators];

function atFaults(condition: DocumentNode, name: string, about: Survey): readonly Fault[] {
  const at = entryAt(condition, 'at');
  if (at?.value.kind !== 'text') return [];
  if (fieldNamed(name)?.holds.includes('exam') !== true) return [fault(at.place, words.atUnfit(name))];
  const visits = ['before', 'outcome', ...visitNamesOf(about).filter((visit) => visit !== 'outcome')];
  const written = at.value.text;
  return visits.includes(written)
    ? []
    : [fault(at.value.place, words.unknownVisit(written, nearest(written, visits), visits))];
}

function subjectOf(name: string, about: Survey): Subject | undefined {
  const field = fieldNamed(name);
  if (field) return isAskable(field) ? ofField(field) : undefined;
  return about.covariates.has(name) ? ofColumn(name, about.covariates.get(name)) : undefined;
}

function unknownSubject({ text, place }: TextNode, about: Survey): Fault {
  if (fieldNamed(text)) return fault(place, words.notAskable(text, askable));
  const names = [...askable, ...about.covariates.keys()];
  return fault(place, words.unknownSubject(text, nearest(text, names), names));
}

/** A condition on fields and covariates of an eye. */
function eyeCondition(condition: DocumentNode, about: Survey): readonly Fault[] {
  const where = valueAt(condition, 'where');
  const inner = itemsOf(valueAt(condition, 'and')).flatMap((other) => eyeCondition(other, about));
  const form = [...operatorCount(condition), ...turnedPair(condition), ...inner];
  if (where?.kind !== 'text') return form;
  const subject = subjectOf(where.text, about);
  if (!subject) return [...form, unknownSubject(where, about)];
  const field = fieldNamed(where.text);
  const unmapped = field && !isGiven(field, about) ? [fault(where.place, words.notMapped(field.name))] : [];
  return [...form, ...valueFaults(condition, subject), ...atFaults(condition, where.text, about), ...unmapped];
}

/** A condition on columns of the file, by their headers. */
function rowCondition(condition: DocumentNode): readonly Fault[] {
  const at = entryAt(condition, 'at');
  const name = textAt(condition, 'where') ?? '';
  return [
    ...operatorCount(condition),
    ...turnedPair(condition),
    ...valueFaults(condition, ofColumn(name, undefined)),
    ...(at ? [fault(at.place, words.atColumns())] : []),
    ...itemsOf(valueAt(condition, 'and')).flatMap(rowCondition),
  ];
}

/** Whether conditions ask one question, of something that is there, in a form that it has. */
export function checkConditions(about: Survey): readonly Fault[] {
  const { root, sources } = about;
  const nodes = new Set(sources.flatMap(({ node, blocks }) => [node, ...blocks.map((block) => block.node)]));
  const only = [...nodes].flatMap((node) => itemsOf(valueAt(node, 'only')));
  const ofEyes = [...itemsOf(valueAt(root, 'eligibility', 'exclude')), ...itemsOf(valueAt(root, 'cohorts', 'define'))];
  const isMapping = (node: DocumentNode): boolean => node.kind === 'map';
  return [
    ...only.filter(isMapping).flatMap(rowCondition),
    ...ofEyes.filter(isMapping).flatMap((condition) => eyeCondition(condition, about)),
  ];
}
