import { type Benchmark, chosenBenchmarks } from '../benchmarks/published.js';
import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, shareCell, valueCell } from './cells.js';
import { finish } from './finish.js';
import { outcomeVisit } from './follow-up.js';
import { levelText } from './level.js';
import { noteCodes } from './marks.js';
import { block } from './rows.js';
import type { DraftRow, ShownCell, UnnumberedTable } from './shapes.js';

/** This audit beside published figures, each under that figure's own definition, and beside its own former report. */
export function benchmarks(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const shown = chosenBenchmarks(plan.benchmarks.published).filter(
    ({ id, statistic }) => (results.find(`benchmark:${id}`, 'all', statistic)?.n ?? 0) > 0,
  );
  const former = results.rows.filter(
    ({ measure, statistic }) => measure.startsWith('former:') && statistic.startsWith('difference_'),
  );
  if (shown.length === 0 && former.length === 0) return undefined;
  const { heads, notes, titles, blocks } = words.tables.standing;
  return finish(
    {
      id: 'benchmarks',
      title: titles.benchmarks(outcomeVisit(plan, words)),
      head: [
        { text: heads.figure },
        { text: heads.beside },
        { text: words.tables.withInterval(heads.audit, levelText(plan)) },
        { text: heads.difference },
        { text: heads.verdict },
      ],
      rows: [
        ...(shown.length === 0 ? [] : [block(blocks.published)]),
        ...shown.map((one) => publishedRow(one, results, words)),
        ...(former.length === 0 ? [] : [block(blocks.former)]),
        ...former.map((row) => formerRow(row, results, words)),
      ],
      footnotes: [
        ...(shown.length === 0 ? [] : [notes.definition, notes.line, ...shown.map((one) => sourceNote(one, words))]),
        ...(former.length === 0 ? [] : [notes.former]),
      ],
    },
    { results, plan, words, columns: [] },
  );
}

const empty: ShownCell = { text: '', rows: [] };

function verdictCell(row: ResultRow, words: Words): ShownCell {
  const code = noteCodes(row).find((note) => note.startsWith('verdict:'));
  const texts: Readonly<Record<string, string>> = words.tables.standing.verdicts;
  return code === undefined ? empty : { text: texts[code.slice('verdict:'.length)] ?? '', rows: [row] };
}

function publishedRow({ id, statistic, source }: Benchmark, results: Results, words: Words): DraftRow {
  const get = (name: string) => results.get(`benchmark:${id}`, 'all', name);
  const own = get(statistic);
  return {
    label: `${statisticText(statistic, words)}: ${source.split(',')[0]}`,
    indent: 1,
    cells: [
      valueCell(get('share_published'), words),
      shareCell(own, get(statistic.replace('share', 'count')), words),
      empty,
      verdictCell(own, words),
    ],
  };
}

/** 'within ±0.50 D', '20/40 or better'. */
function statisticText(statistic: string, { tables }: Words): string {
  const [, kind, limit = ''] = /^share_(within|at_or_better)_(.*)$/.exec(statistic) ?? [];
  return kind === 'within' ? tables.standing.rows.within(limit) : tables.standing.rows.orBetter(limit);
}

function formerRow(row: ResultRow, results: Results, words: Words): DraftRow {
  const measure = row.measure.slice('former:'.length);
  const statistic = row.statistic.slice('difference_'.length);
  const own = results.get(measure, 'all', statistic);
  const name = words.tables.outcomes[measure]?.name ?? measure;
  const part = /^share_/.test(statistic)
    ? statisticText(statistic, words)
    : words.tables.standing.statistics[statistic];
  return {
    label: part === undefined || statistic === 'share' ? name : `${name}, ${part}${unitOf(own)}`,
    indent: 1,
    cells: [
      estimateCell(results.get(row.measure, 'all', statistic), words),
      own.unit === 'share'
        ? shareCell(own, results.get(measure, 'all', statistic.replace('share', 'count')), words)
        : estimateCell(own, words),
      estimateCell(row, words),
      verdictCell(row, words),
    ],
  };
}

/** ', D' behind the name of what is no share. */
const unitOf = ({ unit }: ResultRow): string => (unit === 'share' || unit === '' ? '' : `, ${unit}`);

function sourceNote({ id, source, remark, counts }: Benchmark, words: Words): string {
  const eyes = counts && words.tables.standing.notes.eyes(count(counts[0]), count(counts[1]));
  return words.tables.standing.notes.source(id, source, eyes === undefined ? remark : `${remark}; ${eyes}`);
}
