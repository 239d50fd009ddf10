import { categoryColumn } from '../../src/columns/category-column.js';
import type { Grouping } from '../../src/records/derived.js';
import type { Points } from '../../src/records/report.js';

/** The marks of one panel: a place for each eye, NaN where it has none. */
export interface PanelEyes {
  name: string;
  x: Float64Array;
  y: Float64Array;
  /** Whether an eye belongs here. */
  holds: (eye: number) => boolean;
}

/** Marks of a figure, panel by panel, in the order of the eyes: one for each eye that belongs there and has a place. */
export function figurePoints(figure: string, panels: readonly PanelEyes[], cohorts: Grouping | undefined): Points {
  const drawn = panels.map(({ x, y, holds }) =>
    Int32Array.from(x.keys()).filter((eye) => holds(eye) && !Number.isNaN((x[eye] as number) + (y[eye] as number))),
  );
  const length = drawn.reduce((sum, eyes) => sum + eyes.length, 0);
  const [panel, cohort] = [new Uint8Array(length), new Uint8Array(length)];
  const [x, y, eye] = [new Float64Array(length), new Float64Array(length), new Int32Array(length)];
  let at = 0;
  drawn.forEach((eyes, index) => {
    const own = panels[index] as PanelEyes;
    for (const one of eyes) {
      panel[at] = index + 1;
      cohort[at] = cohorts?.code[one] ?? 0;
      x[at] = own.x[one] as number;
      y[at] = own.y[one] as number;
      eye[at] = one;
      at += 1;
    }
  });
  const panelNames = ['', ...panels.map(({ name }) => name)];
  const cohortNames = ['', ...(cohorts?.names ?? [])];
  return { figure, panel: categoryColumn(panelNames, panel), cohort: categoryColumn(cohortNames, cohort), x, y, eye };
}
