import { axisText } from '../format/axis.js';
import { levelText } from '../tables/level.js';
import { valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { type Ellipse, ellipseOf, outlineOf, reachOf } from './ellipse.js';
import { lineHeight } from './frame.js';
import {
  dashesOf,
  type Label,
  type Layer,
  labels,
  ring,
  type Segment,
  type Stroke,
  segments,
  stroked,
} from './marks.js';
import { type Plane, planeScales, position } from './plane.js';
import type { ChartSetting } from './setting.js';
import { wrapped } from './text-width.js';
import { type Artwork, ink } from './theme.js';
import type { VectorFigure } from './vector-figures.js';

/** The vector of one group. */
interface Whose {
  measure: string;
  cohort: Cohort;
}

/** One line of the key below a plane: what is drawn how, and its number. */
export interface KeyLine {
  sample: 'cross' | 'region' | 'broken' | 'none';
  texts: readonly string[];
}

export const regions = ['centroid_ellipse', 'data_ellipse'] as const;

/** The next eye's region is broken and thinner: it says where eyes lie, not how well the centroid is known. */
const strokeOf = (region: 'full' | 'broken', artwork: Artwork): Stroke => {
  const { bold, line } = artwork.strokes;
  if (region === 'full') return { colour: ink.full, width: bold };
  return { colour: ink.full, width: line, dash: dashesOf([4, 2.5], artwork) };
};

/** Centroid and regions of one panel; the former on a rim of paper that parts them from the eyes below. */
export function vectorLayers(
  { results, artwork }: ChartSetting,
  plane: Plane,
  { measure, cohort: { group } }: Whose,
): readonly Layer[] {
  const [region, next] = regions.map((name) => ellipseOf(results, measure, group, name));
  const [x, y] = ['centroid_x', 'centroid_y'].map((part) => results.get(measure, group, part).value);
  return [
    ...(next && next.major > 0 ? [outline(plane, next, strokeOf('broken', artwork))] : []),
    ...(region && region.major > 0
      ? onPaper((stroke) => outline(plane, region, stroke), strokeOf('full', artwork))
      : []),
    ...(x === undefined || y === undefined ? [] : centreMark(plane, { x, y }, region, artwork)),
  ];
}

const onPaper = (layer: (stroke: Stroke) => Layer, stroke: Stroke): readonly Layer[] => [
  layer({ ...stroke, colour: ink.paper, width: stroke.width + 1.6 }),
  layer(stroke),
];

function outline(plane: Plane, ellipse: Ellipse, stroke: Stroke): Layer {
  const mark = { type: 'line', clip: true, ...stroked(stroke) };
  return { data: { values: outlineOf(ellipse) }, mark, encoding: { ...planeScales(plane), order: { field: 'step' } } };
}

/** A cross in the centroid; where its region is smaller than the cross, four ticks outside the region. */
function centreMark(
  plane: Plane,
  centroid: { x: number; y: number },
  region: Ellipse | undefined,
  artwork: Artwork,
): readonly Layer[] {
  const { x, y } = position(plane, centroid.x, centroid.y);
  const scale = plane.size / 2 / plane.radius;
  const reach = region ? reachOf(region) : { x: 0, y: 0 };
  const isWide = Math.min(reach.x, reach.y) * scale > armOf(artwork);
  return cross({ x, y }, isWide ? { x: 0, y: 0 } : { x: reach.x * scale, y: reach.y * scale }, artwork);
}

const armOf = ({ type }: Artwork): number => 0.45 * type;

/** A cross whose arms start so far from its middle. */
function cross({ x, y }: { x: number; y: number }, from: { x: number; y: number }, artwork: Artwork): readonly Layer[] {
  const arm = armOf(artwork);
  const arms: readonly Segment[] = [-1, 1].flatMap((side) => [
    { x: x + side * from.x, x2: x + side * (from.x + arm), y, y2: y },
    { x, x2: x, y: y + side * from.y, y2: y + side * (from.y + arm) },
  ]);
  return onPaper((stroke) => segments(arms, stroke), strokeOf('full', artwork));
}

/** 'centroid 0.43 D @ 92°', in the frame of the incision 'centroid −0.21 D along, 0.03 D torque'; or not estimable. */
export function vectorText(
  { results, words }: ChartSetting,
  { measure, cohort: { group } }: Whose,
  frame: VectorFigure['frame'],
): string {
  const { centroid, vector, alongTorque, magnitude: alone } = words.charts.doubleAngle;
  const magnitude = results.get(measure, group, 'centroid_magnitude');
  const text = valueText(magnitude, words);
  if (magnitude.value === undefined) return centroid(text);
  if (frame === 'incision') {
    const [along, torque] = ['centroid_x', 'centroid_y'].map((part) =>
      valueText(results.get(measure, group, part), words),
    );
    return centroid(alongTorque(along as string, torque as string));
  }
  const axis = results.get(measure, group, 'centroid_axis').value;
  return centroid(axis === undefined ? alone(text) : vector(text, axisText(axis)));
}

/** What stands below a plane, broken to its width. */
export function keyLines(
  setting: ChartSetting,
  whose: Whose,
  frame: VectorFigure['frame'],
  width: number,
): readonly KeyLine[] {
  const { results, plan, words, artwork } = setting;
  const room = width - indentOf(artwork);
  const line = (sample: KeyLine['sample'], text: string): KeyLine => {
    return { sample, texts: wrapped(text, room, { size: artwork.type }) };
  };
  const { centroidRegion, nextEye, inside, noRegion, noSpread } = words.charts.doubleAngle;
  const { measure, cohort } = whose;
  const vector = vectorText(setting, whose, frame);
  const [own, next] = regions.map((name) => ellipseOf(results, measure, cohort.group, name));
  if (!own || !next) return [line('cross', vector), line('none', noRegion)];
  if (own.major === 0) return [line('cross', vector), line('none', noSpread)];
  const level = levelText(plan);
  const share = valueText(results.get(measure, cohort.group, 'share_inside_data_ellipse'), words);
  return [line('region', centroidRegion(vector, level)), line('broken', nextEye(level, inside(share)))];
}

const indentOf = ({ type }: Artwork): number => 2.5 * type;

/** The key below a plane. */
export function keyLayers(
  artwork: Artwork,
  lines: readonly KeyLine[],
  corner: { x: number; y: number },
): readonly Layer[] {
  const line = lineHeight(artwork);
  let y = corner.y - line / 2;
  return lines.flatMap(({ sample, texts }) => {
    const rows = texts.map((text): Label => {
      y += line;
      return { x: corner.x + indentOf(artwork), y, text };
    });
    const first = rows[0]?.y ?? y;
    return [...sampleLayers(artwork, sample, corner.x, first), ...labels(rows)];
  });
}

function sampleLayers(artwork: Artwork, sample: KeyLine['sample'], x: number, y: number): readonly Layer[] {
  const length = 2 * artwork.type;
  const middle = { x: x + length / 2, y };
  if (sample === 'none') return [];
  if (sample === 'cross') return cross(middle, { x: 0, y: 0 }, artwork);
  if (sample === 'broken') return [segments([{ x, x2: x + length, y, y2: y }], strokeOf(sample, artwork))];
  const radius = 0.3 * artwork.type;
  return [ring(middle, radius, strokeOf('full', artwork)), ...cross(middle, { x: radius, y: radius }, artwork)];
}
