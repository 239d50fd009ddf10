import { z } from 'zod';
import { plan as words } from '../words/en/plan.js';
import {
  anyNumber,
  choice,
  list,
  named,
  number,
  oneOrMany,
  pair,
  patterned,
  section,
  text,
  whole,
  wordList,
} from './leaves.js';
import { artworkNames, figureNames, publishedNames } from './published.js';

const { keys, expected } = words;

const share = number(0.0001, 0.9999);

const statisticName = patterned(/^[^/]+\/.+$/, expected.statistic).meta({
  examples: ['prediction_error/share_within_0.50'],
});

const limits = section({
  possible: pair(anyNumber)
    .describe(keys.quality.possible)
    .meta({ examples: [[18, 38]] })
    .optional(),
  usual: pair(anyNumber)
    .describe(keys.quality.usual)
    .meta({ examples: [[20.5, 28]] })
    .optional(),
  reason: text.describe(keys.quality.limit_reason).optional(),
});

export const quality = section({
  limits: named(limits).describe(keys.quality.limits).prefault({}),
  off: list(section({ rule: text.describe(keys.quality.rule), reason: text.describe(keys.quality.off_reason) }))
    .describe(keys.quality.off)
    .meta({ examples: [[{ rule: 'lens-power-step', reason: 'Powers in thirds of a dioptre' }]] })
    .prefault([]),
  answers: wordList(keys.quality.answers)
    .meta({ examples: [['queries-answered.csv']] })
    .prefault([]),
});

const margins = named(number(0.0001, 1000));

export const statistics = section({
  confidence: number(0.5, 0.9999)
    .describe(keys.statistics.confidence)
    .meta({ examples: [0.95] })
    .prefault(0.95),
  seed: whole(0, 2 ** 32 - 1)
    .describe(keys.statistics.seed)
    .prefault(1),
  primary: oneOrMany(statisticName)
    .describe(keys.statistics.primary)
    .meta({ examples: [['prediction_error/share_within_0.50']] })
    .prefault(['prediction_error/share_within_0.50']),
  margins: margins
    .describe(keys.statistics.margins)
    .meta({ examples: [{ 'prediction_error/share_within_0.50': 0.05 }] })
    .prefault({}),
  differences: margins.describe(keys.statistics.differences).prefault({}),
  adjust_for: wordList(keys.statistics.adjust_for).prefault([]),
});

export const monitoring = section({
  outcome: statisticName.describe(keys.monitoring.outcome),
  acceptable: share.describe(keys.monitoring.acceptable).meta({ examples: [0.75] }),
  unacceptable: share.describe(keys.monitoring.unacceptable).meta({ examples: [0.65] }),
  false_alarm: share.describe(keys.monitoring.false_alarm).prefault(0.05),
});

export const benchmarks = section({
  published: z
    .union([choice(['all', 'none']), list(text)], { error: expected.allNoneOrList })
    .describe(keys.benchmarks.published)
    .prefault('all'),
  former_report: text
    .describe(keys.benchmarks.former_report)
    .meta({ examples: ['reports/cataract-2024'] })
    .optional(),
});

const profileName = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** A profile of artwork of the reader's own. */
const profile = section({
  width_mm: number(40, 1000).describe(keys.profile.width_mm),
  type_pt: number(6, 40).describe(keys.profile.type_pt).prefault(7.5),
  dpi: whole(72, 1200).describe(keys.profile.dpi).prefault(300),
  tiff_dpi: whole(72, 1200).describe(keys.profile.tiff_dpi).prefault(1000),
  colours: choice(['colour', 'okabe-ito', 'grey']).describe(keys.profile.colours).prefault('colour'),
});

/** Figures that become panels of one. */
const panelFigure = section({
  name: patterned(profileName, expected.profileName).describe(keys.panel.name),
  figures: list(choice(figureNames)).min(2, expected.twoFigures).describe(keys.panel.figures),
  columns: whole(1, 3).describe(keys.panel.columns).prefault(2),
  artwork: text.describe(keys.panel.artwork).prefault('journal-double'),
});

const published = oneOrMany(choice(publishedNames), 0);

export const outputs = section({
  folder: text.describe(keys.outputs.folder).prefault('reports'),
  language: choice(['en']).describe(keys.outputs.language).prefault('en'),
  artwork: text.describe(keys.outputs.artwork).meta({ examples: artworkNames }).prefault('journal-single'),
  profiles: named(profile, profileName, expected.profileName)
    .describe(keys.outputs.profiles)
    .meta({ examples: [{ 'my-journal': { width_mm: 90, dpi: 600 } }] })
    .prefault({}),
  panels: list(panelFigure)
    .describe(keys.outputs.panels)
    .meta({ examples: [[{ name: 'accuracy', figures: ['prediction-error', 'accuracy-shares'] }]] })
    .prefault([]),
  tables: oneOrMany(choice(['csv', 'md', 'docx', 'tex']))
    .describe(keys.outputs.tables)
    .prefault(['csv', 'md']),
  table_font: text.describe(keys.outputs.table_font).prefault('Times New Roman'),
  figures: oneOrMany(choice(['svg', 'png', 'pdf', 'tiff']))
    .describe(keys.outputs.figures)
    .prefault(['svg', 'png']),
  spreadsheet: choice(['point', 'comma']).describe(keys.outputs.spreadsheet).optional(),
  small_cells: whole(0, 1000).describe(keys.outputs.small_cells).prefault(0),
  operator_min_eyes: whole(0, 100_000).describe(keys.outputs.operator_min_eyes).prefault(50),
  eye_rows: choice(['auto', 'always', 'never']).describe(keys.outputs.eye_rows).prefault('auto'),
  order: published
    .describe(keys.outputs.order)
    .meta({ examples: [['baseline', 'eye-flow']] })
    .prefault([]),
  leave_out: published.describe(keys.outputs.leave_out).prefault([]),
});
