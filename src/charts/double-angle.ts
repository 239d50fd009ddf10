import { count } from '../format/number.js';
import { vectorMagnitude } from '../optics/double-angle.js';
import type { Points } from '../records/report.js';
import { levelText } from '../tables/level.js';
import type { Cohort } from './cohorts.js';
import { drawnAsCells, type EyeMarks, eyeLayers, markArea } from './eye-marks.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { type Label, labels } from './marks.js';
import { planeAround, planeGround, planeLabels } from './plane.js';
import { legendEnd, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { wrapped } from './text-width.js';
import { type Artwork, artworks } from './theme.js';
import { keyLayers, keyLines, type VectorMeasure, vectorLayers, vectorText } from './vector-summary.js';

const measures = ['corneal_cylinder_before', 'refractive_cylinder_after'] as const;

/** One plane: one measure of one cohort. */
interface Panel {
  measure: VectorMeasure;
  cohort: Cohort;
  marks: EyeMarks;
}

/**
 * Cylinders as vectors in the doubled-angle plane, before and after surgery, a row of panels a cohort: eyes, centroid
 * with its region, and the region expected to hold the next eye. All panels have one scale.
 */
export function doubleAngle(given: ChartSetting): Drawing | undefined {
  const setting = withRoom(given);
  const { results, cohorts, words, plan } = setting;
  const shown = measures.filter((measure) => results.find(measure, 'all', 'n')?.value);
  if (shown.length === 0) return undefined;
  const panelOf = (measure: VectorMeasure, cohort: Cohort): Panel => {
    return { measure, cohort, marks: marksOf(setting.points, measure, cohort) };
  };
  const columns = columnsOf(setting, shown.length);
  const panels =
    columns.of === 'cohorts'
      ? shown.flatMap((measure) => cohorts.map((cohort) => panelOf(measure, cohort)))
      : cohorts.flatMap((cohort) => shown.map((measure) => panelOf(measure, cohort)));
  const { title, legend, cells, cellsHidden, altLead } = words.charts.doubleAngle;
  const least = setting.mark === undefined ? plan.outputs.small_cells : 0;
  const remarks = [
    ...(panels.some(({ marks }) => drawnAsCells(setting, marks)) ? [cells] : []),
    ...(least > 0 ? [cellsHidden(count(least))] : []),
  ];
  const samples = shown.map((measure) => ({ measure, label: words.charts.doubleAngle.names[measure] }));
  const told = ({ measure, cohort }: Panel): string => {
    const name = words.charts.within(cohort.label, words.charts.doubleAngle.names[measure]);
    return words.charts.told(
      name,
      [sampleText(setting, measure, cohort), vectorText(setting, measure, cohort)].join('; '),
    );
  };
  return {
    spec: specification(setting, panels, columns.count),
    title,
    legend: [legend(levelText(plan)), ...remarks, legendEnd(setting, samples)].join(' '),
    alt: altLead + panels.map(told).join(' '),
  };
}

/** Four planes and more are too small to be read in a single column: such a figure takes both. */
function withRoom(setting: ChartSetting): ChartSetting {
  const { 'journal-single': single, 'journal-double': double } = artworks;
  if (!double || setting.artwork !== single || setting.cohorts.length === 1) return setting;
  return { ...setting, artwork: double };
}

/** The points of one panel. */
function marksOf(all: readonly Points[], measure: VectorMeasure, { name }: Cohort): EyeMarks {
  const marks = { x: [] as number[], y: [] as number[], eye: [] as number[] };
  for (const { figure, panel, cohort, x, y, eye } of all) {
    if (figure !== 'double-angle') continue;
    for (let row = 0; row < x.length; row += 1) {
      if (panel.at(row) !== measure || (name !== undefined && cohort.at(row) !== name)) continue;
      marks.x.push(x[row] as number);
      marks.y.push(y[row] as number);
      marks.eye.push(eye[row] as number);
    }
  }
  return marks;
}

/** Least width of a panel with its labels, in type sizes. */
const leastCell = 14;

/** Before and after side by side; in a single column one below the other; of three cohorts and more, the cohorts. */
function columnsOf(
  { artwork, cohorts }: ChartSetting,
  measuresShown: number,
): { of: 'cohorts' | 'measures'; count: number } {
  const { type, width } = artwork;
  const hasRoom = cellWidth(artwork, cohorts.length) >= leastCell * type;
  if (cohorts.length > 2 && hasRoom) return { of: 'cohorts', count: cohorts.length };
  return { of: 'measures', count: width < 300 && cohorts.length === 1 ? 1 : measuresShown };
}

/** Width of a panel with its labels where so many stand side by side, points. */
const cellWidth = (artwork: Artwork, columns: number): number =>
  panelWidth(artwork, columns, { left: 0, right: 0 }, artwork.type);

function specification(setting: ChartSetting, panels: readonly Panel[], columns: number): object {
  const { artwork } = setting;
  const { type } = artwork;
  const line = lineHeight(artwork);
  const cell = cellWidth(artwork, columns);
  const heads = panels.map((panel) => headLabels(setting, panel, cell));
  const around = 2.9 * type;
  const size = Math.floor(Math.min(cell - 2 * around, artwork.width < 300 ? 20 * type : 22 * type));
  const plane = planeAround(farthest(panels), size);
  const oneEye = markArea(
    panels.map(({ marks }) => marks),
    plane,
    type,
  );
  const keys = panels.map(({ measure, cohort }) => keyLines(setting, measure, cohort, cell));
  const keyHeight =
    Math.max(...keys.map((lines) => lines.reduce((total, { texts }) => total + texts.length, 0))) * line;
  const above = (Math.max(...heads.map(({ length }) => length)) + 1.6) * line;
  const below = 1.75 * type + keyHeight + 0.5 * line;
  const side = (cell - size) / 2;
  return frame(artwork, {
    columns,
    panel: { width: size, height: size },
    margin: { left: side, right: side, top: above, bottom: below },
    gap: { column: 2 * side + type, row: above + below + 0.75 * line },
    panels: panels.map((panel, index) => [
      ...planeGround(plane, artwork),
      ...planeLabels(plane, artwork, setting.words),
      ...eyeLayers(setting, plane, panel.cohort, panel.marks, oneEye),
      ...vectorLayers(setting, plane, panel.measure, panel.cohort),
      ...labels((heads[index] ?? []).map((head, i) => ({ ...head, x: -side, y: (i + 0.5) * line - above }))),
      ...keyLayers(artwork, keys[index] ?? [], { x: -side, y: size + 1.75 * type + 0.25 * line }),
    ]),
    foot: visitLines(setting, 'astigmatism'),
  });
}

/** Distance of the farthest eye from the middle, over all panels, dioptres. */
function farthest(panels: readonly Panel[]): number {
  let reach = 0;
  for (const { marks } of panels) {
    marks.x.forEach((x, i) => {
      reach = Math.max(reach, vectorMagnitude(x, marks.y[i] as number));
    });
  }
  return reach;
}

/** Lines above a plane: cohort where there are several, panel, eyes. */
function headLabels(
  setting: ChartSetting,
  { measure, cohort }: Panel,
  width: number,
): readonly Omit<Label, 'x' | 'y'>[] {
  const { artwork, words, cohorts } = setting;
  const { type: size } = artwork;
  const bold = [
    ...(cohorts.length > 1 ? [headingText(cohort.label, width, size)] : []),
    ...wrapped(words.charts.doubleAngle.panels[measure], width, { size, weight: 'bold' }),
  ];
  const eyes = wrapped(sampleText(setting, measure, cohort), width, { size });
  return [...bold.map((text) => ({ text, weight: 'bold' as const })), ...eyes.map((text) => ({ text }))];
}
