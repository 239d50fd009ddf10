import type { Laterality } from '../../intake/laterality.js';
import type { Days } from '../../units.js';
import { propose as words } from '../../words/en/propose.js';
import type { ArrangedBlock, ArrangedFile } from '../arrange.js';
import { timeContext, type VisitContext, visitIn } from '../context.js';
import type { SurveyedFile } from '../evidence/surveyed.js';
import { columnOf } from '../exported.js';
import { daysAt, numbersAt, placedAs } from '../eye-rows.js';
import { wordsOf } from '../header-words.js';
import type { Placed } from '../placed.js';

/** A visit that the exports have. */
export interface FoundVisit {
  name: string;
  /** Day that it is aimed at; undefined where only "after surgery" is said. */
  aim: Days | undefined;
  labels: readonly string[];
  /** Days from surgery at which examinations of this visit were found. */
  days: readonly Days[];
}

export interface Visits {
  found: readonly FoundVisit[];
  beforeLabels: readonly string[];
  unknownLabels: readonly string[];
  /** Name in audit.yaml of a visit that a header names. */
  nameOf(context: string): string;
}

/** When clinics see eyes again, where no label says it. @source common practice, no source */
const usual: readonly VisitContext[] = [
  timeContext(1, 'day'),
  timeContext(1, 'week'),
  timeContext(1, 'month'),
  timeContext(3, 'month'),
  timeContext(6, 'month'),
  timeContext(1, 'year'),
  timeContext(2, 'year'),
];

/** Share of the examined eyes that make a visit of what was found. */
const leastShare = 0.2;

/** The eyes that a date may be of: both, where neither its header nor a column of the file names one. */
function sidesOf({ of }: SurveyedFile, { context }: Placed): readonly (Laterality | undefined)[] {
  return context.side || placedAs(of, 'eye') ? [context.side] : ['right', 'left'];
}

/** Day of the first operation of each eye, by 'patient|side'. */
function surgeryDays(files: readonly SurveyedFile[]): ReadonlyMap<string, Days> {
  const found = new Map<string, Days>();
  for (const one of files) {
    const date = placedAs(one.of, 'surgery_date');
    const dayOf = date && daysAt(one.of.file, date.index);
    for (const side of date ? sidesOf(one, date) : []) {
      const eyeOf = one.eyeOf(side);
      for (let row = 0; eyeOf && dayOf && row < one.of.file.rows; row++) {
        const [eye, day] = [eyeOf(row), dayOf(row)];
        if (eye !== undefined && day !== undefined) found.set(eye, Math.min(day, found.get(eye) ?? day));
      }
    }
  }
  return found;
}

interface Examined {
  eye: string;
  day: Days;
  label: string;
}

/** Examinations of a block with their day from surgery, and the label of their row. */
function examinations(
  one: SurveyedFile,
  block: ArrangedBlock,
  surgery: ReadonlyMap<string, Days>,
): readonly Examined[] {
  const eyeOf = one.eyeOf(block.side);
  const { file } = one.of;
  const column = (term: string) => block.columns.find((placed) => placed.term === term);
  const [date, days, label] = [column('exam_date'), column('days'), column('visit')];
  const dateOf = date && daysAt(file, date.index);
  const daysOf = days && numbersAt(file, days.index);
  const found: Examined[] = [];
  for (let row = 0; eyeOf && row < file.rows; row++) {
    const eye = eyeOf(row) ?? '';
    const dated = (dateOf?.(row) ?? Number.NaN) - (surgery.get(eye) ?? Number.NaN);
    const counted = Math.round(daysOf?.(row) ?? Number.NaN);
    const day = Number.isNaN(counted) ? dated : counted;
    // Further away than a lifetime is a slip, and no visit.
    if (eye === '' || !(Math.abs(day) <= 36_500)) continue;
    found.push({ eye, day, label: label ? columnOf(file, label.index).at(row).trim() : '' });
  }
  return found;
}

