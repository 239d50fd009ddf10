import { count } from '../format/number.js';
import { levelText } from '../tables/level.js';
import { provenance } from '../tables/rows.js';
import { type ShownVector, type VectorId, vectorGroup, vectorsShown } from '../tables/vectors.js';
import type { Cohort } from './cohorts.js';
import { drawnAsCells, marksOf } from './eye-marks.js';
import { generalLegend, legendSample, sampleText } from './sentences.js';
import type { Chart, ChartSetting, Drawing } from './setting.js';
import { artworks, isNarrow } from './theme.js';
import type { VectorFigure } from './vector-figures.js';
import { planesOf, type VectorPanel } from './vector-panels.js';
import { vectorText } from './vector-summary.js';

/**
 * Cylinders as vectors in the doubled-angle plane, a panel each vector and cohort: eyes, centroid with its region, and
 * the region expected to hold the next eye. All panels have one scale.
 */
export function doubleAngle(figure: VectorFigure): Chart {
  return (given) => {
    const shown = vectorsShown(given.results, figure.panels);
    if (shown.length === 0) return undefined;
    const setting = withRoom(given, shown.length);
    const panels = setting.cohorts.flatMap((cohort) =>
      shown.flatMap((vector) => panelOf(setting, figure, vector, cohort)),
    );
    return drawing(
      setting,
      figure,
      panels,
      shown.map(({ id }) => id),
    );
  };
}

/** Four planes and more are too small to be read in a single column: such a figure takes both. */
function withRoom(setting: ChartSetting, vectors: number): ChartSetting {
  const { 'journal-single': single, 'journal-double': double } = artworks;
  const isMany = vectors * setting.cohorts.length > 2;
  if (!double || !isMany || setting.isPanel || !isNarrow(setting.artwork)) return setting;
  const wider = { ...setting.artwork, width: double.width };
  return { ...setting, artwork: setting.artwork === single ? double : wider };
}

/** One plane; none where no eye of the cohort has the vector. */
function panelOf(
  { results, points }: ChartSetting,
  figure: VectorFigure,
  { id, measure, ...vector }: ShownVector,
  cohort: Cohort,
): readonly VectorPanel[] {
  const group = vectorGroup({ id, measure, ...vector }, cohort.group);
  if (results.find(measure, group, 'centroid_x') === undefined) return [];
  const hollow = figure.pair && figure.panels[0] === id;
  return [{ id, measure, cohort: { ...cohort, group }, marks: marksOf(points, figure.id, id, cohort), hollow }];
}

function drawing(
  setting: ChartSetting,
  figure: VectorFigure,
  panels: readonly VectorPanel[],
  shown: readonly VectorId[],
): Drawing {
  const { words, cohorts } = setting;
  const { named, figures } = words.tables.vectors;
  const labelOf = ({ id, cohort }: VectorPanel): string =>
    cohorts.length > 1 ? words.charts.within(cohort.label, named[id].name) : named[id].name;
  const told = (panel: VectorPanel): string => {
    const texts = [sampleText(setting, panel.measure, panel.cohort), vectorText(setting, panel, figure.frame)];
    return words.charts.told(labelOf(panel), texts.join('; '));
  };
  const { title, lead } = figures[figure.id];
  return {
    spec: planesOf(setting, figure, panels, shown),
    title,
    legend: [
      lead,
      ...legendOf(setting, figure, panels),
      ...panels.map((panel) => legendSample(setting, panel.measure, panel.cohort, labelOf(panel))),
      ...withoutAxis(setting, shown),
      ...generalLegend(setting),
    ].join(' '),
    alt: words.charts.doubleAngle.altLead + panels.map(told).join(' '),
    artwork: setting.artwork,
  };
}

/** How such planes are read. */
function legendOf(setting: ChartSetting, { frame }: VectorFigure, panels: readonly VectorPanel[]): readonly string[] {
  const { plan, words, mark } = setting;
  const { legend, direction, cells, cellsHidden } = words.charts.doubleAngle;
  const least = mark === undefined ? plan.outputs.small_cells : 0;
  return [
    direction[frame],
    legend(levelText(plan)),
    ...(panels.some(({ marks }) => drawnAsCells(setting, marks)) ? [cells] : []),
    ...(least > 0 ? [cellsHidden(count(least))] : []),
  ];
}

/** How many refractions have no direction to be drawn in. */
function withoutAxis(setting: ChartSetting, shown: readonly VectorId[]): readonly string[] {
  if (!shown.includes('refractive_cylinder_after')) return [];
  return [setting.words.charts.doubleAngle.withoutAxis(provenance(setting, 'axis_missing'))];
}
