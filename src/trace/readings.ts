import { decimalOfLogMAR } from '../acuity/log-mar.js';
import { lowVisionNames } from '../acuity/low-vision.js';
import { integersOf, numbersOf } from '../columns/table.js';
import { fixed, shortest } from '../format/number.js';
import { clockText } from '../intake/clock.js';
import { cornealRadius, keratometricIndex, reindexedPower } from '../optics/keratometry.js';
import type { Kind } from '../records/canonical.js';
import type { BlockPlan, ColumnPlan } from '../records/plan.js';
import { plainNumber, refractionText } from './number-text.js';
import type { Traced } from './traced.js';

/** A cell of a file: which one, in which of its blocks, and the row. */
export interface RawPlace {
  source: number;
  block: number;
  row: number;
}

/** A field as it was read from its own cell, sign as recorded; NaN where it has no cell. */
function readAs({ derived }: Traced, { source, block, row }: RawPlace, field: string): number {
  const reading = derived.tables.readings.find(
    (one) => one.source === source && one.block === block && one.field === field,
  );
  return reading ? (reading.values[reading.words.codes[row] as number] as number) : Number.NaN;
}

const acuityKinds: readonly Kind[] = ['uncorrected', 'corrected', 'near', 'intermediate'];

/** How the cells of one measurement became its numbers: transposition, radius to power, acuity to logMAR. */
export function readingNotes(
  traced: Traced,
  kind: Kind,
  row: number,
  place: RawPlace,
  block: BlockPlan,
): readonly string[] {
  if (kind === 'refractions') return transposition(traced, row, place);
  if (kind === 'keratometries') return keratometry(traced, row, place, block);
  return acuityKinds.includes(kind) ? acuity(traced, kind, row) : [];
}

function own({ derived }: Traced, kind: Kind, row: number): (column: string) => number {
  return (column) => numbersOf(derived.tables.measurements[kind], column)[row] as number;
}

/** From the notation of the file to plus notation, which names the steep meridian. */
function transposition(traced: Traced, row: number, place: RawPlace): readonly string[] {
  const { trace } = traced.words;
  const at = own(traced, 'refractions', row);
  const result = refractionText(at('sphere'), at('cylinder'), at('axis'), trace);
  const [sphere, cylinder, axis] = ['sphere', 'cylinder', 'axis'].map((field) => readAs(traced, place, field)) as [
    number,
    number,
    number,
  ];
  if (!(cylinder < 0) || Number.isNaN(sphere)) return [trace.plusAlready(result)];
  const written = refractionText(sphere, cylinder, axis, trace);
  const turn = axis > 90 ? '−' : '+';
  const turned = Number.isNaN(axis) ? trace.noAxis : `${plainNumber(axis, trace)} ${turn} 90`;
  return [trace.transposed(written, `${fixed(sphere, 2)} − ${fixed(-cylinder, 2)}`, turned, result)];
}

const powers = ['k1', 'k2', 'k_flat', 'k_steep', 'k_mean'];

/** One power of the cornea from its cell: from a radius, or restated from another keratometric index. */
function powerNote(traced: Traced, place: RawPlace, { field, unit, index }: ColumnPlan): readonly string[] {
  const { trace } = traced.words;
  const power = readAs(traced, place, field);
  if (Number.isNaN(power)) return [];
  const result = plainNumber(power, trace);
  if (unit === 'mm') return [trace.radius(plainNumber(cornealRadius(power), trace), result)];
  if (index === undefined || index === keratometricIndex) return [];
  const written = plainNumber(reindexedPower(power, keratometricIndex, index), trace);
  return [trace.reindexed(written, plainNumber(1000 * index - 1000, trace), result)];
}

function keratometry(traced: Traced, row: number, place: RawPlace, block: BlockPlan): readonly string[] {
  const { trace } = traced.words;
  const at = own(traced, 'keratometries', row);
  const [flat, steep, axis] = ['flat', 'steep', 'steepAxis'].map((column) => plainNumber(at(column), trace)) as [
    string,
    string,
    string,
  ];
  return [
    ...block.columns
      .filter(({ field }) => powers.includes(field))
      .flatMap((column) => powerNote(traced, place, column)),
    trace.flatAndSteep(flat, steep, axis),
  ];
}

function acuity(traced: Traced, kind: Kind, row: number): readonly string[] {
  const { trace } = traced.words;
  const at = own(traced, kind, row);
  const logMAR = fixed(at('logMAR'), 3);
  const word = lowVisionNames[at('lowVision') - 1];
  return [word === undefined ? trace.acuity(fixed(decimalOfLogMAR(at('logMAR')), 3), logMAR) : trace.standsFor(logMAR)];
}

/** What the surgery row says in another form than the audit holds it: clock hours, the sphere of a toric lens. */
export function surgeryNotes(traced: Traced, { source }: RawPlace, block: BlockPlan): readonly string[] {
  const { derived, eye, raw, plan, words } = traced;
  const { eyes } = derived.tables;
  const side = integersOf(eyes, 'laterality')[eye] === 0 ? 'right' : 'left';
  const hours = block.columns
    .filter(({ unit }) => unit === 'clock')
    .flatMap(({ field, view = 'facing' }) => {
      const position = numbersOf(eyes, field)[eye] as number;
      if (Number.isNaN(position)) return [];
      return [words.trace.clock(clockText(position, view, side), words.trace.views[view], shortest(position))];
    });
  const isSphere = plan.sources[raw[source]?.source ?? -1]?.lens_power_is === 'sphere';
  return isSphere ? [...hours, lensPower(traced)] : hours;
}

/** A label that names the sphere of a toric lens: its equivalent is half the cylinder more. */
function lensPower({ derived, eye, words }: Traced): string {
  const at = (name: string): number => numbersOf(derived.eyes, name)[eye] as number;
  const half = (at('lens_cylinder') || 0) / 2;
  return words.trace.lensSphere(
    plainNumber(at('lens_power') - half, words.trace),
    plainNumber(2 * half, words.trace),
    plainNumber(at('lens_power'), words.trace),
  );
}
