import { signed } from '../format/number.js';
import { lowVisionChanges } from '../measures/acuity-change.js';
import { lineSteps } from '../measures/profiles.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, shareCell, valueCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { across, block, cohortHead, provenance, statisticStub } from './rows.js';
import type { Asked, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';

const change = 'cdva_change';
const ratios = ['efficacy_ratio', 'efficacy_index', 'safety_index'] as const;

/** Lines of corrected acuity lost and gained, and what is seen without correction against what could be. */
export function acuityChange(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const has = (measure: string): boolean => (results.find(measure, 'all', 'n')?.value ?? 0) > 0;
  const indices = ratios.filter(has);
  if (!has(change) && indices.length === 0) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  return finish(
    {
      id: 'acuity-change',
      title: words.tables.safety.titles['acuity-change'](outcomeVisit(plan, words)),
      head: cohortHead(setting, statisticStub(setting), 'flow:eligible', 'analysed'),
      rows: [
        ...(has(change) ? [...changeRows(setting), ...lowVisionRows(setting)] : []),
        ...indices.flatMap((measure) => ratioRows(setting, measure)),
      ],
      footnotes: [...notesOf(setting), ...followUpNotes(setting, ['corrected', 'uncorrected'])],
    },
    setting,
  );
}

function changeRows(setting: Setting): readonly DraftRow[] {
  const { words } = setting;
  const { rows, safety } = words.tables;
  const row = (label: string, cell: (get: Asked) => ShownCell) => across(setting, change, label, cell);
  const share = (name: string) => (get: Asked) =>
    shareCell(get(`share_lines_${name}`), get(`count_lines_${name}`), words);
  return [
    block(safety.blocks.change),
    row(rows.eyes, (get) => eyesCell(get, words)),
    ...lineSteps.map((step) => row(`${safety.rows.lines[step]}, n/N, %`, share(String(step)))),
    ...[1, 2, 3].map((lost) => row(safety.rows.lost(String(lost)), share(`lost_${lost}_or_more`))),
    row(`${rows.mean}, logMAR`, (get) => estimateCell(get('mean'), words)),
  ];
}

/** Eyes whose acuity is a word before or after: categories of their own. */
function lowVisionRows(setting: Setting): readonly DraftRow[] {
  const { results, words } = setting;
  const { safety } = words.tables;
  const measure = 'cdva_low_vision_change';
  const named = lowVisionChanges.slice(1).filter((name) => results.get(measure, 'all', `count_${name}`).value !== 0);
  if (named.length === 0) return [];
  return [
    block(safety.blocks.lowVision),
    ...named.map((name) =>
      across(setting, measure, safety.rows.lowVision[name] ?? name, (get) => valueCell(get(`count_${name}`), words)),
    ),
  ];
}

function ratioRows(setting: Setting, measure: (typeof ratios)[number]): readonly DraftRow[] {
  const { words } = setting;
  const { outcomes, rows, safety } = words.tables;
  return [
    block(outcomes[measure]?.block ?? measure),
    across(setting, measure, rows.eyes, (get) => eyesCell(get, words)),
    across(setting, measure, safety.rows.geometric, (get) => estimateCell(get('geometric_mean'), words)),
    across(setting, measure, safety.rows.ratioOfMeans, (get) => valueCell(get('ratio_of_means'), words)),
  ];
}

function notesOf(setting: Setting): readonly string[] {
  const { plan, words } = setting;
  const [from, to] = plan.acuity.distance_target;
  const { notes } = words.tables.safety;
  const { distance } = words.tables.notes.acuity;
  return [
    notes.edges,
    notes.cataract,
    notes.ratios,
    distance(signed(from, 2), signed(to, 2), provenance(setting, 'without_target')),
  ];
}
