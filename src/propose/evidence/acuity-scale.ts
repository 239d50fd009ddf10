import type { AcuityNumbers } from '../../intake/acuity.js';
import { acuityScale } from '../../intake/acuity-scale.js';
import { fieldNamed } from '../../plan/fields.js';
import { propose as words } from '../../words/en/propose.js';
import { type Choice, likelierOf } from '../choices.js';
import { numbersAt, placedAs } from '../eye-rows.js';
import type { Placed, RecognisedFile } from '../placed.js';
import { numberIn } from '../profile.js';

const scales: readonly AcuityNumbers[] = ['decimal', 'logmar', 'letters'];

/** Share of the bare numbers that a scale must hold: a slip or two does not speak against it. */
const mostOf = 0.97;

/** What the bare numbers of an acuity column can count. */
interface ColumnScales {
  column: Placed;
  bare: number;
  possible: readonly AcuityNumbers[];
}

function scalesOf({ file, profiles, headers }: RecognisedFile, column: Placed): ColumnScales {
  const judged = (profiles[column.index]?.words ?? []).map(({ word, cells }) => ({
    cells,
    ...acuityScale([word], file.decimal),
  }));
  const numbers = judged.filter(({ bareNumbers }) => bareNumbers > 0);
  const bare = numbers.reduce((sum, { cells }) => sum + cells, 0);
  const held = (scale: AcuityNumbers): number =>
    numbers.reduce((sum, one) => sum + (one.scales.includes(scale) ? one.cells : 0), 0);
  const possible = bare === 0 ? [] : scales.filter((scale) => held(scale) >= mostOf * bare);
  const said = headers[column.index]?.scale;
  return { column, bare, possible: said && possible.includes(said) ? [said] : possible };
}

/** Corrected against uncorrected acuity of the same row: the better one is the larger decimal and the smaller logMAR. */
function byCorrection(of: RecognisedFile): Record<'decimal' | 'logmar', number> {
  const fits = { decimal: 0, logmar: 0 };
  for (const corrected of of.placed.filter(({ term }) => term === 'cdva')) {
    const uncorrected = placedAs(of, 'udva', corrected);
    if (!uncorrected) continue;
    const [better, worse] = [numbersAt(of.file, corrected.index), numbersAt(of.file, uncorrected.index)];
    for (let row = 0; row < of.file.rows; row++) {
      if (better(row) > worse(row)) fits.decimal++;
      if (better(row) < worse(row)) fits.logmar++;
    }
  }
  return fits;
}

/** Half the eyes of an audit see well with correction: their number is near 1 as a decimal, near 0 as logMAR. */
function byMedian(of: RecognisedFile): AcuityNumbers | undefined {
  const corrected = of.placed.find(({ term }) => term === 'cdva');
  const median = corrected ? (of.profiles[corrected.index]?.quantile(0.5) ?? Number.NaN) : Number.NaN;
  if (median >= 0.8) return 'decimal';
  return median <= 0.2 ? 'logmar' : undefined;
}

function choiceOf(of: RecognisedFile, open: readonly ColumnScales[]): Choice {
  const possible = scales.filter((scale) => open.every((one) => one.possible.includes(scale)));
  const fits = byCorrection(of);
  const pairs = fits.decimal + fits.logmar;
  const median = byMedian(of);
  const evidence = (scale: AcuityNumbers): string => {
    if (scale === 'letters') return '';
    if (pairs > 0) return words.evidence.correction(scale, fits[scale], pairs);
    return scale === median ? words.evidence.median : '';
  };
  const numbers = open
    .flatMap(({ column }) => of.profiles[column.index]?.words ?? [])
    .map(({ word }) => numberIn(word, of.file.decimal));
  const given = numbers.filter((value) => !Number.isNaN(value));
  const likelier = likelierOf(fits) ?? median;
  return {
    id: `acuity-scale ${of.file.file}`,
    kind: 'acuity-scale',
    label: of.file.label,
    header: of.file.header[open[0]?.column.index ?? -1] ?? '',
    found: words.found.acuityScale(
      open.reduce((sum, { bare }) => sum + bare, 0),
      given.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY),
      given.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY),
    ),
    options: possible.map((scale) => ({ value: scale, evidence: evidence(scale) })),
    likelier: possible.some((scale) => scale === likelier) ? likelier : undefined,
  };
}

export interface AcuityReading {
  /** Scale of the columns whose bare numbers can be of one scale only, by header index. */
  known: ReadonlyMap<number, AcuityNumbers>;
  /** Columns that wait for the choice. */
  open: readonly number[];
  /** Columns of which no scale holds the bare numbers. */
  none: readonly number[];
  choice: Choice | undefined;
}

/** What the bare numbers of a file's acuities count; of columns that may be of several scales one question is asked. */
export function acuityReading(of: RecognisedFile): AcuityReading {
  const columns = of.placed
    .filter(({ term }) => fieldNamed(term)?.type === 'acuity')
    .map((column) => scalesOf(of, column));
  const bare = columns.filter((one) => one.bare > 0);
  const known = bare.filter(({ possible }) => possible.length === 1);
  const open = bare.filter(({ possible }) => possible.length > 1);
  return {
    known: new Map(known.map(({ column, possible }) => [column.index, possible[0] as AcuityNumbers])),
    open: open.map(({ column }) => column.index),
    none: bare.filter(({ possible }) => possible.length === 0).map(({ column }) => column.index),
    choice: open.length > 0 ? choiceOf(of, open) : undefined,
  };
}
