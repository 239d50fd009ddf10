import { withPair } from '../comparison/group.js';
import type { Plan, Visit } from '../records/plan.js';
import type { Results } from '../results/index.js';
import { groupPair } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, meanSdCell, shareCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { block, cohortHead, statisticStub } from './rows.js';
import type { Asked, Column, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';

const measures = ['spherical_equivalent', 'refractive_cylinder_recorded'] as const;

/** Refraction over the declared visits: all eyes that came, the same eyes at every visit, and what changed between. */
export function stability(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const visits = plan.follow_up.visits.map(({ name }) => name);
  const changed = visits
    .slice(1)
    .some((visit) => results.find(`${measures[0]}:change`, pairOf('all', visit), 'n')?.value);
  if (!changed) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const { notes, titles } = words.tables.standing;
  return finish(
    {
      id: 'stability',
      title: titles.stability(visits.join(', ')),
      head: cohortHead(setting, statisticStub(setting), 'flow:eligible', 'analysed'),
      rows: measures.flatMap((measure) => measureRows(setting, measure, visits)),
      footnotes: [
        notes.beyond,
        notes.visits(plan.follow_up.visits.map((visit) => windowText(visit, words)).join('; ')),
        notes.sameEyes,
      ],
    },
    setting,
  );
}

function windowText({ name, days }: Visit, { tables }: Words): string {
  return days === undefined ? name : tables.standing.notes.window(name, String(days[0]), String(days[1]));
}

/** The group of a column at a visit. */
const pairOf = (group: string, visit: string): string => withPair(group, groupPair('visit', visit));

function measureRows(setting: Setting, measure: (typeof measures)[number], visits: readonly string[]) {
  const { results, columns, words } = setting;
  const { rows } = words.tables;
  const text = words.tables.standing;
  const row = (name: string, visit: string, label: string, cell: (get: Asked) => ShownCell): DraftRow => {
    const cellOf = ({ group }: Column) => cell((statistic) => results.get(name, pairOf(group, visit), statistic));
    return { label, indent: 1, cells: columns.map(cellOf) };
  };
  const at = (name: string, visit: string): readonly DraftRow[] => [
    row(name, visit, text.rows.at(visit, rows.eyes), (get) => eyesCell(get, words)),
    row(name, visit, text.rows.at(visit, rows.mean), (get) => estimateCell(get('mean'), words)),
    row(name, visit, text.rows.at(visit, rows.sd), (get) => estimateCell(get('sd'), words)),
  ];
  const change = (visit: string, before: string): readonly DraftRow[] => [
    block(text.blocks.change(text.blocks[measure], before, visit)),
    row(`${measure}:change`, visit, rows.eyes, (get) => eyesCell(get, words)),
    row(`${measure}:change`, visit, rows.meanSd, (get) => meanSdCell(get, words)),
    row(`${measure}:change`, visit, text.rows.beyond, (get) =>
      shareCell(get('share_beyond_0.50'), get('count_beyond_0.50'), words),
    ),
  ];
  return [
    block(text.blocks.all(text.blocks[measure])),
    ...visits.flatMap((visit) => at(`${measure}:visit`, visit)),
    block(text.blocks.same(text.blocks[measure])),
    ...visits.flatMap((visit) => at(`${measure}:same_eyes`, visit)),
    ...visits.slice(1).flatMap((visit, i) => change(visit, visits[i] as string)),
  ];
}
