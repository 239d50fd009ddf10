import { equivalent } from '../devices.js';
import { residual } from '../outcomes.js';
import type { SeriesEye } from '../series.js';
import { mean } from '../sums.js';
import { SERIES } from '../truth.js';
import { CENTROID, type Effect, type Part } from './effect.js';

type Sample = readonly SeriesEye[];
type SeriesEffect = Effect<Sample>;

const error = ({ after, predicted }: SeriesEye) => equivalent(after.refraction) - predicted;

function residualCentroid(part: Part): SeriesEffect {
  const value = (vertex?: number) => (eye: SeriesEye) => residual(eye.after.refraction, vertex)[part];
  return {
    measure: 'refractive_cylinder_after',
    group: 'all',
    statistic: CENTROID[part],
    planted: (part === 0 ? SERIES.residual.horizontal : SERIES.residual.oblique).toFixed(2),
    of: (sample) => mean(sample.map(value())),
    mistakes: part === 0 ? { 'vertex distance left out': (sample: Sample) => mean(sample.map(value(0))) } : {},
  };
}

export const SERIES_EFFECTS: readonly SeriesEffect[] = [
  {
    measure: 'prediction_error',
    group: 'all',
    statistic: 'mean',
    planted: SERIES.meanError.toFixed(2),
    of: (sample) => mean(sample.map(error)),
    mistakes: { 'sign turned': (sample) => -mean(sample.map(error)) },
  },
  residualCentroid(0),
  residualCentroid(1),
];
