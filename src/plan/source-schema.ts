import { z } from 'zod';
import { plan as words } from '../words/en/plan.js';
import { condition } from './condition-schema.js';
import { type Field, fields, type ReadingKey } from './fields.js';
import { choice, exactly, list, named, number, oneOrMany, section, text, whole, yesNo } from './leaves.js';

const { keys, expected } = words;

/** A column as written in its long form. */
export interface ColumnForm {
  column?: string | undefined;
  position?: number | undefined;
  occurrence?: number | undefined;
  unit?: 'D' | 'mm' | 'deg' | 'clock' | undefined;
  index?: number | undefined;
  view?: 'facing' | 'surgeon-superior' | 'surgeon-temporal' | undefined;
  numbers?: 'decimal' | 'logmar' | 'letters' | undefined;
  notation?: 'signed' | 'minus' | 'plus' | undefined;
  plane?: 'corneal' | 'spectacle' | undefined;
  from?: 'front' | 'back' | undefined;
  words?: Record<string, string[]> | undefined;
  type?: 'number' | 'category' | undefined;
}

const whereItStands = {
  column: text.describe(keys.column.column).optional(),
  position: whole(1, 100_000).describe(keys.column.position).optional(),
  occurrence: whole(1, 1000).describe(keys.column.occurrence).optional(),
};

/** The keys that say how the cells of this field are read. */
function readingKeys(field: Field): Record<ReadingKey, z.ZodType> {
  const wordLists = (field.values ?? []).map((value) => [value, oneOrMany(text).optional()] as const);
  return {
    unit: choice(field.units).describe(keys.column.unit),
    index: number(1.3, 1.4)
      .describe(keys.column.index)
      .meta({ examples: [1.332] }),
    view: choice(['facing', 'surgeon-superior', 'surgeon-temporal']).describe(keys.column.view),
    numbers: choice(['decimal', 'logmar', 'letters']).describe(keys.column.numbers),
    notation: choice(field.notations).describe(keys.column.notation),
    plane: choice(['corneal', 'spectacle']).describe(keys.column.plane),
    from: choice(['front', 'back']).describe(keys.column.from),
    words: section(Object.fromEntries(wordLists)).describe(keys.column.words),
  };
}

/** Every key that the long form of some column knows. */
export const columnKeys: readonly string[] = [
  ...Object.keys(whereItStands),
  ...new Set(fields.flatMap((field) => field.keys)),
  'type',
];

const oneWay = (form: ColumnForm): boolean => (form.column === undefined) !== (form.position === undefined);
const clockHasView = (form: ColumnForm): boolean => (form.unit === 'clock') === (form.view !== undefined);
const indexIsOfDioptres = (form: ColumnForm): boolean => form.index === undefined || form.unit !== 'mm';

/** A header, or the long form with these keys; the long form either way. */
function columnSchema(shape: Record<string, z.ZodType>, needsLongForm: readonly string[]): z.ZodType<ColumnForm> {
  const form = needsLongForm.length > 0 ? expected.columnWith(needsLongForm) : expected.column;
  const long = section(shape, form) as z.ZodType<ColumnForm>;
  const checked = long
    .refine(oneWay, expected.columnOrPosition)
    .refine(clockHasView, expected.clockWithView)
    .refine(indexIsOfDioptres, expected.indexOfDioptres);
  if (needsLongForm.length > 0) return checked;
  const header = text.transform((column): ColumnForm => ({ column }));
  return z.union([header, checked], { error: form });
}

function fieldColumn(field: Field): z.ZodType<ColumnForm> {
  const all = readingKeys(field);
  const own = field.keys.map((key) => [key, field.required.includes(key) ? all[key] : all[key].optional()]);
  return columnSchema({ ...whereItStands, ...Object.fromEntries(own) }, field.required);
}

/** Fields whose columns are written alike share one schema, so that the JSON Schema stays short. */
const forms = new Map<string, z.ZodType<ColumnForm>>();

function sharedFieldColumn(field: Field): z.ZodType<ColumnForm> {
  const signature = JSON.stringify([field.keys, field.values, field.units, field.notations, field.required]);
  const known = forms.get(signature);
  if (known) return known;
  const made = fieldColumn(field).meta({ id: `column_like_${field.name}` });
  forms.set(signature, made);
  return made;
}

const fieldShape = Object.fromEntries(
  fields.map((field) => [field.name, sharedFieldColumn(field).optional().describe(words.field(field))]),
);

const columns = z
  .strictObject(fieldShape, { error: (issue) => (issue.code === 'invalid_type' ? expected.columns : undefined) })
  .meta({ id: 'columns', description: keys.sources.columns, examples: [{ patient: 'Case', eye: 'Side' }] });

const covariate = columnSchema(
  { ...whereItStands, type: choice(['number', 'category']).describe(keys.column.type).optional() },
  [],
);

const encodings = [
  'auto',
  'utf-8',
  'utf-16',
  ...Array.from({ length: 9 }, (_, i) => `windows-125${i}`),
  ...[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 14, 15, 16].map((part) => `iso-8859-${part}`),
];

/** How files are read; every key may be left out, here and in one source. */
export const reading = section({
  delimiter: choice(['auto', 'comma', 'semicolon', 'tab', 'pipe']).describe(keys.reading.delimiter).optional(),
  decimal: choice(['auto', 'point', 'comma']).describe(keys.reading.decimal).optional(),
  date_order: choice(['auto', 'day-first', 'month-first', 'year-first']).describe(keys.reading.date_order).optional(),
  encoding: choice(encodings).describe(keys.reading.encoding).optional(),
  header_row: whole(1, 1000).describe(keys.reading.header_row).optional(),
  units_row: z
    .union([choice(['auto']), yesNo], { error: expected.oneOf(['auto', 'yes', 'no']) })
    .describe(keys.reading.units_row)
    .optional(),
  missing: oneOrMany(text)
    .describe(keys.reading.missing)
    .meta({ examples: [['n.e.', 'not done']] })
    .optional(),
});

const block = {
  holds: choice(['surgery', 'eye', 'exam', 'prediction']).describe(keys.sources.holds),
  visit: text
    .describe(keys.sources.visit)
    .meta({ examples: ['before'] })
    .optional(),
  formula: text
    .describe(keys.sources.formula)
    .meta({ examples: ['SRK/T'] })
    .optional(),
  columns,
  constants: named(text)
    .describe(keys.sources.constants)
    .meta({ examples: [{ vertex_mm: 12 }] })
    .optional(),
  covariates: named(covariate).describe(keys.sources.covariates).optional(),
  only: list(condition).describe(keys.sources.only).optional(),
  blank_means: named(text)
    .describe(keys.sources.blank_means)
    .meta({ examples: [{ cylinder: 0 }] })
    .optional(),
};

/** One file or family of like files. */
export const source = section({
  file: oneOrMany(text)
    .describe(keys.sources.file)
    .meta({ examples: ['theatre-list.csv'] }),
  ...block,
  holds: block.holds.optional(),
  columns: block.columns.optional(),
  blocks: list(section(block)).min(1, expected.list).describe(keys.sources.blocks).optional(),
  letters_per_line: exactly(5).describe(keys.sources.letters_per_line).optional(),
  lens_power_is: choice(['se', 'sphere']).describe(keys.sources.lens_power_is).prefault('se'),
  reading: reading.describe(keys.sources.reading).optional(),
});
