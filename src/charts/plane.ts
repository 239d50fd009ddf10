import { axisText } from '../format/axis.js';
import { fixed } from '../format/number.js';
import type { Words } from '../words/index.js';
import { type Label, type Layer, labels, ring, segments } from './marks.js';
import { type Artwork, ink } from './theme.js';

/** The doubled-angle plane as it is drawn. */
export interface Plane {
  /** Dioptres at the outermost ring, and between two rings. */
  radius: number;
  step: number;
  /** Points from edge to edge of the outermost ring. */
  size: number;
}

/** Dioptres between rings, for planes up to so far; further out every 5 D. */
const steps = [
  { upTo: 1.5, step: 0.5 },
  { upTo: 4, step: 1 },
  { upTo: 8, step: 2 },
] as const;

/**
 * A plane with whole rings around everything, never smaller than 1 D.
 *
 * @param reach  distance of the farthest mark from the middle, dioptres
 * @param size   points from edge to edge
 * @example planeAround(2.3, 150) // { radius: 3, step: 1, size: 150 }
 */
export function planeAround(reach: number, size: number): Plane {
  const needed = Math.max(reach, 1) - 1e-9;
  const step = steps.find(({ upTo }) => needed <= upTo)?.step ?? 5;
  return { radius: Math.ceil(needed / step) * step, step, size };
}

/** Place of a vector, points from the top left; x and y share one scale. */
export function position({ radius, size }: Plane, x: number, y: number): { x: number; y: number } {
  const scale = size / 2 / radius;
  return { x: size / 2 + x * scale, y: size / 2 - y * scale };
}

/** vega-lite scales of the plane. */
export function planeScales({ radius }: Plane): { x: object; y: object } {
  const shared = { type: 'quantitative', scale: { domain: [-radius, radius], nice: false }, axis: null };
  return { x: { field: 'x', ...shared }, y: { field: 'y', ...shared } };
}

/** Spokes every 22.5° of meridian, doubled: every 45° of the picture. */
const spokes = [180, 22.5, 45, 67.5, 90, 112.5, 135, 157.5] as const;

/** Rings and spokes, to lie under everything. */
export function planeGround(plane: Plane, { strokes }: Artwork): readonly Layer[] {
  const rings = ringsOf(plane);
  const middle = plane.size / 2;
  const spoke = (degrees: number) => ({
    x: middle,
    y: middle,
    x2: rim(plane, degrees, 0).x,
    y2: rim(plane, degrees, 0).y,
  });
  return [
    segments(spokes.map(spoke), { colour: ink.hair, width: strokes.hair }),
    ...rings.map((dioptres, i) => {
      const colour = i === rings.length - 1 ? ink.soft : ink.hair;
      return ring({ x: middle, y: middle }, (dioptres / plane.radius) * middle, { colour, width: strokes.hair });
    }),
  ];
}

/** A place on the outermost ring, or so many points outside it. */
function rim({ size }: Plane, degrees: number, outside: number): { x: number; y: number; cos: number } {
  const turn = (degrees * Math.PI) / 90;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const reach = size / 2 + outside;
  return { x: size / 2 + reach * cos, y: size / 2 - reach * sin, cos };
}

/** Places of marks, dioptres. */
interface Marks {
  x: ArrayLike<number>;
  y: ArrayLike<number>;
}

/** So many marks on the dioptres of a ring leave them unreadable; the outermost ring always bears its own. */
const crowd = 3;

/**
 * Meridians around the plane and dioptres on its rings, to lie under the eyes: no label may hide one.
 *
 * @param marks  of this panel: what they would hide is left out
 */
