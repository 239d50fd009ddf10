import type { Results } from '../results/index.js';
import { valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { lineHeight } from './frame.js';
import { boxes, type Label, type Layer, labels, type Segment, segments } from './marks.js';
import { shortSampleText } from './sentences.js';
import type { ChartSetting } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import { ink } from './theme.js';

/** A bar: all eyes before surgery, or after it. */
export interface CylinderState {
  measure: string;
  name: 'before' | 'after';
}

/** Limits of the bands, dioptres, as statistics name them; the last band is open. */
export const cylinderLimits = ['0.25', '0.50', '0.75', '1.00', '1.50', '2.00'] as const;

/** Of the bands, from the least cylinder: the paper darkens to the ink, so that greyscale print tells as much. */
const shades = ['#eef1f3', '#cfd6dc', '#adb7c0', '#8995a0', '#667381', '#434f5b', ink.full] as const;

/** Where things stand in a panel, points from its top. */
export interface BandLayout {
  shown: readonly CylinderState[];
  width: number;
  height: number;
  /** Top of each bar, and how high all are. */
  tops: readonly number[];
  bar: number;
  /** Middle of the line of limits, below the bars. */
  limits: number;
}

/** Two bars with what they are above and below them, so that nothing stands between; then the numbers. */
export function layoutOf(setting: ChartSetting, shown: readonly CylinderState[], width: number): BandLayout {
  const { type } = setting.artwork;
  const line = lineHeight(setting.artwork);
  const bar = 1.8 * type;
  const heads = setting.cohorts.flatMap((cohort) => shown.map((state) => headOf(setting, state, cohort, width).length));
  const head = (Math.max(...heads) + 0.2) * line;
  const tops = shown.map((_, index) => head + index * (bar + 2.2 * type));
  const limits = (tops.at(-1) as number) + bar + (shown.length > 1 ? head : 0) + 1.6 * line;
  return { shown, width, tops, bar, limits, height: limits + (shown.length + 0.75) * line };
}

/** What a bar is, and how many eyes it stands for. */
function headOf(
  setting: ChartSetting,
  { measure, name }: CylinderState,
  cohort: Cohort,
  width: number,
): readonly string[] {
  const { words, artwork } = setting;
  const head = words.charts.cylinderShares.head(
    words.charts.cylinderShares.bars[name],
    shortSampleText(setting, measure, cohort),
  );
  return wrapped(head, width, { size: artwork.type });
}

/** One cohort: its bars, and its numbers. */
export function bandPanel(setting: ChartSetting, layout: BandLayout, cohort: Cohort): readonly Layer[] {
  const { artwork } = setting;
  const { width, bar } = layout;
  const line = lineHeight(artwork);
  const bars = layout.shown.map(({ measure }, index) => {
    return bandsOf(setting.results, measure, cohort.group, { width, y: layout.tops[index] as number, bar });
  });
  const heads = layout.shown.flatMap((state, index) => {
    const texts = headOf(setting, state, cohort, width);
    const top = layout.tops[index] as number;
    const y = index === 0 ? top - (texts.length + 0.1) * line : top + bar + 0.2 * line;
    return texts.map((text, i): Label => ({ x: 0, y: y + (i + 0.5) * line, text }));
  });
  return [
    joins(bars, artwork.strokes.line),
    ...shades.map((shade, band) =>
      boxes(
        bars.flatMap((own) => own.slice(band, band + 1)),
        shade,
      ),
    ),
    ...outlines(layout, bars, artwork.strokes.hair),
    ...labels(heads),
    ...swatches(setting, layout),
    ...labels(numbers(setting, layout, cohort)),
  ];
}

/** The bands of a bar from the least cylinder to the most; none where a share is hidden, or no eye has the value. */
function bandsOf(
  results: Results,
  measure: string,
  group: string,
  { width, y, bar }: { width: number; y: number; bar: number },
): readonly Segment[] {
  const shares = cylinderLimits.map((limit) => results.get(measure, group, `share_within_${limit}`).value);
  const known = shares.filter((share) => share !== undefined);
  if (known.length < shares.length) return [];
  return [...known, 1].map((to, i) => ({ x: (known[i - 1] ?? 0) * width, x2: to * width, y, y2: y + bar }));
}

/** Lines from each limit of one bar to the same limit of the next. */
function joins([before = [], after = []]: readonly (readonly Segment[])[], width: number): Layer {
  const ends = after.length === 0 ? [] : before.slice(0, cylinderLimits.length);
  return segments(
    ends.map(({ x2, y2 }, i) => ({ x: x2, y: y2, x2: (after[i] as Segment).x2, y2: (after[i] as Segment).y })),
    { colour: ink.soft, width: width / 2 },
  );
}

/** A line around each bar, and paper between its bands. */
function outlines({ width, bar }: BandLayout, bars: readonly (readonly Segment[])[], hair: number): readonly Layer[] {
  const between = bars.flatMap((bands) => bands.slice(0, -1).map(({ x2, y, y2 }) => ({ x: x2, x2, y, y2 })));
  const whole = bars.flatMap(([first]) => (first ? [{ x: 0, x2: width, y: first.y, y2: first.y + bar }] : []));
  return [
    segments(between, { colour: ink.paper, width: hair }),
    boxes(whole, 'transparent', { colour: ink.soft, width: hair }),
  ];
}

/** Middle of the column of a limit. */
function columnsOf(setting: ChartSetting, { width }: BandLayout): { middle: (index: number) => number; each: number } {
  const { artwork, words } = setting;
  const { limits, rows } = words.charts.cylinderShares;
  const left = Math.max(...[limits, ...Object.values(rows)].map((text) => textWidth(text, artwork.type)));
  const each = (width - left) / shades.length;
  return { each, middle: (index) => left + (index + 0.5) * each };
}

/** The shades above their limits. */
function swatches(setting: ChartSetting, layout: BandLayout): readonly Layer[] {
  const { type, strokes } = setting.artwork;
  const { middle, each } = columnsOf(setting, layout);
  const y = layout.limits - 1.5 * type;
  return shades.map((shade, i) => {
    const box = { x: middle(i) - 0.36 * each, x2: middle(i) + 0.36 * each, y, y2: y + 0.7 * type };
    return boxes([box], shade, { colour: ink.soft, width: strokes.hair });
  });
}

/** Limits, and below them the share of eyes up to each; the open band has a shade and no number. */
function numbers(setting: ChartSetting, layout: BandLayout, cohort: Cohort): readonly Label[] {
  const { artwork, words, results } = setting;
  const line = lineHeight(artwork);
  const { upTo, above, rows, limits } = words.charts.cylinderShares;
  const { middle } = columnsOf(setting, layout);
  const end = textWidth('100.0', artwork.type) / 2;
  const heads = [...cylinderLimits.map(upTo), above(cylinderLimits[5])];
  return [
    { x: 0, y: layout.limits, text: limits },
    ...heads.map((text, i): Label => ({ x: middle(i), y: layout.limits, text, align: 'center' })),
    ...layout.shown.flatMap(({ measure, name }, row): readonly Label[] => {
      const y = layout.limits + (row + 1) * line;
      const shares = cylinderLimits.map((limit, i): Label => {
        const share = results.get(measure, cohort.group, `share_within_${limit}`);
        const text = share.value === undefined ? '' : valueText(share, words);
        return { x: middle(i) + end, y, text, align: 'right' };
      });
      return [{ x: 0, y, text: rows[name] }, ...shares];
    }),
  ];
}
