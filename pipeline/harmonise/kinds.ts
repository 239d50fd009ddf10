import { steepMeridian } from '../../src/optics/keratometry.js';
import type { Kind } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import { acuities } from './acuities.js';
import { type Block, mappedColumn } from './blocks.js';
import { axisIn, isUnread, type NumberCells, nothing, numberCells } from './cells.js';
import type { KindReader } from './measurement-rows.js';
import type { ReadContext } from './read-context.js';
import { refractions } from './refractions.js';

const isMissing = Number.isNaN;

/** Flat and steep power with the steep meridian, whichever of the three forms a block maps. */
function keratometries(block: Block, context: ReadContext): KindReader | undefined {
  const forms = [
    ['k1', 'k1_axis', 'k2', 'k2_axis'],
    ['k_flat', '', 'k_steep', 'k_steep_axis'],
    ['k_mean', '', 'k_cylinder', 'k_cylinder_axis'],
  ];
  const form = forms.find(([first = '']) => mappedColumn(block, first));
  if (!form) return undefined;
  const [one, oneAxis, other, otherAxis] = form.map((field) => numberCells(block, field, context) ?? nothing) as [
    NumberCells,
    NumberCells,
    NumberCells,
    NumberCells,
  ];
  const isMean = form[0] === 'k_mean';
  return (row) => {
    const half = Math.abs(other(row)) / 2;
    const [k1, k2] = isMean ? [one(row) - half, one(row) + half] : [one(row), other(row)];
    const unread = isUnread(one, row) || isUnread(other, row);
    if (isMissing(k1) && isMissing(k2) && !unread) return undefined;
    const steepAxis = steepMeridian(k1, axisIn(oneAxis(row)), k2, axisIn(otherAxis(row)));
    return { own: [Math.min(k1, k2), Math.max(k1, k2), steepAxis], unread };
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
    const unread = isUnread(cells[0] ?? nothing, row);
    return isMissing(own[0] as number) && !unread ? undefined : { own, unread };
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
