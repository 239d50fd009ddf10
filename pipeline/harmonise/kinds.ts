import { lowVisionNames } from '../../src/acuity/low-vision.js';
import { parseAcuity } from '../../src/intake/acuity.js';
import { parseRefraction } from '../../src/intake/refraction-cell.js';
import { wrap180 } from '../../src/optics/axis.js';
import { steepMeridian } from '../../src/optics/keratometry.js';
import { plusAxis, plusSphere } from '../../src/optics/transposition.js';
import type { Kind } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import { millionths } from '../../src/units.js';
import { type Block, mappedColumn } from './blocks.js';
import { numberCells, type NumberCells, type ReadContext, tellUnreadable } from './cells.js';

/** One row of one kind in canonical form; undefined where the row holds nothing of it. */
export type KindReader = (row: number) => { own: readonly number[]; axisGiven?: boolean } | undefined;

const nothing: NumberCells = () => Number.NaN;
const isMissing = Number.isNaN;
const toMillionth = (value: number): number => millionths(value) / 1e6;

/** An axis in (0, 180]; NaN for a number that is none. */
function axisIn(value: number): number {
  return value >= 0 && value <= 180 ? wrap180(value) : Number.NaN;
}

/** Sphere, cylinder and axis of every row as recorded, from three columns or from one. */
function recordedRefraction(block: Block, context: ReadContext): NumberCells[] | undefined {
  const column = mappedColumn(block, 'refraction');
  if (!column) {
    const cells = ['sphere', 'cylinder', 'axis'].map((field) => numberCells(block, field, context));
    return cells[0] || cells[1] ? cells.map((one) => one ?? nothing) : undefined;
  }
  const { words, codes } = column.words;
  const unreadable = new Uint8Array(words.length);
  const values = words.map((word, code) => {
    if (block.isMissing(word)) return undefined;
    const refraction = parseRefraction(word, block.raw.read.decimal);
    if (!refraction) unreadable[code] = 1;
    return refraction;
  });
  tellUnreadable(block, column, unreadable, { rule: 'number-unreadable', effect: 'refraction left out' }, context);
  const sign = { minus: -1, plus: 1, signed: 0 }[column.plan.notation ?? 'signed'];
  const signed = (cylinder: number): number => (sign === 0 ? cylinder : sign * Math.abs(cylinder));
  const at = (row: number) => values[codes[row] as number];
  return [
    (row) => at(row)?.sphere ?? Number.NaN,
    (row) => signed(at(row)?.cylinder ?? Number.NaN),
    (row) => at(row)?.axis ?? Number.NaN,
  ];
}

/** A blank sphere or cylinder beside the other one, as the source declares it; missing unless it does. */
function filled(value: number, other: number, meaning: string | number | undefined): number {
  return isMissing(value) && !isMissing(other) && meaning !== undefined ? Number(meaning) : value;
}

/**
 * Refractions in plus notation, rounded to 1e-6 D, so that the other notation gives the same bits; the cylinder as
 * recorded stands beside.
 */
function refractions(block: Block, context: ReadContext): KindReader | undefined {
  const recorded = recordedRefraction(block, context);
  if (!recorded) return undefined;
  const [sphereOf, cylinderOf, axisOf] = recorded as [NumberCells, NumberCells, NumberCells];
  const vertexOf = numberCells(block, 'vertex_mm', context) ?? nothing;
  const laneOf = numberCells(block, 'lane_m', context) ?? nothing;
  const { sphere: blankSphere, cylinder: blankCylinder } = block.plan.blank_means;
  return (row) => {
    const givenSphere = sphereOf(row);
    const givenCylinder = cylinderOf(row);
    if (isMissing(givenSphere) && isMissing(givenCylinder)) return undefined;
    const sphere = filled(givenSphere, givenCylinder, blankSphere);
    const cylinder = filled(givenCylinder, givenSphere, blankCylinder);
    const axis = axisOf(row);
    return {
      own: [
        toMillionth(plusSphere(sphere, cylinder)),
        toMillionth(Math.abs(cylinder)),
        plusAxis(cylinder, axisIn(axis)),
        toMillionth(Math.abs(cylinder)),
        vertexOf(row),
        laneOf(row),
      ],
      axisGiven: !isMissing(axis),
    };
  };
}

