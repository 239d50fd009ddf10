import type { Cohort } from './cohorts.js';
import { lineHeight } from './frame.js';
import { type Label, type Layer, labels, symbols } from './marks.js';
import type { ChartSetting } from './setting.js';
import { textWidth, wrapped } from './text-width.js';

/** A cohort's name, cut to one line of a width. */
export function headingText(label: string, width: number, size: number): string {
  return wrapped(label, width, { size, weight: 'bold', lines: 1 })[0] as string;
}

/** One line a cohort: its symbol, its name, and how many eyes; from the top of the panel's margin downwards. */
export function cohortKey(
  setting: ChartSetting,
  corner: { x: number; y: number },
  sample: (cohort: Cohort) => string,
): readonly Layer[] {
  const { artwork, cohorts } = setting;
  const { type, width } = artwork;
  const line = lineHeight(artwork);
  const indent = 1.25 * type;
  const rows = cohorts.map((cohort, index): { y: number; name: Label; eyes: Label } => {
    const y = corner.y + (index + 0.5) * line;
    const eyes = sample(cohort);
    const room = width - indent - type - textWidth(eyes, type);
    const text = headingText(cohort.label, room, type);
    const x = corner.x + indent;
    const behind = x + textWidth(text, type, 'bold') + 0.75 * type;
    return { y, name: { x, y, text, weight: 'bold' }, eyes: { x: behind, y, text: eyes } };
  });
  return [
    ...rows.map(({ y }, index) => {
      const { accent } = cohorts[index] as Cohort;
      return symbols([{ x: corner.x + type / 2, y }], accent, artwork);
    }),
    ...labels(rows.flatMap(({ name, eyes }) => [name, eyes])),
  ];
}
