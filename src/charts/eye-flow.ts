import { count } from '../format/number.js';
import { cohortColumns } from '../tables/cohorts.js';
import { flowReasons, isExclusion, reasonText } from '../tables/follow-up.js';
import type { Column } from '../tables/shapes.js';
import { allEyes } from './cohorts.js';
import { type FlowEntry, type FlowLine, flowLedger } from './flow-ledger.js';
import { countText, generalRemarks, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';

/** The reason between eligible and due; exclusions stand above it, what happened at the visit below. */
const notDue = 'not_yet_due';

const families = ['refraction', 'astigmatism', 'corrected', 'uncorrected'] as const;

/** The way of the eyes from operated to analysed: boxes with counts, the reasons that eyes leave between them. */
export function eyeFlow(setting: ChartSetting): Drawing | undefined {
  const { words, cohorts, plan, results } = setting;
  const { title, legend, outsideCohorts, altLead, altStep } = words.charts.eyeFlow;
  const columns = cohorts.length > 1 ? cohortColumns(results, plan, words) : [allEyes(words)];
  const entries = entriesOf(setting, columns);
  const told = (index: number): string =>
    entries
      .flatMap(({ lines }) => lines.map(({ label, counts }) => altStep(label, counts[index] ?? '').trim()))
      .join('; ');
  return {
    spec: flowLedger(
      setting,
      columns.map(({ label }) => label),
      entries,
      visitLines(setting, 'refraction'),
    ),
    title,
    legend: [legend, ...(columns.length > 1 ? [outsideCohorts] : []), ...generalRemarks(setting)].join(' '),
    alt: altLead + columns.map(({ label }, index) => words.charts.told(label, told(index))).join(' '),
  };
}

function entriesOf(setting: ChartSetting, columns: readonly Column[]): readonly FlowEntry[] {
  const { eyeFlow: words } = setting.words.charts;
  const line = (measure: string, statistic: string, label: string): FlowLine => {
    const counts = columns.map(({ group }) => countText(setting, setting.results.get(measure, group, statistic)));
    return { label, counts };
  };
  const box = (...lines: readonly FlowLine[]): FlowEntry => ({ kind: 'box', lines });
  const reasons = (wanted: (statistic: string) => boolean): readonly FlowEntry[] =>
    reasonsOf(setting, columns)
      .filter(wanted)
      .map((statistic) => {
        return { kind: 'reason', lines: [line('flow:refraction', statistic, reasonText(statistic, setting.words))] };
      });
  const ofOutcome = (statistic: string): boolean => !isExclusion(statistic) && statistic !== notDue;
  return [
    box(line('eyes_operated', 'count', words.operated), patientsLine(setting, columns)),
    ...reasons(isExclusion),
    box(line('flow:eligible', 'analysed', words.eligible)),
    ...reasons((statistic) => statistic === notDue),
    box(line('completeness', 'due', words.due)),
    ...reasons(ofOutcome),
    box(
      { label: words.analysed, counts: [] },
      ...families.map((family) => line(`flow:${family}`, 'analysed', words.families[family])),
    ),
  ];
}

/** Reasons that at least one eye of a column had, or that are hidden. */
function reasonsOf({ results }: ChartSetting, columns: readonly Column[]): readonly string[] {
  const measure = 'flow:refraction';
  return flowReasons(results, measure)
    .map(({ statistic }) => statistic)
    .filter((statistic) => columns.some(({ group }) => results.get(measure, group, statistic).value !== 0));
}

function patientsLine({ results, words }: ChartSetting, columns: readonly Column[]): FlowLine {
  const counts = columns.map(({ group }) => {
    const { value, patients } = results.get('eyes_operated', group, 'count');
    return value === undefined ? words.charts.hidden : count(patients);
  });
  return { label: words.charts.eyeFlow.patients, counts };
}