/** Flat and steep power with the steep meridian, whichever of the three forms a block maps. */
function keratometries(block: Block, context: ReadContext): KindReader | undefined {
  const cells = (field: string): NumberCells => numberCells(block, field, context) ?? nothing;
  const has = (field: string): boolean => mappedColumn(block, field) !== undefined;
  if (has('k1')) {
    const [k1, axis1, k2, axis2] = ['k1', 'k1_axis', 'k2', 'k2_axis'].map(cells) as NumberCells[] & { length: 4 };
    return (row) => meridians(k1?.(row), axisIn(axis1?.(row) ?? Number.NaN), k2?.(row), axisIn(axis2?.(row) ?? Number.NaN));
  }
  if (has('k_flat')) {
    const [flat, steep, axis] = ['k_flat', 'k_steep', 'k_steep_axis'].map(cells) as NumberCells[] & { length: 3 };
    return (row) => meridians(flat?.(row), Number.NaN, steep?.(row), axisIn(axis?.(row) ?? Number.NaN));
  }
  if (!has('k_mean')) return undefined;
  const [mean, size, axis] = ['k_mean', 'k_cylinder', 'k_cylinder_axis'].map(cells) as NumberCells[] & { length: 3 };
  return (row) => {
    const half = Math.abs(size?.(row) ?? Number.NaN) / 2;
    const centre = mean?.(row) ?? Number.NaN;
    return meridians(centre - half, Number.NaN, centre + half, axisIn(axis?.(row) ?? Number.NaN));
  };
}

function meridians(k1 = Number.NaN, axis1 = Number.NaN, k2 = Number.NaN, axis2 = Number.NaN) {
  if (isMissing(k1) && isMissing(k2)) return undefined;
  return { own: [Math.min(k1, k2), Math.max(k1, k2), steepMeridian(k1, axis1, k2, axis2)] };
}

/** Acuities, once a word: exact logMAR, and the code of a low-vision word (0 none). */
function acuities(field: string, block: Block, plan: Plan, context: ReadContext): KindReader | undefined {
  const column = mappedColumn(block, field);
  if (!column) return undefined;
  const { words, codes } = column.words;
  const unreadable = new Uint8Array(words.length);
  const lowVision = new Uint8Array(words.length);
  const form = {
    decimal: block.raw.read.decimal,
    numbers: column.plan.numbers,
    lettersPerLine: block.sourcePlan.letters_per_line === 5 ? (5 as const) : undefined,
    lowVision: plan.acuity.low_vision,
  };
  const values = Float64Array.from(words, (word, code) => {
    if (block.isMissing(word)) return Number.NaN;
    const acuity = parseAcuity(word, form);
    if ('reason' in acuity) {
      unreadable[code] = 1;
      return Number.NaN;
    }
    if (acuity.lowVision) lowVision[code] = lowVisionNames.indexOf(acuity.lowVision) + 1;
    return acuity.logMAR;
  });
  tellUnreadable(block, column, unreadable, { rule: 'acuity-unreadable', effect: 'acuity left out' }, context);
  const { source, block: index } = block;
  context.readings.push({ source, block: index, field, column: column.header, words: column.words, values, eyes: context.eyes });
  return (row) => {
    const code = codes[row] as number;
    const value = values[code] as number;
    return isMissing(value) ? undefined : { own: [value, lowVision[code] as number] };
  };
}

/** A kind that is one number, or a cylinder with its axis. */
function numbers(fields: readonly string[], block: Block, context: ReadContext): KindReader | undefined {
  const cells = fields.map((field) => numberCells(block, field, context));
  if (!cells[0]) return undefined;
  const isAxis = fields.map((field) => field.endsWith('axis'));
  return (row) => {
    const own = cells.map((cell, i) => {
      const value = cell?.(row) ?? Number.NaN;
      return isAxis[i] ? axisIn(value) : value;
    });
    return isMissing(own[0] as number) ? undefined : { own };
  };
}

/** How each kind is read from a block; undefined where the block maps nothing of it. */
export function kindReader(kind: Kind, block: Block, plan: Plan, context: ReadContext): KindReader | undefined {
  switch (kind) {
    case 'refractions':
      return refractions(block, context);
    case 'keratometries':
      return keratometries(block, context);
    case 'uncorrected':
      return acuities('udva', block, plan, context);
    case 'corrected':
      return acuities('cdva', block, plan, context);
    case 'near':
      return acuities('unva', block, plan, context);
    case 'intermediate':
      return acuities('uiva', block, plan, context);
    case 'totalCorneas':
      return numbers(['total_corneal_cylinder', 'total_corneal_axis'], block, context);
    case 'posteriorCorneas':
      return numbers(['posterior_corneal_cylinder', 'posterior_corneal_axis'], block, context);
    case 'lensAxes':
      return numbers(['lens_axis'], block, context);
    case 'endothelia':
      return numbers(['ecd'], block, context);
    case 'pressures':
      return numbers(['iop'], block, context);
    case 'thicknesses':
      return numbers(['cct'], block, context);
  }
}
