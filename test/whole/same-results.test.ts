// The same examinations written otherwise give the same results.csv, byte for byte (../shared/spec/7-model.md §14).
import { expect, it } from 'vitest';
import { stream } from '../../sample-exports/generator/random.js';
import {
  type ColumnForm,
  columnIndex,
  type Exports,
  mappingsOf,
  resultsText,
  rewrite,
  type Sheet,
  sampleExports,
  sheetNamed,
} from './exports.js';

const original = await resultsText(sampleExports());
const lines = original.split('\n');

async function expectSameResults(change: (exports: Exports) => void): Promise<void> {
  const exports = sampleExports();
  change(exports);
  const found = await resultsText(exports);
  // The whole would be thousands of lines: the first one that is not the same says enough.
  const at = found.split('\n').findIndex((line, i) => line !== lines[i]);
  expect(at < 0 ? undefined : found.split('\n')[at]).toBe(at < 0 ? undefined : lines[at]);
  expect(found).toHaveLength(original.length);
}

/** Numbers 0 … n − 1 in an order drawn from a seed. */
function shuffled(n: number, name: string): readonly number[] {
  const random = stream(11, name);
  const lots = Array.from({ length: n }, () => random.uniform());
  return Array.from({ length: n }, (_, i) => i).sort((a, b) => (lots[a] as number) - (lots[b] as number));
}

/** A number in a cell; undefined where none stands there. */
function numberIn(cell: string, decimal: ',' | '.'): number | undefined {
  const plain = cell.replace(decimal, '.');
  return /^[+-]?\d*\.?\d+$/.test(plain) ? Number(plain) : undefined;
}

it('has results to be the same', () => {
  expect(lines.length).toBeGreaterThan(5000);
});

it('when columns are renamed and stand in another order', () =>
  expectSameResults((exports) => {
    for (const [file, sheet] of Object.entries(exports.sheets)) {
      const order = shuffled(sheet.header.length, file);
      const fresh = sheet.header.map((header, i) => `${header} (${i + 1})`);
      for (const mapping of mappingsOf(exports, file)) {
        for (const [field, form] of Object.entries(mapping.columns)) {
          const { occurrence: _, ...rest } = typeof form === 'string' ? { column: form } : form;
          mapping.columns[field] = { ...rest, column: fresh[columnIndex(sheet, form)] as string };
        }
      }
      sheet.header = order.map((i) => fresh[i] as string);
      sheet.rows = sheet.rows.map((row) => order.map((i) => row[i] ?? ''));
    }
  }));

it('when the files have another delimiter', () =>
  expectSameResults(({ audit, sheets }) => {
    const names = { '\t': 'tab', '|': 'pipe' } as const;
    Object.values(sheets).forEach((sheet, i) => {
      sheet.delimiter = i % 2 === 0 ? '\t' : '|';
    });
    for (const source of audit.sources) {
      const delimiter = sheets[source.file]?.delimiter as keyof typeof names;
      source.reading = { ...source.reading, delimiter: names[delimiter] };
    }
  }));

it('when the files have the other decimal mark, declared or not', () =>
  expectSameResults(({ audit, sheets }) => {
    for (const source of audit.sources) {
      const sheet = sheets[source.file] as Sheet;
      const [from, to] = source.file === 'lane-north.csv' ? [',', '.'] : ['.', ','];
      const number = new RegExp(`^([+-]?\\d*)\\${from}(\\d+)$`);
      sheet.rows = sheet.rows.map((row) => row.map((cell) => cell.replace(number, `$1${to}$2`)));
      if (source.reading) source.reading = { ...source.reading, decimal: 'auto' };
    }
  }));

it('when cylinders are written in the other notation', () =>
  expectSameResults((exports) => {
    transpose(exports, 'lane-north.csv', ',');
    transpose(exports, 'lane-south.csv', '.');
    for (const { columns } of mappingsOf(exports, 'lane-south.csv'))
      columns.cylinder = { column: '+cyl', notation: 'signed' };
  }));

