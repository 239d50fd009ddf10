import { vectorMagnitude } from '../optics/double-angle.js';
import type { Points } from '../records/report.js';
import { levelText } from '../tables/level.js';
import type { Cohort } from './cohorts.js';
import { drawnAsCells, type EyeMarks, eyeLayers, markArea } from './eye-marks.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { type Label, type Layer, labels } from './marks.js';
import { planeAround, planeGround, planeLabels } from './plane.js';
import { legendEnd, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
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
export function doubleAngle(setting: ChartSetting): Drawing | undefined {
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
  const { title, legend, cells, altLead, alt } = words.charts.doubleAngle;
  const remarks = panels.some(({ marks }) => drawnAsCells(setting, marks)) ? [cells] : [];
  const samples = shown.map((measure) => ({ measure, label: words.charts.doubleAngle.panels[measure] }));
  const told = ({ measure, cohort }: Panel): string => {
    const name = `${cohort.label}, ${words.charts.doubleAngle.panels[measure]}`;
    return alt(name, [sampleText(setting, measure, cohort), vectorText(setting, measure, cohort)].join('; '));
  };
  return {
    spec: specification(setting, panels, columns.count),
    title,
    legend: [legend(levelText(plan)), ...remarks, legendEnd(setting, samples)].join(' '),
    alt: altLead + panels.map(told).join(' '),
  };
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

/** Before and after side by side; one below the other in a single column; from three cohorts on cohorts side by side. */
function columnsOf(
  { artwork, cohorts }: ChartSetting,
  measuresShown: number,
): { of: 'cohorts' | 'measures'; count: number } {
  const isNarrow = artwork.width < 300;
  if (cohorts.length > 2 && !isNarrow) return { of: 'cohorts', count: cohorts.length };
  return { of: 'measures', count: isNarrow && cohorts.length === 1 ? 1 : measuresShown };
}

/** Lines above a plane: panel, cohort where there are several, eyes. */
const headLines = ({ cohorts }: ChartSetting): number => (cohorts.length > 1 ? 3 : 2);

function specification(setting: ChartSetting, panels: readonly Panel[], columns: number): object {
  const { artwork } = setting;
  const { type } = artwork;
  const line = lineHeight(artwork);
  const cell = panelWidth(artwork, columns, { left: 0, right: 0 }, type);
  const around = 2.9 * type;
  const size = Math.min(cell - 2 * around, artwork.width < 300 ? 20 * type : 22 * type);
  const plane = planeAround(farthest(panels), size);
  const oneEye = markArea(
    panels.map(({ marks }) => marks),
    type,
  );
  const keys = panels.map(({ measure, cohort }) => keyLines(setting, measure, cohort, cell));
  const keyHeight =
    Math.max(...keys.map((lines) => lines.reduce((total, { texts }) => total + texts.length, 0))) * line;
  const above = (headLines(setting) + 1.6) * line;
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
      ...labels(heading(setting, panel, { x: -side, y: -above, width: cell })),
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

function heading(
  setting: ChartSetting,
  { measure, cohort }: Panel,
  corner: { x: number; y: number; width: number },
): readonly Label[] {
  const { artwork, words, cohorts } = setting;
  const line = lineHeight(artwork);
  const texts = [
    ...(cohorts.length > 1 ? [headingText(cohort.label, corner.width, artwork.type)] : []),
    words.charts.doubleAngle.panels[measure],
    sampleText(setting, measure, cohort),
  ];
  return texts.map((text, i) => {
    const y = corner.y + (i + 0.5) * line;
    return { x: corner.x, y, text, weight: i < texts.length - 1 ? 'bold' : 'normal' };
  });
}
