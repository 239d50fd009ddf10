import { parseRefraction } from '../../src/intake/refraction-cell.js';
import { plusAxis, plusSphere, type Spherocylinder } from '../../src/optics/transposition.js';
import { millionths } from '../../src/units.js';
import { type Block, type Mapped, mappedColumn } from './blocks.js';
import { axisIn, isUnread, type NumberCells, nothing, numberCells } from './cells.js';
import type { KindReader } from './measurement-rows.js';
import type { ReadContext } from './read-context.js';
import { tellUnreadable } from './unreadable.js';

const toMillionth = (value: number): number => millionths(value) / 1e6;

/** Sphere, cylinder and axis of every row as recorded. */
type Recorded = readonly [sphere: NumberCells, cylinder: NumberCells, axis: NumberCells];

/** A refraction written in one cell, once a word; its three numbers are judged by the rules like columns of their own. */
function fromOneColumn(block: Block, column: Mapped, context: ReadContext): Recorded {
  const { words, codes } = column.words;
  const unreadable = new Uint8Array(words.length);
  const refractions = words.map((word, code) => {
    if (block.isMissing(word)) return undefined;
    const refraction = parseRefraction(word, block.raw.read.decimal);
    if (!refraction) unreadable[code] = 1;
    return refraction;
  });
  tellUnreadable(
    block,
    column,
    unreadable,
    { rule: 'number-unreadable', effect: 'refraction left out', as: 'number' },
    context,
  );
  const sign = { minus: -1, plus: 1, signed: 0 }[column.plan.notation ?? 'signed'];
  const signed = (cylinder: number): number => (sign === 0 ? cylinder : sign * Math.abs(cylinder));
  const part = (field: keyof Spherocylinder, of: (value: number) => number): NumberCells => {
    const values = Float64Array.from(refractions, (refraction) => (refraction ? of(refraction[field]) : Number.NaN));
    const { source, block: index } = block;
    context.readings.push({
      source,
      block: index,
      field,
      column: column.header,
      words: column.words,
      values,
      eyes: context.eyes,
    });
    return Object.assign((row: number) => values[codes[row] as number] as number, {
      isUnread: (row: number) => unreadable[codes[row] as number] === 1,
    });
  };
  const asWritten = (value: number): number => value;
  return [part('sphere', asWritten), part('cylinder', signed), part('axis', asWritten)];
}

function recordedRefraction(block: Block, context: ReadContext): Recorded | undefined {
  const column = mappedColumn(block, 'refraction');
  if (column) return fromOneColumn(block, column, context);
  const [sphere, cylinder, axis] = ['sphere', 'cylinder', 'axis'].map((field) => numberCells(block, field, context));
  return sphere || cylinder ? [sphere ?? nothing, cylinder ?? nothing, axis ?? nothing] : undefined;
}

/** A blank sphere or cylinder beside the other one, as the source declares it; missing unless it does. */
function filled(of: NumberCells, row: number, other: number, meaning: string | number | undefined): number {
  const value = of(row);
  const isBlank = Number.isNaN(value) && !isUnread(of, row);
  return isBlank && !Number.isNaN(other) && meaning !== undefined ? Number(meaning) : value;
}

/**
 * Refractions in plus notation, rounded to 1e-6 D, so that the other notation gives the same bits; the cylinder as
 * recorded stands beside.
 */
export function refractions(block: Block, context: ReadContext): KindReader | undefined {
  const recorded = recordedRefraction(block, context);
  if (!recorded) return undefined;
  const [sphereOf, cylinderOf, axisOf] = recorded;
  const vertexOf = numberCells(block, 'vertex_mm', context) ?? nothing;
  const laneOf = numberCells(block, 'lane_m', context) ?? nothing;
  // No measurement holds it: the rules compare what was written with sphere and cylinder.
  numberCells(block, 'supplied_se', context);
  const { sphere: blankSphere, cylinder: blankCylinder } = block.plan.blank_means;
  return (row) => {
    const unread = isUnread(sphereOf, row) || isUnread(cylinderOf, row);
    if (Number.isNaN(sphereOf(row)) && Number.isNaN(cylinderOf(row)) && !unread) return undefined;
    const sphere = filled(sphereOf, row, cylinderOf(row), blankSphere);
    const cylinder = filled(cylinderOf, row, sphereOf(row), blankCylinder);
    const axis = axisOf(row);
    const axisGiven = !Number.isNaN(axis) || isUnread(axisOf, row);
    const size = toMillionth(Math.abs(cylinder));
    const canonical = [toMillionth(plusSphere(sphere, cylinder)), size, plusAxis(cylinder, axisIn(axis))];
    return { own: [...canonical, size, vertexOf(row), laneOf(row)], axisGiven, unread };
  };
}