/** (S, C, a) → (S + C, −C, a ± 90), in rows where all three can be read; slips stay as they are. */
function transpose(exports: Exports, file: string, decimal: ',' | '.'): void {
  const sheet = sheetNamed(exports, file);
  const [source] = mappingsOf(exports, file);
  const { sphere, cylinder, axis } = (source as { columns: Record<'sphere' | 'cylinder' | 'axis', ColumnForm> })
    .columns;
  const at = [sphere, cylinder, axis].map((form) => columnIndex(sheet, form)) as [number, number, number];
  const text = (value: number): string => value.toFixed(2).replace('.', decimal);
  let times = 0;
  for (const row of sheet.rows) {
    const [s, c, a] = at.map((i) => numberIn(row[i]?.replace('plano', '0') ?? '', decimal));
    if (s === undefined || !c || a === undefined || a > 180) continue;
    at.forEach((i, part) => {
      row[i] = [text(s + c), text(-c), String(a > 90 ? a - 90 : a + 90)][part] as string;
    });
    times++;
  }
  expect(times).toBeGreaterThan(300);
}

it('when eyes are called by other words', () =>
  expectSameResults((exports) => {
    const words: Readonly<Record<string, string>> = {
      RA: 'D',
      LA: 'S',
      OD: 'Right eye',
      OS: 'l.',
      OU: 'both',
      right: 'OD',
      left: 'O.S.',
      R: '1',
      L: '2',
    };
    for (const file of Object.keys(exports.sheets)) {
      for (const { columns } of mappingsOf(exports, file)) {
        if (columns.eye === undefined) continue;
        rewrite(sheetNamed(exports, file), columns.eye, (cell) => words[cell] ?? cell);
        const { column } = typeof columns.eye === 'string' ? { column: columns.eye } : columns.eye;
        columns.eye = { column, words: { right: ['D', '1'], left: ['S', '2'] } };
      }
    }
  }));

it('when rows are shuffled', () =>
  expectSameResults(({ sheets }) => {
    for (const [file, sheet] of Object.entries(sheets)) {
      sheet.rows = shuffled(sheet.rows.length, file).map((i) => sheet.rows[i] as string[]);
    }
  }));

it('when sources stand in another order: no tie of the sample falls to it', () =>
  expectSameResults(({ audit }) => {
    audit.sources.reverse();
  }));

it('when files are cut in two and met by a pattern', () =>
  expectSameResults(({ audit, sheets }) => {
    for (const source of audit.sources) {
      const { file } = source;
      const sheet = sheets[file] as Sheet;
      const half = Math.floor(sheet.rows.length / 2);
      delete sheets[file];
      sheets[file.replace('.csv', '-1.csv')] = { ...sheet, rows: sheet.rows.slice(0, half) };
      sheets[file.replace('.csv', '-2.csv')] = { ...sheet, rows: sheet.rows.slice(half) };
      source.file = file.replace('.csv', '-*.csv');
    }
  }));

it('when files are in another encoding, declared or not', () =>
  expectSameResults(({ audit, sheets }) => {
    for (const source of audit.sources) {
      const sheet = sheets[source.file] as Sheet;
      const wasUtf8 = sheet.encoding === 'utf-8';
      sheet.encoding = wasUtf8 ? 'utf-16' : 'utf-8';
      if (source.reading) source.reading = { ...source.reading, encoding: wasUtf8 ? 'utf-16' : 'auto' };
    }
  }));

it('when radii are written as dioptres', () =>
  expectSameResults((exports) => {
    for (const { columns } of mappingsOf(exports, 'keratometer.csv')) {
      for (const [field, column] of [
        ['k1', 'R1'],
        ['k2', 'R2'],
      ] as const) {
        rewrite(sheetNamed(exports, 'keratometer.csv'), column, (cell) => String(337.5 / Number(cell)));
        columns[field] = column;
      }
    }
  }));

it('when dates of examinations are written as days from surgery', () =>
  expectSameResults((exports) => {
    const day = (text: string): number => Date.parse(text) / 86_400_000;
    const theatre = sheetNamed(exports, 'theatre-list.csv');
    // Of two operations on one eye the first row is its own.
    const surgery = new Map(
      theatre.rows
        .toReversed()
        .map(([code, side, date = '']) => [`${code} ${side}`, day(date.split('/').reverse().join('-'))]),
    );
    const keratometer = sheetNamed(exports, 'keratometer.csv');
    rewrite(keratometer, 'Taken', (cell, [code, side]) => {
      const operated = surgery.get(`${code} ${side}`);
      return operated === undefined ? '' : String(day(cell.slice(0, 10)) - operated);
    });
    for (const { columns } of mappingsOf(exports, 'keratometer.csv')) {
      delete columns.exam_date;
      columns.days = 'Taken';
    }
  }));