export function planeLabels(
  plane: Plane,
  { type }: Artwork,
  { charts }: Words,
  { frame, turn, marks }: { frame: 'eye' | 'incision'; turn: number; marks: readonly Marks[] },
): readonly Layer[] {
  const meridian = (degrees: number): Label => {
    const side = Math.round(rim(plane, degrees, 0).cos * 2);
    const { x, y } = rim(plane, degrees, side === 0 ? type * 0.8 : type * 0.5);
    const align = side === 0 ? 'center' : side > 0 ? 'left' : 'right';
    const text = Number.isInteger(degrees) ? rimText(degrees, frame) : fixed(degrees, 1);
    return { x, y, text: charts.doubleAngle.meridian(text), align };
  };
  const decimals = plane.step < 1 ? 1 : 0;
  const isClear = (reach: number): boolean => reach === plane.radius || hiding(plane, type, marks, turn, reach) < crowd;
  const dioptres = labelledRings(plane, type).filter(isClear).map((reach): Label => {
    const { x, y } = position(plane, reach * Math.cos(turn), reach * Math.sin(turn));
    const text = charts.doubleAngle.ring(fixed(reach, decimals));
    return { x, y, text, align: 'center', colour: ink.soft, halo: type / 4 };
  });
  return labels([...spokes.map(meridian), ...dioptres]);
}

/** A meridian of the eye is never called 0; an angle from the incision is never called 180. */
function rimText(degrees: number, frame: 'eye' | 'incision'): string {
  return frame === 'eye' ? axisText(degrees) : fixed(degrees % 180, 0);
}

/** What the sides of a plane of the incision mean, under it on the left and on the right. */
export function sideLabels({ size }: Plane, { type }: Artwork, { charts }: Words, side: number): readonly Layer[] {
  const { flattened, steepened } = charts.doubleAngle;
  const y = size + 0.8 * type;
  return labels([
    { x: -side, y, text: flattened, colour: ink.soft },
    { x: size + side, y, text: steepened, align: 'right', colour: ink.soft },
  ]);
}

/** Every ring; the outermost alone where rings are too near one another for their labels. */
function labelledRings(plane: Plane, type: number): readonly number[] {
  return apartOf(plane) >= 1.6 * type ? ringsOf(plane) : [plane.radius];
}

/** From one ring to the next, points. */
const apartOf = ({ step, radius, size }: Plane): number => (step / radius) * (size / 2);

const ringsOf = ({ radius, step }: Plane): readonly number[] =>
  Array.from({ length: Math.round(radius / step) }, (_, i) => (i + 1) * step);

/** Between two spokes, down and to the right first; the flat ones only where labels fit beside one another. */
const steepTurns = [-3, 3, -5, 5].map((eighths) => (eighths * Math.PI) / 8);
const flatTurns = [-1, 1, -7, 7].map((eighths) => (eighths * Math.PI) / 8);

/**
 * Where rings bear their dioptres, radians of the picture: between the two spokes where the fewest marks hide them.
 *
 * @param marks  of all panels, which share the direction
 */
export function labelTurnOf(plane: Plane, { type }: Artwork, marks: readonly Marks[]): number {
  const turns = [...steepTurns, ...(apartOf(plane) >= 3 * type ? flatTurns : [])];
  const hidden = turns.map((turn) =>
    labelledRings(plane, type).reduce((sum, reach) => sum + hiding(plane, type, marks, turn, reach), 0),
  );
  return turns[hidden.indexOf(Math.min(...hidden))] as number;
}

/** Marks on the label of a ring. */
function hiding(plane: Plane, type: number, marks: readonly Marks[], turn: number, reach: number): number {
  const near = (1.2 * type * plane.radius) / (plane.size / 2);
  const [x, y] = [reach * Math.cos(turn), reach * Math.sin(turn)];
  return marks.reduce((own, mark) => own + nearby(mark, x, y, near), 0);
}

/** Marks in a square around a place. */
function nearby(marks: Marks, x: number, y: number, near: number): number {
  let found = 0;
  for (let i = 0; i < marks.x.length; i += 1) {
    if (Math.abs((marks.x[i] as number) - x) < near && Math.abs((marks.y[i] as number) - y) < near) found += 1;
  }
  return found;
}
