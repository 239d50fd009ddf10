import { parseSex } from '../../intake/sex.js';
import { fieldNamed } from '../../plan/fields.js';
import { propose as words } from '../../words/en/propose.js';
import { type Answers, type Choice, settled } from '../choices.js';
import type { AcuityReading } from '../evidence/acuity-scale.js';
import { isUnsigned } from '../evidence/notation.js';
import { clockChoice, isClock, residualChoice, views } from '../evidence/unsaid.js';
import type { EyeReading } from '../eyes-of-file.js';
import type { Placed, RecognisedFile } from '../placed.js';
import { type Doubt, doubt } from './doubt.js';
import { yamlBraces, yamlList } from './lines.js';
import type { Keys } from './place-keys.js';

/** How the column of one field is written down. */
export interface FieldForm {
  /** Keys of the long form. */
  keys: Keys;
  doubts: readonly Doubt[];
  /** Where nothing settles the form: the forms it may have. The line then stands as comments, one a form. */
  ways: readonly Keys[];
}

/** What has been settled for the columns of one file. */
export interface FileSettings {
  eyes: EyeReading;
  acuity: AcuityReading;
  /** Notation of unsigned cylinders. */
  notation: Choice | undefined;
  answers: Answers;
}

const nothing: FieldForm = { keys: [], doubts: [], ways: [] };

/** A choice that was taken, or is open, as a doubt at its line. */
export function choiceDoubt(choice: Choice, taken: string | undefined, answers: Answers): readonly Doubt[] {
  if (answers.get(choice.id)) return [];
  const evidence = choice.options.find(({ value }) => value === taken)?.evidence ?? '';
  const text = taken === undefined ? words.open(choice.kind, choice.found) : words.taken(choice.found, taken, evidence);
  return [doubt(taken === undefined ? 'choice open' : 'choice taken', text)];
}

function eyeDraft({ eyes, answers }: FileSettings): FieldForm {
  const lists = Object.entries(eyes.words).map(([side, list]) => [side, yamlList(list)] as const);
  const keys: Keys = lists.length > 0 ? [['words', yamlBraces(lists)]] : [];
  const { choice, unknown } = eyes;
  if (!choice)
    return {
      keys,
      ways: [],
      doubts: unknown.length > 0 ? [doubt('unknown words', words.doubts.unknownWords(unknown))] : [],
    };
  const taken = settled(choice, answers);
  const [a = '', b = ''] = unknown;
  const way = (right: string, left: string): Keys => [
    [
      'words',
      yamlBraces([
        ['right', yamlList([right])],
        ['left', yamlList([left])],
      ]),
    ],
  ];
  return { keys, doubts: choiceDoubt(choice, taken, answers), ways: taken ? [] : [way(a, b), way(b, a)] };
}

function notationDraft(of: RecognisedFile, one: Placed, { notation, answers }: FileSettings): FieldForm {
  if (!isUnsigned(of, one)) return { ...nothing, keys: one.term === 'refraction' ? [] : [['notation', 'signed']] };
  const said = of.headers[one.index]?.sign;
  if (said) return { ...nothing, keys: [['notation', said]] };
  if (!notation) return nothing;
  const taken = settled(notation, answers);
  const doubts = choiceDoubt(notation, taken, answers);
  if (taken) return { keys: [['notation', taken]], doubts, ways: [] };
  return { keys: [], doubts, ways: [[['notation', 'minus']], [['notation', 'plus']]] };
}

function acuityDraft({ index }: Placed, { acuity, answers }: FileSettings): FieldForm {
  const scale = acuity.known.get(index);
  if (scale) return { ...nothing, keys: [['numbers', scale]] };
  if (acuity.none.includes(index)) return { ...nothing, doubts: [doubt('scale unknown', words.doubts.noScale)] };
  const { choice, open } = acuity;
  if (!choice || !open.includes(index)) return nothing;
  const taken = settled(choice, answers);
  // Without `numbers` the run stops here and shows the lines that settle it.
  return {
    keys: taken ? [['numbers', taken]] : [],
    doubts: open[0] === index ? choiceDoubt(choice, taken, answers) : [],
    ways: [],
  };
}

/** Corneal radii, where the numbers are too small to be powers. */
function cornealDraft(of: RecognisedFile, { index }: Placed): FieldForm {
  const median = of.profiles[index]?.quantile(0.5) ?? Number.NaN;
  return median < 20 ? { ...nothing, keys: [['unit', 'mm']] } : nothing;
}

function positionDraft(of: RecognisedFile, one: Placed, { answers }: FileSettings): FieldForm {
  if (!isClock(of, one)) return nothing;
  const choice = clockChoice(of, one);
  const taken = settled(choice, answers);
  const way = (view: string): Keys => [
    ['unit', 'clock'],
    ['view', view],
  ];
  return {
    keys: taken ? way(taken) : [],
    doubts: choiceDoubt(choice, taken, answers),
    ways: taken ? [] : views.map(way),
  };
}

function residualDraft(of: RecognisedFile, one: Placed, { answers }: FileSettings): FieldForm {
  const choice = residualChoice(of, one);
  const taken = settled(choice, answers);
  const way = (value: string): Keys => {
    const [plane = '', notation = ''] = value.split(' ');
    return [
      ['plane', plane],
      ['notation', notation],
    ];
  };
  return {
    keys: taken ? way(taken) : [],
    doubts: choiceDoubt(choice, taken, answers),
    ways: taken ? [] : choice.options.map(({ value }) => way(value)),
  };
}

/** Sexes that no word names: what 0 and 1 stand for, somebody must say. */
function sexDraft(of: RecognisedFile, { index }: Placed): FieldForm {
  const unknown = (of.profiles[index]?.words ?? [])
    .map(({ word }) => word.trim())
    .filter((word) => parseSex(word) === undefined);
  if (unknown.length === 0) return nothing;
  const [a = '', b = ''] = unknown.toSorted();
  const way = (f: string, m: string): Keys => [
    [
      'words',
      yamlBraces([
        ['F', yamlList([f])],
        ['M', yamlList([m])],
      ]),
    ],
  ];
  if (unknown.length !== 2) return { ...nothing, doubts: [doubt('unknown words', words.doubts.unknownWords(unknown))] };
  return { keys: [], doubts: [doubt('choice open', words.doubts.sexOpen(a, b))], ways: [way(a, b), way(b, a)] };
}

/** The keys that say how a column's cells are read, as far as anything tells. */
export function formOf(of: RecognisedFile, one: Placed, settings: FileSettings): FieldForm {
  const field = fieldNamed(one.term);
  if (one.term === 'eye') return eyeDraft(settings);
  if (one.term === 'sex') return sexDraft(of, one);
  if (one.term === 'predicted_cylinder') return residualDraft(of, one, settings);
  if (one.term === 'cylinder' || one.term === 'refraction') return notationDraft(of, one, settings);
  if (field?.type === 'acuity') return acuityDraft(one, settings);
  if (field?.units.includes('mm')) return cornealDraft(of, one);
  return field?.type === 'clock-or-degrees' ? positionDraft(of, one, settings) : nothing;
}
