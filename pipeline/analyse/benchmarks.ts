import { reaching } from '../../src/analysis/acuity.js';
import { pick } from '../../src/analysis/sample.js';
import { hitsOf } from '../../src/analysis/shares.js';
import { type Benchmark, chosenBenchmarks } from '../../src/benchmarks/published.js';
import { numbersOf } from '../../src/columns/table.js';
import { comparedBy } from '../../src/comparison/compared.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexPatients } from '../../src/statistics/patients.js';
import { type ShareEstimate, shareInterval } from '../../src/statistics/share.js';
import { columnsOf } from './columns.js';
import { auditIccOf } from './outcomes.js';

/** Eyes that the source's definition counts: analysed, with the value, and at or above its acuity floor. */
function countedEyes({ measure, acuityFloor, days }: Benchmark, derived: Derived): Int32Array {
  const about = derived.registry.find(({ name }) => name === measure);
  if (!about) return new Int32Array();
  const { values, analysed } = columnsOf(about, derived);
  const acuity = numbersOf(derived.eyes, 'cdva');
  const day = numbersOf(derived.eyes, 'refractions.day@outcome');
  const reaches = acuityFloor === undefined ? () => true : reaching(acuityFloor);
  const seen = (eye: number): boolean => {
    const on = day[eye] as number;
    return days === undefined || Number.isNaN(on) || (on >= days[0] && on <= days[1]);
  };
  return Int32Array.from(values.keys()).filter(
    (eye) =>
      analysed[eye] === 1 &&
      !Number.isNaN(values[eye] as number) &&
      (acuityFloor === undefined || !Number.isNaN(acuity[eye] as number)) &&
      reaches(acuity[eye] as number) &&
      seen(eye),
  );
}

/** The word that an interval allows about a fixed line. */
function verdictOn(line: number, { low, high }: Pick<ShareEstimate, 'low' | 'high'>): string {
  if (low === undefined || high === undefined) return '';
  if (low > line) return 'verdict:above';
  return high < line ? 'verdict:below' : 'verdict:not-distinguishable';
}

function rowsOf(benchmark: Benchmark, derived: Derived, plan: Plan): readonly ResultRow[] {
  const { id, measure, statistic, value: line, eyes: published } = benchmark;
  const about = derived.registry.find(({ name }) => name === measure);
  const meets = about && comparedBy(about).find(({ of }) => of === statistic)?.meets;
  if (!about || !meets) return [];
  const { values, patient } = columnsOf(about, derived);
  const eyes = countedEyes(benchmark, derived);
  const hits = hitsOf(pick(values, eyes), meets);
  const patients = indexPatients(eyes.map((eye) => patient[eye] as number));
  const found = shareInterval(hits, patients, plan.statistics.confidence, {
    method: 'wilson',
    auditIcc: auditIccOf(columnsOf(about, derived), 'values')(meets),
  });
  const plain = {
    measure: `benchmark:${id}`,
    group: 'all',
    n: eyes.length,
    eyes: eyes.length,
    patients: patients.count,
    ci_low: undefined,
    ci_high: undefined,
    note: '',
  };
  const verdict = verdictOn(line, found);
  const note = [...found.notes, ...(verdict === '' ? [] : [verdict])].join(';');
  const limits = { ci_low: found.low, ci_high: found.high };
  return [
    { ...plain, ...limits, statistic, value: found.value, unit: 'share', method: found.method, note },
    { ...plain, statistic: statistic.replace('share', 'count'), value: found.count, unit: 'eyes', method: 'count' },
    {
      ...plain,
      statistic: 'share_published',
      value: line,
      n: published,
      eyes: published,
      patients: 0,
      unit: 'share',
      method: 'published',
    },
  ];
}

/** Every published figure asked for, and this audit's number under that figure's own definition. */
export function benchmarkRows(derived: Derived, plan: Plan): readonly ResultRow[] {
  return chosenBenchmarks(plan.benchmarks.published).flatMap((one) => rowsOf(one, derived, plan));
}
