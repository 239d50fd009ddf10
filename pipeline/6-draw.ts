import { type Cohort, chartCohorts } from '../src/charts/cohorts.js';
import { publishedCharts } from '../src/charts/index.js';
import { panelArtwork, panelLetter } from '../src/charts/panels.js';
import { artworkNamed } from '../src/charts/profiles.js';
import { type ChartSetting, citing } from '../src/charts/setting.js';
import type { PanelPlan, Plan } from '../src/records/plan.js';
import type { Figure, Points } from '../src/records/report.js';
import type { Results } from '../src/results/index.js';
import type { Words } from '../src/words/index.js';

/**
 * Stage 6 · draw: which pictures does the reader see?
 *
 * in       results rows, from analyse; points, from derive
 * out      figures, numbered: a vega-lite specification, title, legend, a text for those who do not see it
 * promise  every number printed is value, limit or n of a results row, by key; marks of eyes come from points and
 *          bear no identity unless `mark` names them
 *
 * Figures named in `outputs.order` come first, in that order, the others behind them in the order of the report;
 * `outputs.leave_out` leaves out. Figures that the data do not allow take no number. Those of `outputs.panels` stand
 * together, in the place of the first of them.
 *
 * @param mark     names an eye, for the internal page
 * @param cohorts  the groups to tell apart; those of the audit unless stated
 */
export function draw(
  results: Results,
  points: readonly Points[],
  plan: Plan,
  words: Words,
  mark?: (eye: number) => string,
  cohorts: readonly Cohort[] = chartCohorts(results, plan, words),
): readonly Figure[] {
  const shared = { results, points, plan, words, cohorts, ...(mark ? { mark } : {}) };
  const own = artworkNamed(plan.outputs.artwork, plan);
  const done = new Set<PanelPlan>();
  return figureOrder(plan)
    .flatMap((id) => {
      const panel = plan.outputs.panels.find(({ figures }) => figures.includes(id));
      if (panel === undefined) return drawn(id, { ...shared, artwork: own });
      if (done.has(panel)) return [];
      done.add(panel);
      return inPanels(panel, shared);
    })
    .map((figure, index) => ({ ...figure, number: index + 1 }));
}

type Unnumbered = Omit<Figure, 'number'>;

function figureOrder({ outputs }: Plan): readonly string[] {
  const wanted = new Set([...outputs.order, ...publishedCharts.keys()]);
  return [...wanted].filter((id) => publishedCharts.has(id) && !outputs.leave_out.includes(id));
}

/** One chart; none where the data do not allow it. */
function drawn(id: string, setting: ChartSetting): readonly Unnumbered[] {
  const { results, cited } = citing(setting.results);
  const drawing = publishedCharts.get(id)?.({ ...setting, results });
  return drawing ? [{ artwork: setting.artwork, ...drawing, id, from: cited() }] : [];
}

/** Several charts as one figure with letters; alone where the data allow one of them only. */
function inPanels(
  { name, figures, columns, artwork: profile }: PanelPlan,
  setting: Omit<ChartSetting, 'artwork'>,
): readonly Unnumbered[] {
  const { plan, words } = setting;
  const whole = artworkNamed(profile, plan);
  const artwork = panelArtwork(whole, columns);
  const wanted = figures.filter((id) => !plan.outputs.leave_out.includes(id));
  const panels = wanted.flatMap((id) => drawn(id, { ...setting, artwork, isPanel: true }));
  if (panels.length < 2) return wanted.flatMap((id) => drawn(id, { ...setting, artwork: whole }));
  const lettered = (of: 'title' | 'legend' | 'alt'): string =>
    panels.map((panel, i) => words.charts.panel(panelLetter(i), panel[of])).join(of === 'title' ? '; ' : ' ');
  return [
    {
      id: name,
      artwork: whole,
      spec: {},
      panels: { figures: panels.map((panel) => ({ ...panel, number: 0 })), columns },
      title: lettered('title'),
      legend: lettered('legend'),
      alt: lettered('alt'),
      from: [...new Set(panels.flatMap(({ from }) => from))],
    },
  ];
}
