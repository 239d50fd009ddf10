import { parseClock } from '../../intake/clock.js';
import { parseSex } from '../../intake/sex.js';
import { fieldNamed } from '../../plan/fields.js';
import { propose as words } from '../../words/en/propose.js';
import type { Answers, Choice } from '../choices.js';
import { settled } from '../choices.js';
import type { AcuityReading } from '../evidence/acuity-scale.js';
import { isUnsigned } from '../evidence/notation.js';
import type { ExportedFile } from '../exported.js';
import type { EyeReading } from '../eyes-of-file.js';
import { likeEnough } from '../looks.js';
import type { Placed, RecognisedFile } from '../placed.js';
import { type Doubt, doubt } from './doubt.js';
import { headerName } from './header-name.js';
import { type YamlLine, yamlBraces, yamlList } from './lines.js';
import { type Keys, placeKeys } from './place-keys.js';
import { samplesOf } from './samples.js';

/** How one column is written down. */
export interface ColumnDraft {
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

const nothing: ColumnDraft = { keys: [], doubts: [], ways: [] };

/** A choice that was taken, or is open, as a doubt at its line. */
export function choiceDoubt(choice: Choice, taken: string | undefined, answers: Answers): readonly Doubt[] {
  if (answers.get(choice.id)) return [];
  const evidence = choice.options.find(({ value }) => value === taken)?.evidence ?? '';
  const text = taken === undefined ? words.open(choice.kind, choice.found) : words.taken(choice.found, taken, evidence);
  return [doubt(taken === undefined ? 'choice open' : 'choice taken', text)];
}

function eyeDraft({ eyes, answers }: FileSettings): ColumnDraft {
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

function notationDraft(of: RecognisedFile, one: Placed, { notation, answers }: FileSettings): ColumnDraft {
  if (!isUnsigned(of, one)) return { ...nothing, keys: one.term === 'refraction' ? [] : [['notation', 'signed']] };
  const said = of.headers[one.index]?.sign;
  if (said) return { ...nothing, keys: [['notation', said]] };
  if (!notation) return nothing;
  const taken = settled(notation, answers);
  const doubts = choiceDoubt(notation, taken, answers);
  if (taken) return { keys: [['notation', taken]], doubts, ways: [] };
  return { keys: [], doubts, ways: [[['notation', 'minus']], [['notation', 'plus']]] };
}

function acuityDraft({ index }: Placed, { acuity, answers }: FileSettings): ColumnDraft {
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
function cornealDraft(of: RecognisedFile, { index }: Placed): ColumnDraft {
  const median = of.profiles[index]?.quantile(0.5) ?? Number.NaN;
  return median < 20 ? { ...nothing, keys: [['unit', 'mm']] } : nothing;
}

const views = ['facing', 'surgeon-superior', 'surgeon-temporal'] as const;

/** Whether positions are hours on a dial: none beyond 12, and some in halves or with minutes. */
export function isClock(of: RecognisedFile, { index }: Placed): boolean {
  const profile = of.profiles[index];
  if (!profile || profile.filled === 0) return false;
  const hours = profile.share(({ word }) => parseClock(word) !== undefined);
  const beyond = profile.share(({ value }) => value > 12);
  return hours > 0.95 && beyond === 0;
}

function positionDraft(of: RecognisedFile, one: Placed, { answers }: FileSettings): ColumnDraft {
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

/** From where an incision's hour was read: nothing in a file tells. */
export function clockChoice({ file }: RecognisedFile, { index }: Placed): Choice {
  return {
    id: `clock-view ${file.file} ${index}`,
    kind: 'clock-view',
    label: file.label,
    header: file.header[index] ?? '',
    found: words.found.clock,
    options: views.map((value) => ({ value, evidence: '' })),
    likelier: undefined,
  };
}

const planes = ['corneal', 'spectacle'] as const;

/** Plane and notation of a predicted cylinder: signs may settle the notation, nothing settles the plane. */
export function residualChoice(of: RecognisedFile, { index }: Placed): Choice {
  const profile = of.profiles[index];
  const negative = (profile?.share(({ value }) => value < 0) ?? 0) > 0.5;
  const notations = negative ? ['minus'] : ['plus', 'minus'];
  return {
    id: `residual-form ${of.file.file} ${index}`,
    kind: 'residual-form',
    label: of.file.label,
    header: of.file.header[index] ?? '',
    found: words.found.residual,
    options: planes.flatMap((plane) => notations.map((notation) => ({ value: `${plane} ${notation}`, evidence: '' }))),
    likelier: undefined,
  };
}

function residualDraft(of: RecognisedFile, one: Placed, { answers }: FileSettings): ColumnDraft {
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
function sexDraft(of: RecognisedFile, { index }: Placed): ColumnDraft {
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

/** What the recognition itself leaves in doubt. */
function ownDoubts(of: RecognisedFile, one: Placed): readonly Doubt[] {
  const found: Doubt[] = [];
  if (one.against) found.push(doubt('header against cells', words.doubts.against(one.against, one.term)));
  else if (one.by === 'cells') found.push(doubt('by cells', words.doubts.byCells));
  if (one.by === 'part of header' && one.term !== 'predicted_se')
    found.push(doubt('part of header', words.doubts.partOfHeader(one.term)));
  if (one.likeness < likeEnough.surely) {
    const cells = Math.round((1 - one.likeness) * (of.profiles[one.index]?.filled ?? 0));
    found.push(doubt('some cells unlike', words.doubts.someUnlike(cells, of.profiles[one.index]?.filled ?? 0)));
  }
  return found;
}

function formOf(of: RecognisedFile, one: Placed, settings: FileSettings): ColumnDraft {
  const field = fieldNamed(one.term);
  if (one.term === 'eye') return eyeDraft(settings);
  if (one.term === 'sex') return sexDraft(of, one);
  if (one.term === 'predicted_cylinder') return residualDraft(of, one, settings);
  if (one.term === 'cylinder' || one.term === 'refraction') return notationDraft(of, one, settings);
  if (field?.type === 'acuity') return acuityDraft(one, settings);
  if (field?.units.includes('mm')) return cornealDraft(of, one);
  return field?.type === 'clock-or-degrees' ? positionDraft(of, one, settings) : nothing;
}

/** How a column is written down, with everything that is in doubt about it. */
export function columnDraft(of: RecognisedFile, one: Placed, settings: FileSettings): ColumnDraft {
  const form = formOf(of, one, settings);
  const header = headerName(of.file, one.index);
  return { ...form, doubts: [...ownDoubts(of, one), ...form.doubts].map((each) => ({ ...each, header })) };
}

function written(file: ExportedFile, index: number, keys: Keys): string {
  const place = placeKeys(file, index);
  const [only] = place;
  return keys.length === 0 && place.length === 1 && only?.[0] === 'column' ? only[1] : yamlBraces([...place, ...keys]);
}

/** The lines of a column; where its form is open they stand as comments. @param off  with a partner whose form is open */
export function columnLines(
  of: RecognisedFile,
  one: Placed,
  { keys, doubts, ways }: ColumnDraft,
  depth: number,
  off = false,
): readonly YamlLine[] {
  const comment = words.behind(samplesOf(of, one), words.basis[one.by]);
  const line = (form: Keys): YamlLine => ({
    depth,
    text: `${one.term}: ${written(of.file, one.index, form)}`,
    off: off || ways.length > 0,
  });
  if (ways.length === 0) return [{ ...line(keys), comment, doubts }];
  return ways.map((form, at) => (at === 0 ? { ...line(form), comment, doubts } : line(form)));
}
