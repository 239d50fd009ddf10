import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { cumulativeSum, oddsRatioOf, scoreWeight, simulatedLimit } from '../../src/statistics/cumulative-sum.js';
import { auditCorrelation } from '../../src/statistics/icc.js';
import { indexPatients } from '../../src/statistics/patients.js';
import { shareInterval } from '../../src/statistics/share.js';
import type { Groups } from './groups.js';
import { type Monitored, monitorOf, operatorsOf } from './monitored.js';

/** Eyes of the running share (*judgement*): enough for an interval, few enough to move. */
const window = 50;
/** Places at which it is told, and points of the cumulative sum, at most. */
const mostPlaces = 60;
const mostPoints = 200;

type Parts = Pick<ResultRow, 'statistic' | 'value'> & Partial<ResultRow>;
type RowOf = (parts: Parts) => ResultRow;

/** The share of the last 50 eyes, with its own interval, along the series. */
function runningRows(of: Monitored, row: RowOf, auditIcc: number | undefined, confidence: number) {
  const n = of.eyes.length;
  if (n < window) return [];
  const step = Math.max(1, Math.ceil((n - window) / mostPlaces));
  const count = Math.floor((n - window) / step) + 1;
  // The last place is the last eye.
  const places = Array.from({ length: count }, (_, i) => n - (count - 1 - i) * step);
  return places.map((place) => {
    const patients = indexPatients(of.patient.slice(place - window, place));
    const hits = of.hits.slice(place - window, place);
    const found = shareInterval(hits, patients, confidence, { method: 'wilson', auditIcc });
    return row({
      statistic: `share_running_to_${place}`,
      value: found.value,
      ci_low: found.low,
      ci_high: found.high,
      n: window,
      eyes: window,
      patients: patients.count,
      unit: 'share',
      method: found.method,
      note: found.notes.join(';'),
    });
  });
}

/** Places of a series that are told: all, or of each stretch the one with the greatest sum, and every signal. */
function told(sums: Float64Array, signals: readonly number[]): readonly number[] {
  const stretch = Math.max(1, Math.ceil(sums.length / mostPoints));
  const places = new Set(signals);
  for (let from = 0; from < sums.length; from += stretch) {
    let most = from;
    for (let i = from; i < Math.min(sums.length, from + stretch); i++) {
      if ((sums[i] as number) > (sums[most] as number)) most = i;
    }
    places.add(most);
  }
  return [...places].sort((a, b) => a - b);
}

/** The cumulative sum against its simulated limit, where audit.yaml declares it. */
function sumRows(of: Monitored, row: RowOf, icc: number, { monitoring, statistics }: Plan): readonly ResultRow[] {
  if (!monitoring || of.eyes.length === 0) return [];
  const asFailure = (share: number): number => (of.hitIsFailure ? share : 1 - share);
  const [risk, bad] = [asFailure(monitoring.acceptable), asFailure(monitoring.unacceptable)];
  const oddsRatio = oddsRatioOf(bad, risk);
  const weights = Float64Array.from(of.hits, (hit) => scoreWeight((hit === 1) === of.hitIsFailure, risk, oddsRatio));
  const series = { patients: of.patient, risk, oddsRatio, icc };
  const limit = simulatedLimit(series, monitoring.false_alarm, statistics.seed);
  const { sums, signals } = cumulativeSum(weights, limit);
  const about = { method: 'log-likelihood-ratio', unit: '' };
  return [
    row({ ...about, statistic: 'sum_limit', value: limit, method: 'simulated' }),
    row({ ...about, statistic: 'count_signals', value: signals.length, unit: 'signals' }),
    ...signals.map((at, i) => row({ ...about, statistic: `signal_${i + 1}`, value: at + 1, unit: 'eyes' })),
    ...told(sums, signals).map((at) => row({ ...about, statistic: `sum_at_${at + 1}`, value: sums[at] })),
  ];
}

/** How a share runs over the series of operations: of the audit, and of operators with enough eyes. */
export function monitoringRows(derived: Derived, { all }: Groups, plan: Plan): readonly ResultRow[] {
  const monitor = monitorOf(derived, plan);
  if (!monitor) return [];
  const whole = monitor.seriesOf(all);
  const auditIcc = auditCorrelation(whole.hits, indexPatients(whole.patient));
  return [all, ...operatorsOf(derived, all, plan)].flatMap((group) => {
    const of = monitor.seriesOf(group);
    const row: RowOf = (parts) => ({
      measure: `monitoring:${monitor.outcome}`,
      group: group.key,
      ci_low: undefined,
      ci_high: undefined,
      n: of.eyes.length,
      eyes: of.eyes.length,
      patients: new Set(of.patient).size,
      unit: 'eyes',
      method: 'count',
      note: '',
      ...parts,
    });
    return [
      row({ statistic: 'count', value: of.eyes.length }),
      row({ statistic: 'count_skipped', value: of.skipped }),
      ...runningRows(of, row, auditIcc, plan.statistics.confidence),
      ...sumRows(of, row, Math.max(0, auditIcc ?? 1), plan),
    ];
  });
}
