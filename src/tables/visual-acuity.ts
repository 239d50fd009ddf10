import { fixed, signed } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, rangeCell, shareCell, snellenCell, valueCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { flowNote, followUpNotes, type OutcomeFamily, outcomeVisit } from './follow-up.js';
import { metresOf } from './lines.js';
import { across, block, cohortHead, provenance, statisticStub } from './rows.js';
import type { DraftRow, Setting, UnnumberedTable } from './shapes.js';

const acuities = ['udva', 'udva_before', 'cdva', 'cdva_before', 'udva:near_target', 'uiva', 'unva'] as const;
type Acuity = (typeof acuities)[number];

const line = 'share_at_or_better_';

/** Uncorrected (distance-target eyes) and corrected acuity, after and before surgery. */
export function visualAcuity(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const shown = acuities.filter((name) => results.find(name, 'all', 'n')?.value);
  const families = familiesOf(shown);
  if (families.length === 0) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const { titles } = words.tables;
  return finish(
    {
      id: 'visual-acuity',
      title: titles['visual-acuity'](outcomeVisit(plan, words)),
      head: cohortHead(setting, statisticStub(setting), 'flow:eligible', 'analysed'),
      rows: shown.flatMap((name) => [block(blockOf(name, words)), ...acuityRows(setting, name)]),
      footnotes: [...acuityNotes(setting, shown), ...followUpNotes(setting, families)],
    },
    setting,
  );
}

function blockOf(name: Acuity, { tables }: Words): string {
  const { udva, udva_before, cdva, cdva_before } = tables.blocks;
  const blocks: Partial<Record<Acuity, string>> = { udva, udva_before, cdva, cdva_before };
  return blocks[name] ?? tables.outcomes[name]?.block ?? name;
}

/** Families whose acuity after surgery is shown: they have an outcome visit. */
function familiesOf(shown: readonly Acuity[]): readonly OutcomeFamily[] {
  return [
    ...(shown.includes('udva') ? (['uncorrected'] as const) : []),
    ...(shown.includes('cdva') ? (['corrected'] as const) : []),
  ];
}

function acuityRows(setting: Setting, name: Acuity): readonly DraftRow[] {
  const { words } = setting;
  const { rows } = words.tables;
  const row = (label: string, cell: Parameters<typeof across>[3]) => across(setting, name, label, cell);
  return [
    row(rows.eyes, (get) => eyesCell(get, words)),
    row(rows.mean, (get) => estimateCell(get('mean'), words)),
    row(rows.sd, (get) => estimateCell(get('sd'), words)),
    row(rows.snellen, (get) => snellenCell(get('mean'), words)),
    row(rows.median, (get) => estimateCell(get('median'), words)),
    row(rows.range, (get) => rangeCell(get, words)),
    row(rows.substituted, (get) => valueCell(get('substituted'), words)),
    ...linesOf(setting, name).map((feet) =>
      row(rows.atOrBetter(feet, metresOf(feet)), (get) =>
        shareCell(get(`${line}${feet}`), get(`count_at_or_better_${feet}`), words),
      ),
    ),
  ];
}

/** The lines of an acuity's cumulative shares, in feet, in the order of its rows. */
function linesOf({ results }: Setting, name: Acuity): readonly string[] {
  return results.rows
    .filter((row) => row.measure === name && row.group === 'all' && row.statistic.startsWith(line))
    .map((row) => row.statistic.slice(line.length));
}

function acuityNotes(setting: Setting, shown: readonly Acuity[]): readonly string[] {
  const { plan, words } = setting;
  const { distance, lines, lowVision, mean } = words.tables.notes.acuity;
  const { distance_target: target, low_vision: low } = plan.acuity;
  const uncorrected = shown.some((name) => name.startsWith('udva'));
  return [
    ...(uncorrected
      ? [distance(signed(target[0], 2), signed(target[1], 2), provenance(setting, 'without_target'))]
      : []),
    ...(shown.includes('udva:near_target')
      ? [words.tables.safety.notes.unaimed, flowNote(setting, 'near_target')]
      : []),
    mean,
    lowVision(fixed(low.count_fingers, 1), fixed(low.hand_movements, 1)),
    lines,
    words.tables.notes.otherDay(provenance(setting, 'value_from_other_day')),
  ];
}
