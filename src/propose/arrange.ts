import type { Laterality } from '../intake/laterality.js';
import { fieldNamed } from '../plan/fields.js';
import type { Holds } from '../records/plan.js';
import type { VisitContext } from './context.js';
import { examColumns, withPartners } from './exam-columns.js';
import { placedAs } from './eye-rows.js';
import { formulaNamed } from './formulas.js';
import { type AuditView, listsOperations } from './operations.js';
import type { Left, LeftReason, Placed, RecognisedFile } from './placed.js';
import type { Term } from './vocabulary/vocabulary.js';

/** One kind of row that a file holds. */
export interface ArrangedBlock {
  holds: Holds;
  side: Laterality | undefined;
  /** Of exam rows: the visit that the header names, or that was assumed. */
  visit: VisitContext | undefined;
  /** Nothing in the file says so. */
  assumed: boolean;
  /** Nothing says that there are such rows: the block stands as a comment. */
  open: boolean;
  /** Rows count only where this column is filled; undefined where all do. */
  only: Placed | undefined;
  /** Of prediction rows: the formula, unless a column names it. */
  formula: string | undefined;
  columns: readonly Placed[];
}

/** Why a file is of no use: it does not say whom, or which eye, its rows are of, or nothing about them. */
type Lack = 'patient' | 'eye' | 'anything';

export interface ArrangedFile {
  of: RecognisedFile;
  /** Patient, eye: what all rows share. */
  shared: readonly Placed[];
  blocks: readonly ArrangedBlock[];
  left: readonly Left[];
  /** Whether its rows are operations. */
  operates: boolean;
  /** What every file must have and this one has not. */
  lacks: Lack | undefined;
}

const holdsOf = (term: Term): readonly Holds[] => fieldNamed(term)?.holds ?? ['exam'];

const block = (holds: Holds, columns: readonly Placed[], more: Partial<ArrangedBlock> = {}): ArrangedBlock => ({
  holds,
  side: undefined,
  visit: undefined,
  assumed: false,
  open: false,
  only: undefined,
  formula: undefined,
  columns,
  ...more,
});

