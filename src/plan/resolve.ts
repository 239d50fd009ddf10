import { plannedFormula } from '../predictions/primary.js';
import type { Plan, SourcePlan, Visit } from '../records/plan.js';
import type { DocumentNode } from './document.js';
import { presetExclusions } from './eligibility-preset.js';
import { reportName } from './report-name.js';
import { eyeSubjects, resolveCondition } from './resolve-conditions.js';
import { resolveSource } from './resolve-sources.js';
import type { AuditFile } from './schema.js';

/** Bands of a number that eyes are grouped by, mm and D. @source settled rules of this project */
const standardBands = { axial_length: [22, 24.5, 26], k_mean: [42, 46] };

/** Decimal mark of spreadsheets where a language is spoken. */
const spreadsheetMarks = { en: 'point' } as const;

type VisitForm = AuditFile['follow_up']['visits'][number];

function resolveVisit({ name, days, aim, labels }: VisitForm): Visit {
  const window = days && ([days[0], days[1]] as const);
  return { name, days: window, aim: aim ?? (window && (window[0] + window[1]) / 2), labels };
}

function resolveFollowUp({ visits, outcome, ...rest }: AuditFile['follow_up']): Plan['follow_up'] {
  const [only] = visits;
  if (!outcome && visits.length > 1)
    throw new RangeError('resolve: several visits without an outcome passed the checks');
  return { ...rest, visits: visits.map(resolveVisit), outcome: outcome ?? (only ? [only.name] : []) };
}

/** The prediction that counts: declared, else the surgery row's, else the only one. Undefined: the data will tell. */
function primaryFormulaOf(
  { primary_formula }: AuditFile['predictions'],
  sources: readonly SourcePlan[],
): string | undefined {
  if (primary_formula !== undefined) return primary_formula;
  const blocks = sources.flatMap((source) => source.blocks);
  const has = (field: string, one: (typeof blocks)[number]) =>
    one.columns.some((column) => column.field === field) || Object.hasOwn(one.constants, field);
  if (blocks.some((block) => block.holds === 'surgery' && has('predicted_se', block))) return plannedFormula;
  const predicting = blocks.filter(({ holds }) => holds === 'prediction');
  if (predicting.some((block) => has('formula', block))) return undefined;
  return predicting[0]?.formula;
}

function resolveEligibility(
  { exclude, ...rest }: AuditFile['eligibility'],
  subjects: ReturnType<typeof eyeSubjects>,
): Plan['eligibility'] {
  const excluded = exclude.map(({ reason, ...condition }) => ({
    condition: resolveCondition(condition, subjects),
    reason,
  }));
  return { ...rest, exclude: [...excluded, ...presetExclusions(rest.preset)] };
}

function resolveCohorts(
  { by, define, reference, compare }: AuditFile['cohorts'],
  subjects: ReturnType<typeof eyeSubjects>,
): Plan['cohorts'] {
  const named = define.map(({ name, ...condition }) => ({ name, condition: resolveCondition(condition, subjects) }));
  return { by, define: named, reference, compare };
}

function resolveLimits(limits: AuditFile['quality']['limits']): Plan['quality']['limits'] {
  const entries = Object.entries(limits).map(([field, { possible, usual, reason }]) => [
    field,
    {
      possible: possible && ([possible[0], possible[1]] as const),
      usual: usual && ([usual[0], usual[1]] as const),
      reason,
    },
  ]);
  return Object.fromEntries(entries);
}

/**
 * The plan of an audit.yaml that has no faults: defaults filled in, blocks with what they share.
 *
 * @param file  of the right form
 * @param root  the same as written, for the lines
 * @throws {RangeError} when the checks let something through that has no meaning
 */
export function resolve(file: AuditFile, root: DocumentNode): Plan {
  const sources = file.sources.map((source, i) => resolveSource(source, i, file, root));
  const covariates = sources.flatMap(({ blocks }) => blocks.flatMap((block) => block.covariates));
  const subjects = eyeSubjects(new Map(covariates.map(({ field, type }) => [field, type])));
  const { format: _, reading: __, ...plain } = file;
  return {
    ...plain,
    name: file.name ?? reportName(file.title),
    period: { from: file.period.from, to: file.period.to },
    data_until: file.data_until,
    allow_outside: file.allow_outside === 'yes',
    sources,
    follow_up: resolveFollowUp(file.follow_up),
    eligibility: resolveEligibility(file.eligibility, subjects),
    cohorts: resolveCohorts(file.cohorts, subjects),
    bands: { ...standardBands, ...file.bands },
    predictions: {
      ...file.predictions,
      primary_formula: primaryFormulaOf(file.predictions, sources),
      incision_effect: file.predictions.incision_effect,
    },
    quality: { ...file.quality, limits: resolveLimits(file.quality.limits) },
    monitoring: file.monitoring,
    benchmarks: { published: file.benchmarks.published, former_report: file.benchmarks.former_report },
    outputs: { ...file.outputs, spreadsheet: file.outputs.spreadsheet ?? spreadsheetMarks[file.outputs.language] },
  };
}
