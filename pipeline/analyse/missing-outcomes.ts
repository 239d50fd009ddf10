import type { EyeGroup } from '../../src/analysis/sample.js';
import { integersOf } from '../../src/columns/table.js';
import { type Compared, comparedBy } from '../../src/comparison/compared.js';
import { comparisonGroup } from '../../src/comparison/group.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';
import { baselineCompared } from './baseline.js';
import { columnsOf, type MeasureColumns, valuesOn } from './columns.js';
import { dueIn } from './completeness.js';
import type { Groups } from './groups.js';
import { measureRows } from './measure-rows.js';
import { plainRow } from './plain-row.js';

/** What a share would be, had every due eye without the value failed, and had every one of them succeeded. */
function boundsOf(
  measure: Measure,
  one: Compared,
  columns: MeasureColumns,
  derived: Derived,
  group: EyeGroup,
): readonly ResultRow[] {
  const { due } = dueIn(derived.membership[measure.family], group);
  const { patient, analysed } = columns;
  const shown = valuesOn(one.on, columns);
  const known = due.filter((eye) => analysed[eye] === 1 && !Number.isNaN(shown[eye] as number));
  const count = known.filter((eye) => one.meets?.(shown[eye] as number)).length;
  const missing = due.length - known.length;
  const patients = new Set(due.map((eye) => patient[eye] as number)).size;
  const rowsOf = (name: string, hits: number): readonly ResultRow[] => {
    const value = due.length === 0 ? undefined : hits / due.length;
    const note = value === undefined ? 'not-estimable:no-eyes' : '';
    const about = { measure: measure.name, n: due.length, patients };
    const share = { ...about, statistic: `${name}:${one.of}`, value, unit: 'share', method: 'bound', note };
    return [share, { ...about, statistic: `count_${name}:${one.of}`, value: hits }].map((parts) =>
      plainRow(parts, group.key, group.eyes.length),
    );
  };
  return [...rowsOf('if_missing_failed', count), ...rowsOf('if_missing_succeeded', count + missing)];
}

/** Bounds of every share of an outcome that waits for a visit. */
function boundRows(derived: Derived, groups: readonly EyeGroup[]): readonly ResultRow[] {
  const awaited = derived.registry.filter(({ family }) => derived.membership[family].steps.includes('not_yet_due'));
  return awaited.flatMap((measure) => {
    const columns = columnsOf(measure, derived);
    const shares = comparedBy(measure).filter(({ by }) => by === 'risk');
    return shares.flatMap((one) => groups.flatMap((group) => boundsOf(measure, one, columns, derived, group)));
  });
}

/** Due eyes with an outcome and due eyes without one: what they were before surgery, and how far apart that lies. */
function missingCompared(derived: Derived, { all }: Groups, plan: Plan): readonly ResultRow[] {
  const { due } = dueIn(derived.membership.refraction, all);
  const groupOf = (name: 'known' | 'missing'): EyeGroup => ({
    key: groupPair('follow_up', name),
    eyes: due.filter((eye) => (derived.assembly.outcomeVisit[eye] as number) > 0 === (name === 'known')),
  });
  const [known, missing] = [groupOf('known'), groupOf('missing')];
  const before = derived.registry.filter(({ role, step, vector }) => role === 'baseline' && !step && !vector);
  const only: Groups = { all: known, cohorts: [missing], subgroups: [], strata: [], comparisons: [] };
  const patient = integersOf(derived.eyes, 'patient');
  const counted = [known, missing].map(({ key, eyes }) => {
    const patients = new Set(eyes.map((eye) => patient[eye] as number)).size;
    return plainRow({ measure: 'completeness', statistic: 'count', value: eyes.length, patients }, key, due.length);
  });
  const compares = { group: comparisonGroup('follow_up', 'missing', 'known'), compared: missing, reference: known };
  return [
    ...counted,
    ...before.flatMap((measure) => measureRows(measure, derived, only, plan)),
    ...baselineCompared([compares], { ...derived, registry: before }, plan),
  ];
}

/** What eyes without an outcome could change, and whether they were like the others. */
export function missingOutcomeRows(derived: Derived, groups: Groups, plan: Plan): readonly ResultRow[] {
  return [...boundRows(derived, [groups.all, ...groups.cohorts]), ...missingCompared(derived, groups, plan)];
}