/** What the words of a visit column say. */
function labelContexts(one: SurveyedFile): ReadonlyMap<string, VisitContext | undefined> {
  const column = placedAs(one.of, 'visit');
  const labels = column ? (one.of.profiles[column.index]?.words ?? []) : [];
  return new Map(labels.map(({ word }) => [word.trim(), visitIn(wordsOf(word), one.of.language)?.value]));
}

interface Gathering {
  contexts: Map<string, { context: VisitContext; labels: Set<string>; days: Days[] }>;
  unlabelled: Examined[];
  beforeLabels: Set<string>;
  unknownLabels: Set<string>;
}

function note(gathering: Gathering, context: VisitContext): { labels: Set<string>; days: Days[] } {
  const known = gathering.contexts.get(context.name) ?? { context, labels: new Set<string>(), days: [] };
  gathering.contexts.set(context.name, known);
  return known;
}

function gatherLabels(one: SurveyedFile, gathering: Gathering): ReadonlyMap<string, VisitContext | undefined> {
  const contexts = labelContexts(one);
  for (const [label, context] of contexts) {
    if (!context) gathering.unknownLabels.add(label);
    else if (context.name === 'before') gathering.beforeLabels.add(label);
    else note(gathering, context).labels.add(label);
  }
  return contexts;
}

function gatherBlock(
  one: SurveyedFile,
  block: ArrangedBlock,
  surgery: ReadonlyMap<string, Days>,
  gathering: Gathering,
): void {
  const labels = block.columns.some(({ term }) => term === 'visit') ? gatherLabels(one, gathering) : new Map();
  if (block.visit && block.visit.name !== 'before') note(gathering, block.visit);
  for (const exam of examinations(one, block, surgery)) {
    const context = block.visit ?? labels.get(exam.label);
    if (context && context.name !== 'before') note(gathering, context).days.push(exam.day);
    else if (!context && exam.day > 0) gathering.unlabelled.push(exam);
  }
}

/** Index of the usual visit that a day comes nearest to, as a ratio; −1 where it is not within twice its day. */
function usualAt(day: Days): number {
  const far = (aim: Days | undefined): number => Math.abs(Math.log(day / (aim ?? 1)));
  const nearest = usual.reduce((best, { days }, at) => (far(days) < far(usual[best]?.days) ? at : best), 0);
  return far(usual[nearest]?.days) <= Math.log(2) ? nearest : -1;
}

/** Usual visits at which enough of the examined eyes were seen. */
function usualVisits(exams: readonly Examined[]): readonly FoundVisit[] {
  const eyes = new Set(exams.map(({ eye }) => eye)).size;
  return usual.flatMap(({ name, days: aim }, at) => {
    const near = exams.filter(({ day }) => usualAt(day) === at);
    const seen = new Set(near.map(({ eye }) => eye)).size;
    return eyes > 0 && seen >= leastShare * eyes ? [{ name, aim, labels: [], days: near.map(({ day }) => day) }] : [];
  });
}

/** The visits that the exports have: those their headers and labels name, or those that the days of examinations show. */
export function visitsOf(files: readonly (SurveyedFile & { arranged: ArrangedFile })[]): Visits {
  const gathering: Gathering = {
    contexts: new Map(),
    unlabelled: [],
    beforeLabels: new Set(),
    unknownLabels: new Set(),
  };
  const surgery = surgeryDays(files);
  for (const one of files)
    for (const block of one.arranged.blocks) if (block.holds === 'exam') gatherBlock(one, block, surgery, gathering);
  const named = [...gathering.contexts.values()].map(({ context, labels, days }) => ({
    name: context.name,
    aim: context.days,
    labels: [...labels],
    days,
  }));
  const shown = usualVisits(gathering.unlabelled).filter(({ name }) => !named.some((one) => one.name === name));
  const all = [...named, ...shown].sort((a, b) => (a.aim ?? 1e6) - (b.aim ?? 1e6));
  const nameOf = (context: string): string => (context === 'outcome' && all.length > 1 ? words.afterSurgery : context);
  return {
    found: all.map((one) => ({ ...one, name: nameOf(one.name) })),
    beforeLabels: [...gathering.beforeLabels],
    unknownLabels: [...gathering.unknownLabels],
    nameOf,
  };
}
