import type { VectorId } from '../tables/vectors.js';

/** A figure of planes side by side, one a vector. */
export interface VectorFigure {
  id:
    | 'double-angle'
    | 'double-angle-cornea'
    | 'double-angle-induced'
    | 'induced-incision'
    | 'double-angle-error'
    | 'double-angle-toric';
  panels: readonly VectorId[];
  /** A state and what became of it: hollow marks, then filled ones. */
  pair: boolean;
  /** Directions are meridians of the eye, or angles from its incision. */
  frame: 'eye' | 'incision';
}

/** The double-angle plots of a report. */
export const vectorFigures: readonly VectorFigure[] = [
  {
    id: 'double-angle',
    panels: ['corneal_cylinder_before', 'refractive_cylinder_after'],
    pair: true,
    frame: 'eye',
  },
  {
    id: 'double-angle-cornea',
    panels: ['corneal_cylinder_before', 'corneal_cylinder_after'],
    pair: true,
    frame: 'eye',
  },
  { id: 'double-angle-induced', panels: ['induced_right', 'induced_left'], pair: false, frame: 'eye' },
  { id: 'induced-incision', panels: ['induced_in_incision_frame'], pair: false, frame: 'incision' },
  {
    id: 'double-angle-error',
    panels: ['cylinder_prediction_error', 'cylinder_prediction_error:toric'],
    pair: false,
    frame: 'eye',
  },
  { id: 'double-angle-toric', panels: ['split_predicted', 'split_residual'], pair: true, frame: 'eye' },
];
