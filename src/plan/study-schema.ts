import { z } from 'zod';
import { plan as words } from '../words/en/plan.js';
import { conditionShape } from './condition-schema.js';
import { anyNumber, choice, list, named, number, oneOrMany, pair, section, text, whole, wordList } from './leaves.js';

const { keys, expected } = words;

/** The visit of an audit that declares none. */
export const defaultVisit = 'outcome';

const visit = section({
  name: text.describe(keys.follow_up.visit_name).meta({ examples: ['1 month'] }),
  days: pair(whole(0, 36_500))
    .describe(keys.follow_up.days)
    .meta({ examples: [[21, 45]] })
    .optional(),
  aim: number(0, 36_500).describe(keys.follow_up.aim).optional(),
  labels: wordList(keys.follow_up.labels)
    .meta({ examples: [['1M', '4w']] })
    .prefault([]),
});

export const followUp = section({
  visits: list(visit)
    .min(1, expected.list)
    .describe(keys.follow_up.visits)
    .prefault([{ name: defaultVisit, days: [28, 120] }]),
  before: section({
    within_days: whole(1, 36_500).describe(keys.follow_up.within_days).prefault(400),
    labels: wordList(keys.follow_up.before_labels).prefault([]),
  })
    .describe(keys.follow_up.before)
    .prefault({}),
  day_of_surgery: choice(['neither', 'before', 'after']).describe(keys.follow_up.day_of_surgery).prefault('neither'),
  outcome: oneOrMany(text)
    .describe(keys.follow_up.outcome)
    .meta({ examples: ['1 month'] })
    .optional(),
  visit_by: choice(['date', 'label']).describe(keys.follow_up.visit_by).prefault('date'),
  after_second_operation: choice(['leave-out', 'keep'])
    .describe(keys.follow_up.after_second_operation)
    .prefault('leave-out'),
});

export const eligibility = section({
  preset: choice(['none', 'publication']).describe(keys.eligibility.preset).prefault('none'),
  eyes_per_patient: choice(['both', 'first', 'right', 'left', 'random'])
    .describe(keys.eligibility.eyes_per_patient)
    .prefault('both'),
  exclude: list(section({ ...conditionShape, reason: text.describe(keys.eligibility.reason) }))
    .describe(keys.eligibility.exclude)
    .meta({ examples: [[{ where: 'axial_length', above: 30, reason: 'Axial length over 30 mm' }]] })
    .prefault([]),
});

export const cohorts = section({
  by: text
    .describe(keys.cohorts.by)
    .meta({ examples: ['technique'] })
    .optional(),
  define: list(section({ ...conditionShape, name: text.describe(keys.cohorts.name) }))
    .describe(keys.cohorts.define)
    .meta({ examples: [[{ name: 'after the change', where: 'surgery_date', at_least: '2025-06-01' }]] })
    .prefault([]),
  reference: text
    .describe(keys.cohorts.reference)
    .meta({ examples: ['manual'] })
    .optional(),
  compare: wordList(keys.cohorts.compare).prefault([]),
});

export const predictions = section({
  primary_formula: text
    .describe(keys.predictions.primary_formula)
    .meta({ examples: ['planned'] })
    .optional(),
  recompute: oneOrMany(choice(['SRK/T', 'Holladay 1', 'Hoffer Q', 'Haigis']), 0)
    .describe(keys.predictions.recompute)
    .prefault([]),
  constants: named(named(anyNumber))
    .describe(keys.predictions.constants)
    .meta({ examples: [{ A1: { 'SRK/T': 118.9 } }] })
    .prefault({}),
  incision_effect: section({
    magnitude: number(0, 5)
      .describe(keys.predictions.magnitude)
      .meta({ examples: [0.3] }),
    at: choice(['incision']).describe(keys.predictions.at),
  })
    .describe(keys.predictions.incision_effect)
    .optional(),
});

const eachEyeOrRatio = z.union([choice(['each-eye']), number(0.1, 2)], { error: expected.eachEyeOrRatio });

export const policies = section({
  vertex_mm: number(0, 20).describe(keys.policies.vertex_mm).prefault(12),
  vertex: choice(['as-recorded', 'to-formula']).describe(keys.policies.vertex).prefault('as-recorded'),
  lane: choice(['as-recorded', 'to-infinity']).describe(keys.policies.lane).prefault('as-recorded'),
  lens_plane_ratio: eachEyeOrRatio.describe(keys.policies.lens_plane_ratio).prefault('each-eye'),
});

const logMar = number(1, 5);

export const acuity = section({
  low_vision: section({
    count_fingers: logMar.describe(keys.acuity.count_fingers).prefault(1.9),
    hand_movements: logMar.describe(keys.acuity.hand_movements).prefault(2.3),
    light_perception: logMar.describe(keys.acuity.light_perception).prefault(2.7),
    no_light_perception: logMar.describe(keys.acuity.no_light_perception).prefault(3),
  })
    .describe(keys.acuity.low_vision)
    .prefault({}),
  distance_target: pair(number(-10, 10)).describe(keys.acuity.distance_target).prefault([-0.5, 0.5]),
});
