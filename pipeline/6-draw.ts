import { chartCohorts } from '../src/charts/cohorts.js';
import { publishedCharts } from '../src/charts/index.js';
import { citing } from '../src/charts/setting.js';
import { type Artwork, artworks } from '../src/charts/theme.js';
import type { Plan } from '../src/records/plan.js';
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
 * `outputs.leave_out` leaves out. Figures that the data do not allow take no number.
 *
 * @param mark  names an eye, for the internal page
 */
export function draw(
  results: Results,
  points: readonly Points[],
  plan: Plan,
  words: Words,
  mark?: (eye: number) => string,
): readonly Figure[] {
  const cohorts = chartCohorts(results, plan, words);
  const shared = { points, plan, words, cohorts, artwork: artworkOf(plan), ...(mark ? { mark } : {}) };
  return figureOrder(plan)
    .flatMap((id) => {
      const { results: noted, cited } = citing(results);
      const drawing = publishedCharts.get(id)?.({ ...shared, results: noted });
      return drawing ? [{ id, ...drawing, from: cited() }] : [];
    })
    .map((figure, index) => ({ ...figure, number: index + 1 }));
}

function figureOrder({ outputs }: Plan): readonly string[] {
  const wanted = new Set([...outputs.order, ...publishedCharts.keys()]);
  return [...wanted].filter((id) => publishedCharts.has(id) && !outputs.leave_out.includes(id));
}

function artworkOf({ outputs }: Plan): Artwork {
  const artwork = artworks[outputs.artwork];
  if (!artwork) throw new RangeError(`draw: artwork ${outputs.artwork}; expected ${Object.keys(artworks).join(', ')}`);
  return artwork;
}