/** Groups in the order in which they are first met. */
function grouped<T>(all: readonly T[], keyOf: (one: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return [...groups.values()];
}

const bySide = (columns: readonly Placed[]) => grouped(columns, ({ context }) => context.side ?? '');

const predictionTerms: readonly Term[] = ['predicted_se', 'predicted_cylinder', 'predicted_axis'];

/** The name of a column's formula: the trade's, or the header itself. */
function formulaOf(header: string): string {
  return formulaNamed(header) ?? header.replace(/\s+/g, ' ').trim();
}

/** Predictions: one of the operation's own row, others a block a formula; or rows that name their formula. */
function predictionBlocks(
  of: RecognisedFile,
  columns: readonly Placed[],
  own: Placed | undefined,
): readonly ArrangedBlock[] {
  const formula = placedAs(of, 'formula');
  if (formula && columns.some(({ term }) => term === 'predicted_se')) {
    const constant = placedAs(of, 'constant');
    const all = [formula, ...columns, ...(constant ? [constant] : [])];
    return bySide(all).map((side) => block('prediction', side, { side: side[0]?.context.side }));
  }
  const others = columns.filter((one) => one !== own && one.term === 'predicted_se');
  return others.map((one) => {
    const name = formulaOf(of.file.header[one.index] ?? '');
    const rest = own || others.length > 1 ? [] : columns.filter(({ term }) => term !== 'predicted_se');
    return block('prediction', [one, ...rest], { side: one.context.side, formula: name });
  });
}

/** The prediction that stands for the operation's own: the one whose header says no more than that. */
function plainPrediction(of: RecognisedFile, columns: readonly Placed[]): Placed | undefined {
  const all = columns.filter(({ term }) => term === 'predicted_se');
  const named = (one: Placed): boolean => formulaNamed(of.file.header[one.index] ?? '') !== undefined;
  return all.find((one) => one.by === 'header' && !named(one)) ?? (all.length === 1 ? all[0] : undefined);
}

const left = (columns: readonly Placed[], why: LeftReason): readonly Left[] =>
  columns.map(({ index, term }) => ({ index, why, term }));

/** Columns by the kind of row that carries them. */
function sortedOut(of: RecognisedFile, shared: readonly Placed[], surgical: boolean) {
  const rest = of.placed.filter((one) => !shared.includes(one) && one.term !== 'formula' && one.term !== 'constant');
  const predictions = rest.filter(({ term }) => predictionTerms.includes(term));
  const ofEye = rest.filter(({ term }) => holdsOf(term).includes('eye'));
  const others = rest.filter((one) => !ofEye.includes(one) && !predictions.includes(one));
  const ofSurgery = others.filter(({ term }) => holdsOf(term).includes('surgery'));
  const own = surgical && !placedAs(of, 'formula') ? plainPrediction(of, predictions) : undefined;
  const cylinders = predictions.filter(({ term }) => term !== 'predicted_se');
  const planned = own ? [own, ...cylinders] : cylinders.length === predictions.length ? cylinders : [];
  const facts = surgical ? [...ofSurgery, ...ofEye, ...planned] : ofEye;
  return { predictions, own, facts, ofSurgery, ofExam: others.filter((one) => !ofSurgery.includes(one)) };
}

const inOrder = (one: ArrangedBlock): ArrangedBlock => ({
  ...one,
  columns: withPartners(one.columns).toSorted((a, b) => a.index - b.index),
});

/**
 * Facts of operations or eyes. Where no column names the eye, those that stand for one eye take along what is said of
 * both, in rows that say something of that eye; what is said of both alone leaves open which of them it is about.
 */
function factBlocks(of: RecognisedFile, facts: readonly Placed[], holds: Holds): readonly ArrangedBlock[] {
  const sides = (['right', 'left'] as const).filter((side) => of.placed.some(({ context }) => context.side === side));
  if (facts.length === 0 || placedAs(of, 'eye') || sides.length === 0)
    return bySide(facts).map((columns) => block(holds, columns, sideOf(columns)));
  const ofBoth = facts.filter(({ context }) => context.side === undefined);
  return sides.map((side) => {
    const own = facts.filter(({ context }) => context.side === side);
    const only = own.find(({ term }) => term === 'surgery_date') ?? own[0];
    return block(holds, [...ofBoth, ...own], { side, open: own.length === 0, only });
  });
}

const sideOf = (columns: readonly Placed[]) => ({ side: columns.find(({ context }) => context.side)?.context.side });

/** Columns that found no place in any block, nor a reason. */
function stranded(of: RecognisedFile, used: readonly Placed[], told: readonly Left[]): readonly Left[] {
  const known = new Set([...used, ...told].map(({ index }) => index));
  return left(
    of.placed.filter(({ index }) => !known.has(index)),
    'alone',
  );
}

/**
 * Which kinds of row a file holds, and what stands in each: operations, facts of an eye, examinations by visit,
 * predictions by formula.
 */
export function arrange(of: RecognisedFile, audit: AuditView): ArrangedFile {
  const operates = listsOperations(of, audit.dated);
  const shared = ['patient', 'eye'].flatMap((term) => placedAs(of, term) ?? []);
  const { predictions, own, facts, ofSurgery, ofExam } = sortedOut(of, shared, operates);
  const exams = examColumns(of, ofExam, { surgical: operates, audit });
  const all = [
    ...factBlocks(of, facts, operates ? 'surgery' : 'eye'),
    ...exams.groups.map(({ columns, visit, assumed }) =>
      block('exam', columns, { ...sideOf(columns), visit, assumed }),
    ),
    ...predictionBlocks(of, predictions, own),
  ];
  const blocks = all.map(inOrder).filter(({ columns }) => columns.length > 0);
  const told = [...of.left, ...(operates ? [] : left(ofSurgery, 'no operation')), ...exams.left];
  const used = [...shared, ...blocks.flatMap(({ columns }) => columns)];
  return { of, shared, blocks, left: [...told, ...stranded(of, used, told)], operates, lacks: lackOf(of, blocks) };
}

function lackOf(of: RecognisedFile, blocks: readonly ArrangedBlock[]): Lack | undefined {
  const sided = blocks.some(({ side }) => side !== undefined);
  if (!placedAs(of, 'patient')) return 'patient';
  if (!placedAs(of, 'eye') && !sided) return 'eye';
  return blocks.length === 0 ? 'anything' : undefined;
}
