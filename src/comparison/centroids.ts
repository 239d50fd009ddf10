import { axisOf } from '../optics/axis.js';
import { vectorMagnitude } from '../optics/double-angle.js';
import type { ResultRow } from '../records/result.js';
import { type CentroidDifference, centroidDifference } from '../statistics/cohorts/centroid-difference.js';
import { type Cohorts, oneEyeEach } from '../statistics/cohorts/design.js';
import type { Pair } from './pair.js';
import { type About, type Declared, rowAbout, testRows } from './rows.js';
import { undirectedVerdict } from './verdict.js';

/** The textbook form with which the test is identical. */
function textbookOf(cohorts: Cohorts): readonly string[] {
  if (cohorts.design === 'fellow-eye') return ['textbook:hotelling'];
  return oneEyeEach(cohorts) ? ['textbook:krishnamoorthy-yu'] : [];
}

/** The region leaves out "no difference" exactly where p is below 1 − level: both are the same quadratic form. */
function verdictNotes({ x, y, region, test }: CentroidDifference, declared: Declared): readonly string[] {
  if (declared.primaries === undefined) return [];
  const primary = `primary:k=${declared.primaries}`;
  if (x === undefined || y === undefined || region === undefined || test === undefined) return [primary];
  const farthest = vectorMagnitude(x, y) + region.major;
  return [primary, `verdict:${undirectedVerdict(test.p < 1 - declared.level, farthest, declared.margin)}`];
}

function notesOf(found: CentroidDifference, cohorts: Cohorts, declared: Declared): readonly string[] {
  return [...found.notes, ...(found.test ? textbookOf(cohorts) : []), ...verdictNotes(found, declared)];
}

/** What a comparison of vectors gives: its rows, and the p that a primary is adjusted by. */
export interface CentroidRows {
  rows: readonly ResultRow[];
  p: number | undefined;
}

/**
 * Difference of the centroids of two cohorts: the vector, its region, its test.
 *
 * @param x, y  components of the eyes of both cohorts, dioptres in the doubled-angle plane
 */
export function centroidRows(about: About, x: Pair, y: Pair, declared: Declared): CentroidRows {
  const { cohorts } = x;
  const compared = { x: x.compared, y: y.compared };
  const found = centroidDifference(compared, { x: x.reference, y: y.reference }, cohorts, declared.level);
  const notes = notesOf(found, cohorts, declared);
  const because = notes.some((note) => note.startsWith('not-estimable'))
    ? notes
    : [...notes, 'not-estimable:no-spread'];
  const row = (statistic: string, value: number | undefined, unit = about.unit, why = because): ResultRow =>
    rowAbout(about, found, {
      statistic: `difference_${statistic}`,
      value,
      unit,
      method: found.method,
      note: (value === undefined ? why : notes).join(';'),
    });
  const isThere = found.x !== undefined && found.y !== undefined;
  const magnitude = isThere ? vectorMagnitude(found.x as number, found.y as number) : undefined;
  // A difference of exactly zero has no direction.
  const axis = magnitude ? axisOf(found.x as number, found.y as number) : undefined;
  const { n, patients, region, test } = found;
  const tested = { n, patients, p: test?.p, df: test?.df2, test: 'centroid-difference' };
  const rows = [
    row('x', found.x),
    row('y', found.y),
    row('magnitude', magnitude),
    row('axis', axis, 'deg', magnitude === 0 ? [...notes, 'not-estimable:zero-vector'] : because),
    row('ellipse_major', region?.major),
    row('ellipse_minor', region?.minor),
    row('ellipse_angle', region?.tilt, 'deg'),
    ...(test
      ? [rowAbout(about, found, { statistic: 't2:difference_centroid', value: test.t2, method: found.method })]
      : []),
    ...testRows(about, 'difference_centroid', tested),
  ];
  return { rows, p: test?.p };
}
