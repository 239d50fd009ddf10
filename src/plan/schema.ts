import { z } from 'zod';
import { plan as words } from '../words/en/plan.js';
import {
  anyNumber,
  day,
  dayOrYear,
  exactly,
  list,
  named,
  oneOrMany,
  patterned,
  section,
  text,
  wordList,
  yesNo,
} from './leaves.js';
import { benchmarks, monitoring, outputs, quality, statistics } from './report-schema.js';
import { reading, source } from './source-schema.js';
import { acuity, cohorts, eligibility, followUp, policies, predictions } from './study-schema.js';

const { keys, expected } = words;

const ownName = /^[a-z0-9_-]+$/;

const edges = list(anyNumber)
  .min(1, expected.edges)
  .refine((values) => values.every((edge, i) => i === 0 || edge > (values[i - 1] as number)), expected.edges);

const reviewed = section({
  file: text.describe(keys.identifiers_reviewed.file),
  column: text.describe(keys.identifiers_reviewed.column),
  reason: text.describe(keys.identifiers_reviewed.reason),
});

/** Every key of audit.yaml, its form and its default; what keys have to do with one another: `checks/`. */
export const auditSchema = section({
  format: exactly(1)
    .describe(keys.format)
    .meta({ examples: [1] }),
  title: text.describe(keys.title).meta({ examples: ['Cataract outcomes 2025'] }),
  name: patterned(ownName, expected.name)
    .describe(keys.name)
    .meta({ examples: ['cataract-2025'] })
    .optional(),
  period: section({
    from: dayOrYear
      .describe(keys.period.from)
      .meta({ examples: ['2025-01-01'] })
      .optional(),
    to: dayOrYear
      .describe(keys.period.to)
      .meta({ examples: ['2025-12-31'] })
      .optional(),
  })
    .describe(keys.period.all)
    .prefault({}),
  data_until: day
    .describe(keys.data_until)
    .meta({ examples: ['2026-03-31'] })
    .optional(),
  allow_outside: yesNo.describe(keys.allow_outside).prefault('no'),
  sources: list(source).min(1, expected.list).describe(keys.sources.all),
  reading: reading.describe(keys.reading.all).prefault({}),
  values: named(named(oneOrMany(text)))
    .describe(keys.values)
    .meta({ examples: [{ technique: { manual: ['M', 'man.'] } }] })
    .prefault({}),
  complications: named(oneOrMany(text), ownName, expected.name)
    .describe(keys.complications)
    .meta({ examples: [{ posterior_capsule_rupture: ['PCR'] }] })
    .prefault({}),
  prefer: wordList(keys.prefer).prefault([]),
  identifiers_reviewed: list(reviewed).describe(keys.identifiers_reviewed.all).prefault([]),
  follow_up: followUp.describe(keys.follow_up.all).prefault({}),
  eligibility: eligibility.describe(keys.eligibility.all).prefault({}),
  cohorts: cohorts.describe(keys.cohorts.all).prefault({}),
  subgroups: wordList(keys.subgroups).prefault(['lens_model', 'surgeon', 'year', 'axial_length', 'k_mean']),
  bands: named(edges)
    .describe(keys.bands)
    .meta({ examples: [{ axial_length: [22, 24.5, 26] }] })
    .prefault({}),
  predictions: predictions.describe(keys.predictions.all).prefault({}),
  policies: policies.describe(keys.policies.all).prefault({}),
  acuity: acuity.describe(keys.acuity.all).prefault({}),
  quality: quality.describe(keys.quality.all).prefault({}),
  statistics: statistics.describe(keys.statistics.all).prefault({}),
  monitoring: monitoring.describe(keys.monitoring.all).optional(),
  benchmarks: benchmarks.describe(keys.benchmarks.all).prefault({}),
  outputs: outputs.describe(keys.outputs.all).prefault({}),
});

/** audit.yaml of the right form, defaults filled in. */
export type AuditFile = z.output<typeof auditSchema>;

/** Examples that zod leaves out where a text becomes a number or a list: readers write the text. */
function withExamples({
  zodSchema,
  jsonSchema,
}: {
  zodSchema: z.core.$ZodType;
  jsonSchema: { examples?: unknown };
}): void {
  const examples = z.globalRegistry.get(zodSchema)?.examples;
  if (examples) jsonSchema.examples = examples;
}

/** JSON Schema of audit.yaml, by which editors complete and explain its keys. */
export function auditJsonSchema(): object {
  const described = auditSchema.meta({ title: words.schemaTitle, description: words.schemaDescription });
  return z.toJSONSchema(described, { io: 'input', target: 'draft-7', reused: 'inline', override: withExamples });
}
