import { panelWidthOf } from '../src/charts/panels.js';
import { artworkNamed } from '../src/charts/profiles.js';
import { leastWidth } from '../src/charts/theme.js';
import { fixed } from '../src/format/number.js';
import type { ArtworkProfile, Plan } from '../src/records/plan.js';

/** One figure, wanted again in another way; what is left out is as audit.yaml has it. */
export interface DrawRequest {
  figure: string;
  artwork?: string;
  /** Millimetres. */
  width?: number;
  formats?: Plan['outputs']['figures'];
  /** Cohorts to show, by name; 'all': every eye as one group. */
  cohorts: readonly string[];
  colours?: ArtworkProfile['colours'];
  language?: Plan['outputs']['language'];
}

/** Profile under which a figure drawn again stands in the plan; no profile of the reader's may be called so. */
const again = '(drawn again)';

/** The plan of an audit with one figure as wanted, and in the forms wanted. */
export function planFor(plan: Plan, request: DrawRequest): Plan {
  const { outputs } = plan;
  const own = outputs.panels.find(({ name }) => name === request.figure);
  const { width, type, dpi, tiffDpi, colours } = artworkNamed(request.artwork ?? own?.artwork ?? outputs.artwork, plan);
  const profile = {
    width_mm: request.width ?? (width / 72) * 25.4,
    type_pt: type,
    dpi,
    tiff_dpi: tiffDpi,
    colours: request.colours ?? colours,
  };
  return {
    ...plan,
    outputs: {
      ...outputs,
      profiles: { ...outputs.profiles, [again]: profile },
      artwork: again,
      panels: own ? [{ ...own, artwork: again }] : [],
      figures: request.formats ?? outputs.figures,
      language: request.language ?? outputs.language,
      leave_out: [],
    },
  };
}

/** Least width in which the figure can be read, millimetres; undefined where it has it. */
export function roomMissing(plan: Plan, { figure }: DrawRequest): string | undefined {
  const { width, type } = artworkNamed(again, plan);
  const columns = plan.outputs.panels.find(({ name }) => name === figure)?.columns ?? 1;
  if (panelWidthOf(width, columns) / type >= leastWidth) return undefined;
  return fixed((leastWidth * type * columns * 25.4) / 72, 0);
}
