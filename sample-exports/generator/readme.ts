import type { Expected } from './expected.js';
import { HABITS } from './habits.js';
import type { Sheet } from './sheet.js';
import { fixed } from './sheet.js';
import type { FurtherCell, Slip } from './slip.js';

/** A table whose columns line up in the source too. */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((text, i) => Math.max(text.length, ...rows.map((row) => row[i]?.length ?? 0)));
  const line = (cells: readonly string[]) => `| ${cells.map((text, i) => text.padEnd(widths[i] ?? 0)).join(' | ')} |`;
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)].join('\n');
}

function filesTable(made: readonly Sheet[]): string {
  const between = (sheet: Sheet) => (sheet.delimiter === ';' ? 'semicolon' : 'comma');
  const rows = made.map((sheet) => [`\`${sheet.file}\``, `${sheet.rows.length}`, sheet.encoding, between(sheet)]);
  return table(['file', 'rows of data', 'encoding', 'delimiter'], rows);
}

function plantedTable(expected: readonly Expected[], audit: Expected['audit']): string {
  const rows = expected
    .filter((effect) => effect.audit === audit)
    .map(({ measure, group, statistic, planted, expected: value, standardError, mistakes }) => [
      `\`${measure}\``,
      `\`${group}\``,
      `\`${statistic}\``,
      planted ?? '',
      fixed(value, 3),
      fixed(standardError, 3),
      mistakes
        .map(({ mistake, value: wrong, away }) => `${mistake}: ${fixed(wrong, 3)} (${fixed(away, 1)})`)
        .join('<br>'),
    ]);
  const head = [
    'measure',
    'group',
    'statistic',
    'planted',
    'expected',
    'standard error',
    'by a mistake (standard errors away)',
  ];
  return table(head, rows);
}

const HOW = {
  repeated: 'the row above once more',
  stray: 'no such operation',
  unexamined: 'in no other file',
} as const;

function slipsTable(slips: readonly Slip[]): string {
  const quoted = (text: string) => (text === '' ? 'nothing' : `\`${text}\``);
  const further = ({ column, value, should }: FurtherCell) => `${column} ${quoted(value)}, not ${quoted(should)}`;
  const rows = slips.map(({ rule, file, row, column, value, how }) => [
    rule,
    `\`${file}\``,
    `${row}`,
    column,
    quoted(value),
    how.kind === 'mistyped' ? [quoted(how.should), ...(how.also ?? []).map(further)].join('; ') : HOW[how.kind],
  ]);
  return table(['rule', 'file', 'row', 'column', 'stands there', 'should be'], rows);
}

function habitsTable(): string {
  return table(
    ['rule', 'file', 'habit'],
    HABITS.map(({ rule, file, habit }) => [rule, `\`${file}\``, habit]),
  );
}

/** Puts `text` between a pair of marks. */
function between(readme: string, name: string, text: string): string {
  const [open, close] = [`<!-- ${name} -->\n`, `\n<!-- end of ${name} -->`];
  const start = readme.indexOf(open);
  const end = readme.indexOf(close, start);
  if (start < 0 || end < 0) throw new RangeError(`fillReadme: README.md has no marks for "${name}"`);
  return `${readme.slice(0, start + open.length)}${text}${readme.slice(end)}`;
}

/** The README with its tables made from what was planted. */
export function fillReadme(
  readme: string,
  made: readonly Sheet[],
  expected: readonly Expected[],
  slips: readonly Slip[],
): string {
  const parts = {
    files: filesTable(made),
    planted: plantedTable(expected, 'audit.yaml'),
    'planted in the wide file': plantedTable(expected, 'wide-audit.yaml'),
    slips: slipsTable(slips),
    habits: habitsTable(),
  };
  return Object.entries(parts).reduce((text, [name, part]) => between(text, name, part), readme);
}
