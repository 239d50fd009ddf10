import { alternatives, fieldNamed } from '../plan/fields.js';
import type { VisitContext } from './context.js';
import type { AuditView } from './operations.js';
import type { Left, LeftReason, Placed, RecognisedFile } from './placed.js';
import type { Term } from './vocabulary/vocabulary.js';

/** Columns of one examination, with what says when it was. */
export interface ExamGroup {
  columns: readonly Placed[];
  visit: VisitContext | undefined;
  /** Nothing in the file says when: what stands here is likely, and where nothing is somebody must say. */
  assumed: boolean;
}

interface About {
  surgical: boolean;
  audit: AuditView;
}

const timeTerms: readonly Term[] = ['exam_date', 'days', 'visit'];
const before: VisitContext = { name: 'before', days: undefined };
const after: VisitContext = { name: 'outcome', days: undefined };

const leave = (columns: readonly Placed[], why: LeftReason): readonly Left[] =>
  columns.map(({ index, term }) => ({ index, why, term }));

/** Both meridians of a flat one with an axis of its own become the first and the second. */
function withMeridians(columns: readonly Placed[]): readonly Placed[] {
  const names: Readonly<Record<Term, Term>> = {
    k_flat: 'k1',
    k_flat_axis: 'k1_axis',
    k_steep: 'k2',
    k_steep_axis: 'k2_axis',
  };
  const hasFlatAxis = columns.some(({ term }) => term === 'k_flat_axis');
  const isFree = !columns.some(({ term }) => /^k[12]/.test(term));
  if (!hasFlatAxis || !isFree) return columns.filter(({ term }) => term !== 'k_flat_axis');
  return columns.map((one) => ({ ...one, term: names[one.term] ?? one.term }));
}

/** Columns whose partners are there; the others one after the other until none is left alone. */
export function withPartners(columns: readonly Placed[]): readonly Placed[] {
  const has = (name: string): boolean => columns.some(({ term }) => term === name);
  const kept = columns.filter(({ term }) => (fieldNamed(term)?.needs ?? []).every(has));
  return kept.length === columns.length ? columns : withPartners(kept);
}

/** Of several forms of one measurement the first whose columns are complete; others are left. */
function oneForm(columns: readonly Placed[], forms: (typeof alternatives)[number]): readonly Placed[] {
  const given = forms.map((names) => columns.filter(({ term }) => names.includes(term)));
  // A refraction in one cell stands first there, but three columns are surer where both are given.
  const chosen = given.toSorted((a, b) => b.length - a.length)[0] ?? [];
  const all = given.flat();
  return columns.filter((one) => !all.includes(one) || chosen.includes(one));
}

interface Kept {
  columns: readonly Placed[];
  left: readonly Left[];
}

function complete(columns: readonly Placed[]): Kept {
  const turned = withMeridians(columns);
  const whole = withPartners(turned);
  const kept = alternatives.reduce(oneForm, whole);
  const gone = columns.filter(({ index }) => !whole.some((one) => one.index === index));
  const otherForm = whole.filter((one) => !kept.includes(one));
  return { columns: kept, left: [...leave(gone, 'alone'), ...leave(otherForm, 'other form')] };
}

const isCorneal = ({ term }: Placed): boolean => /^k(?:1|2|_)/.test(term);

/** When columns were measured of which neither a header nor another column says it; undefined where nothing tells. */
function assumedVisit(
  of: RecognisedFile,
  columns: readonly Placed[],
  { surgical, audit }: About,
): VisitContext | undefined {
  const visits = new Set(of.placed.flatMap(({ context }) => context.visit?.name ?? []));
  if (columns.every(isCorneal) && (surgical || audit.operates)) return before;
  if (visits.size > 0) return visits.has('before') ? after : before;
  return audit.operates ? undefined : after;
}

function untimed(of: RecognisedFile, columns: readonly Placed[], about: About): readonly ExamGroup[] {
  const corneal = columns.filter(isCorneal);
  const rest = columns.filter((one) => !isCorneal(one));
  const parts = about.audit.operates ? [corneal, rest] : [columns];
  return parts
    .filter((part) => part.length > 0)
    .map((part) => ({ columns: part, visit: assumedVisit(of, part, about), assumed: true }));
}

function groupOf(
  of: RecognisedFile,
  columns: readonly Placed[],
  about: About,
): { groups: readonly ExamGroup[]; left: readonly Left[] } {
  const kept = complete(columns);
  const measured = kept.columns.filter(({ term }) => !timeTerms.includes(term));
  if (measured.length === 0) return { groups: [], left: [...kept.left, ...leave(kept.columns, 'alone')] };
  const visit = measured[0]?.context.visit;
  const isTimed = visit !== undefined || measured.length < kept.columns.length;
  if (!isTimed) return { groups: untimed(of, measured, about), left: kept.left };
  const corneal = visit === undefined && about.surgical && !measured.every(isCorneal) ? measured.filter(isCorneal) : [];
  const dated = { columns: kept.columns.filter((one) => !corneal.includes(one)), visit, assumed: false };
  // Beside an operation the keratometry is that of the planning; the date is that of what followed.
  const planned = corneal.length > 0 ? [{ columns: corneal, visit: before, assumed: true }] : [];
  return { groups: [dated, ...planned], left: kept.left };
}

/** Columns of one visit and eye. */
function ofOneExam(columns: readonly Placed[]): readonly (readonly Placed[])[] {
  const groups = new Map<string, Placed[]>();
  for (const one of columns) {
    const key = `${one.context.visit?.name ?? ''}|${one.context.side ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

/** The examinations that a file's columns belong to; a date without a visit in its header serves every eye's columns. */
export function examColumns(
  of: RecognisedFile,
  columns: readonly Placed[],
  about: About,
): { groups: readonly ExamGroup[]; left: readonly Left[] } {
  const isShared = ({ term, context }: Placed): boolean => timeTerms.includes(term) && !context.visit && !context.side;
  const sides = new Set(columns.flatMap(({ context }) => context.side ?? []));
  const shared = sides.size > 0 ? columns.filter(isShared) : [];
  const own = columns.filter((one) => !shared.includes(one));
  const groups = ofOneExam(own).map((group) => (group[0]?.context.visit ? group : [...shared, ...group]));
  const found = groups.map((group) => groupOf(of, group, about));
  return { groups: found.flatMap((one) => one.groups), left: found.flatMap((one) => one.left) };
}
