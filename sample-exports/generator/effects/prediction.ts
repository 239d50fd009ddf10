import { type Outcome, predictionError, secondError, targetError } from '../outcomes.js';
import { correlation, mean, shareWithin, standardDeviation } from '../sums.js';
import { EYE_SD, LENS_OFFSET, MEAN_ERROR, PATIENT_SD, SECOND_FORMULA, type Technique } from '../truth.js';
import type { Effect } from './effect.js';

type Sample = readonly Outcome[];
type PredictionEffect = Effect<Sample>;

const HALF = 0.5;

function cohort(technique: Technique): (sample: Sample) => Outcome[] {
  return (sample) => sample.filter(({ eye }) => eye.operation.technique === technique);
}

/** Mean, spread and share of one cohort, against those of the other. */
function cohortEffects(technique: Technique): PredictionEffect[] {
  const mine = cohort(technique);
  const other = cohort(technique === 'manual' ? 'laser-assisted' : 'manual');
  const errors = (of: (sample: Sample) => Outcome[]) => (sample: Sample) => of(sample).map(predictionError);
  const meanOf = (sample: Sample) => mean(errors(mine)(sample));
  const aimed = (sample: Sample) => mean(mine(sample).map(targetError));
  const common = { measure: 'prediction_error', group: `technique=${technique}` };
  return [
    {
      ...common,
      statistic: 'mean',
      planted: MEAN_ERROR[technique].toFixed(2),
      of: meanOf,
      mistakes: {
        'target taken for the prediction': aimed,
        'sign turned': (sample) => -meanOf(sample),
        'cohorts exchanged': (sample) => mean(errors(other)(sample)),
      },
    },
    {
      ...common,
      statistic: 'sd',
      planted: `${PATIENT_SD} shared, ${EYE_SD[technique]} each`,
      of: (sample) => standardDeviation(errors(mine)(sample)),
      mistakes: { 'cohorts exchanged': (sample) => standardDeviation(errors(other)(sample)) },
    },
    {
      ...common,
      statistic: 'share_within_0.50',
      of: (sample) => shareWithin(errors(mine)(sample), HALF),
      mistakes: { 'cohorts exchanged': (sample) => shareWithin(errors(other)(sample), HALF) },
    },
    {
      ...common,
      measure: 'target_error',
      statistic: 'mean',
      of: aimed,
      mistakes: { 'prediction taken for the target': meanOf },
    },
  ];
}

function grouped(sample: Sample, nameOf: (outcome: Outcome, index: number) => string): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  sample.forEach((outcome, index) => {
    const name = nameOf(outcome, index);
    const group = groups.get(name);
    if (group) group.push(predictionError(outcome));
    else groups.set(name, [predictionError(outcome)]);
  });
  return groups;
}

const fellowEyes: PredictionEffect = {
  measure: 'prediction_error',
  group: 'all',
  statistic: 'icc',
  of: (sample) => correlation(grouped(sample, ({ eye }) => eye.patient.code)),
  mistakes: {
    'eyes paired by row, not by patient': (sample) =>
      correlation(grouped(sample, (_, index) => `${index % Math.ceil(sample.length / 2)}`)),
  },
};

const secondFormula: PredictionEffect = {
  measure: 'prediction_error:second',
  group: 'all',
  statistic: 'mean',
  planted: `planned − ${SECOND_FORMULA.offset.toFixed(2)}`,
  of: (sample) => mean(sample.map(secondError)),
  mistakes: { "the planned formula's taken": (sample) => mean(sample.map(predictionError)) },
};

function lensEffect(model: string, other: string): PredictionEffect {
  const errors = (worn: string) => (sample: Sample) =>
    mean(sample.filter(({ eye }) => eye.plan.model === worn).map(predictionError));
  return {
    measure: 'prediction_error',
    group: `lens_model=${model}`,
    statistic: 'mean',
    planted: `offset ${(LENS_OFFSET[model] ?? 0).toFixed(2)}`,
    of: errors(model),
    mistakes: { [`read as ${other}`]: errors(other) },
  };
}

export const PREDICTION_EFFECTS: readonly PredictionEffect[] = [
  ...cohortEffects('manual'),
  ...cohortEffects('laser-assisted'),
  fellowEyes,
  secondFormula,
  lensEffect('A1', 'B2'),
  lensEffect('B2', 'A1'),
];
