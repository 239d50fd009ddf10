import { markdownText } from '../tables/render/markdown.js';
import type { Words } from '../words/index.js';
import type { ColumnRecord } from './copy.js';
import { removed } from './harmless.js';
import type { LeftOut } from './roles.js';
import { cellsRemoved, columnsLeftOut, columnsOfKind, type FileRecord, type RunRecord } from './run-record.js';

type Text = Words['deidentify'];

const line = (cells: readonly (string | number)[]): string =>
  `| ${cells.map((cell) => (typeof cell === 'number' ? String(cell) : markdownText(cell))).join(' | ')} |`;

function table(head: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  return [line(head), `| ${head.map(() => '---').join(' | ')} |`, ...rows.map(line)].join('\n');
}

const names: readonly LeftOut[] = ['header-name', 'value-person'];
const contacts: readonly LeftOut[] = ['header-contact', 'value-email', 'value-phone', 'value-web-address'];
const numbers: readonly LeftOut[] = ['header-number', 'value-national-number', 'value-long-number', 'patient-number'];
const others: readonly LeftOut[] = ['own-number', 'row-number', 'free-text', 'unknown-words'];
const births: readonly LeftOut[] = ['header-birth', 'value-birth-date', 'birth-year'];
const parts: readonly LeftOut[] = ['part-date'];

/** Every item of the list, and what was done about it here. */
function listLines({ files, patients }: RunRecord, { record: { list } }: Text): string {
  const columns = (reasons: readonly LeftOut[]): string => list.columns(columnsLeftOut(files, reasons));
  const bornIn = columnsOfKind(files, ['birth']) + columnsLeftOut(files, births);
  const did: Readonly<Record<keyof typeof list.items, string>> = {
    A: `${columns(names)}; ${list.codes(patients)}`,
    B: columns(['header-address']),
    C: list.dates(bornIn, columnsOfKind(files, ['surgery-date', 'date']), columnsLeftOut(files, parts)),
    'D, E, F, N, O': columns(contacts),
    'G to M': list.numbers(columnsLeftOut(files, numbers)),
    P: list.biometric,
    Q: columns(['header-photo']),
    R: list.other(columnsLeftOut(files, others), cellsRemoved(files), removed),
  };
  const items = Object.entries(list.items) as [keyof typeof list.items, string][];
  return table(
    list.head,
    items.map(([item, identifier]) => [item, identifier, did[item]]),
  );
}

function columnRow({ header, role, became, cells, removed: replaced }: ColumnRecord, text: Text): (string | number)[] {
  const { files } = text.record;
  if (role.kind === 'left-out') {
    return [header, files.nothing, files.leftOut(text.leftOut[role.why]), cells, 0];
  }
  const isSame = became.length === 1 && became[0] === header;
  const shown = became.length === 0 ? files.merged : isSame ? files.same : became.join(', ');
  return [header, shown, text.done[role.kind], cells, replaced];
}

function fileBlocks(one: FileRecord, text: Text): readonly string[] {
  const { files } = text.record;
  const dates = one.columns.reduce((sum, { withoutSurgery }) => sum + withoutSurgery, 0);
  const notes = [
    one.renamed ? files.renamed(one.place) : '',
    files.rows(one.rows, one.ragged, one.passedOver),
    one.nobody > 0 ? files.nobody(one.nobody) : '',
    one.unreadable > 0 ? files.unreadable(one.unreadable) : '',
    dates > 0 ? files.withoutSurgery(dates) : '',
  ].filter((note) => note !== '');
  return [
    `### ${markdownText(one.copy)}`,
    notes.join(' '),
    table(
      files.head,
      one.columns.map((column) => columnRow(column, text)),
    ),
  ];
}

/** Columns of one kind, file by file: what a reader of the copies should look at. */
function keptLine(files: readonly FileRecord[], kind: 'labels' | 'reviewed', label: string): string {
  const found = files.flatMap(({ copy, columns }) => {
    const headers = columns.filter(({ role }) => role.kind === kind).map(({ became }) => became.join(', '));
    return headers.length === 0 ? [] : [`${copy}: ${headers.join(', ')}`];
  });
  return found.length === 0 ? '' : `${label}. ${found.map(markdownText).join('; ')}.`;
}

function keptBlocks({ files }: RunRecord, { record: { kept } }: Text): readonly string[] {
  const found = [keptLine(files, 'labels', kept.labels), keptLine(files, 'reviewed', kept.reviewed)];
  const shown = found.filter((one) => one !== '');
  return shown.length === 0 ? [kept.none] : [...kept.lines, ...shown];
}

/**
 * The written record of a run, as Markdown: what became of every column, the list that was followed, and what remains to
 * be done by people. It holds no cell of any file.
 */
export function recordText(run: RunRecord, version: string, words: Words): string {
  const text = words.deidentify;
  const { title, madeBy, duty, list, files, kept } = text.record;
  const blocks = [
    `# ${title}`,
    madeBy(markdownText(version)),
    `## ${duty.title}`,
    ...duty.lines,
    run.order ? duty.order : duty.noOrder,
    `## ${list.title}`,
    list.source,
    listLines(run, text),
    `## ${files.title}`,
    ...run.files.flatMap((one) => fileBlocks(one, text)),
    `## ${kept.title}`,
    ...keptBlocks(run, text),
  ];
  return `${blocks.join('\n\n')}\n`;
}
