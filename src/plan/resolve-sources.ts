import { plannedFormula } from '../predictions/primary.js';
import type { BlockPlan, ColumnPlan, Holds, Reading, SourcePlan } from '../records/plan.js';
import { type DocumentNode, type Path, placeAt } from './document.js';
import { fieldNamed, isNumeric } from './fields.js';
import { writtenNumber } from './leaves.js';
import { columnSubjects, resolveCondition } from './resolve-conditions.js';
import type { AuditFile } from './schema.js';
import type { ColumnForm } from './source-schema.js';
import { standardReading } from './standard-reading.js';

type SourceForm = AuditFile['sources'][number];
type BlockForm = NonNullable<SourceForm['blocks']>[number];
type Given = Readonly<Record<string, ColumnForm | undefined>>;

/** A file's own way of reading over the audit's over the standard. */
function resolveReading(...overruling: readonly (SourceForm['reading'] | undefined)[]): Reading {
  const given = overruling.flatMap((form) => Object.entries(form ?? {})).filter(([, value]) => value !== undefined);
  return { ...standardReading, ...Object.fromEntries(given) };
}

function columnPlan(field: string, form: ColumnForm, line: number): ColumnPlan {
  return {
    field,
    column: form.column,
    position: form.position,
    occurrence: form.occurrence,
    unit: form.unit,
    index: form.index,
    view: form.view,
    numbers: form.numbers,
    notation: form.notation,
    plane: form.plane,
    from: form.from,
    words: form.words,
    type: form.type,
    line,
  };
}

/** Columns as written under this path, each with its line. */
function columnPlans(forms: Given | undefined, path: Path, root: DocumentNode): readonly ColumnPlan[] {
  return Object.entries(forms ?? {}).flatMap(([field, form]) =>
    form ? [columnPlan(field, form, placeAt(root, [...path, field]).line)] : [],
  );
}

/** A value of a field as a number where the field holds numbers. */
function fieldValue([name, text]: readonly [string, string]): readonly [string, string | number] {
  const field = fieldNamed(name);
  return [name, field && isNumeric(field) ? (writtenNumber(text) ?? text) : text];
}

const fits = (field: string, holds: Holds): boolean => fieldNamed(field)?.holds.includes(holds) ?? false;

/** Values of fields: shared ones that fit the rows and are not overruled, then the block's own. */
function values(
  shared: Readonly<Record<string, string>>,
  own: Readonly<Record<string, string>>,
  keep: (field: string) => boolean,
) {
  const kept = Object.entries(shared).filter(([field]) => keep(field));
  return Object.fromEntries([...kept, ...Object.entries(own)].map(fieldValue));
}

function blockPlan(form: BlockForm, path: Path, source: SourceForm, at: Path, root: DocumentNode): BlockPlan {
  const overruled = { ...form.columns, ...form.constants };
  const keep = (field: string): boolean => fits(field, form.holds) && !Object.hasOwn(overruled, field);
  const shared = columnPlans(source.columns, [...at, 'columns'], root).filter(({ field }) => keep(field));
  const columns = [...shared, ...columnPlans(form.columns, [...path, 'columns'], root)];
  const isMapped = (field: string): boolean => columns.some((column) => column.field === field);
  const perEye = form.holds === 'surgery' || form.holds === 'eye';
  const covariates = perEye ? columnPlans(source.covariates, [...at, 'covariates'], root) : [];
  return {
    holds: form.holds,
    visit: form.visit,
    formula: form.formula ?? plannedFormula,
    columns,
    covariates: [...covariates, ...columnPlans(form.covariates, [...path, 'covariates'], root)],
    constants: values(source.constants ?? {}, form.constants ?? {}, keep),
    only: [...(source.only ?? []), ...(form.only ?? [])].map((condition) =>
      resolveCondition(condition, columnSubjects),
    ),
    blank_means: values(source.blank_means ?? {}, form.blank_means ?? {}, isMapped),
  };
}

/** The source itself as its only block. */
function ownBlock({ holds, visit, formula, columns, constants, covariates, only, blank_means }: SourceForm): BlockForm {
  if (!holds || !columns) throw new RangeError('resolve: a source without rows or columns passed the checks');
  return { holds, visit, formula, columns, constants, covariates, only, blank_means };
}

/** One source: blocks with what they share, its own way of reading. */
export function resolveSource(form: SourceForm, index: number, file: AuditFile, root: DocumentNode): SourcePlan {
  const at: Path = ['sources', index];
  const alone: SourceForm = { file: form.file, lens_power_is: form.lens_power_is };
  const blocks = form.blocks
    ? form.blocks.map((block, i) => blockPlan(block, [...at, 'blocks', i], form, at, root))
    : [blockPlan(ownBlock(form), at, alone, at, root)];
  return {
    file: form.file,
    line: placeAt(root, [...at, 'file']).line,
    reading: resolveReading(file.reading, form.reading),
    blocks,
    letters_per_line: form.letters_per_line,
    lens_power_is: form.lens_power_is,
  };
}
