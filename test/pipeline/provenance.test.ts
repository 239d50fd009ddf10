// Every number that a report prints, in whatever form, leads to one row of results.csv and is that row's number.
import { parse } from 'csv-parse/sync';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { ResultRow } from '../../src/records/result.js';
import { intervalText, valueText } from '../../src/tables/value-text.js';
import { en } from '../../src/words/index.js';
import { auditText, filesOf, folderWith, report, runIn, textOf } from './publish-audit.js';

const io = folderWith();
const outcome = await runIn(io, {
  text: `${auditText}\noutputs: { tables: [csv, md, docx, tex], figures: [svg], leave_out: [double-angle] }\n`,
});
if (outcome.kind !== 'published') throw new RangeError(`the hand audit ended as ${outcome.kind}`);
const { all } = outcome;
type Line = Record<string, string>;
const lines = (path: string): Line[] => parse(textOf(io, `${report}/${path}`), { columns: true, bom: true });
const results = lines('publication/results.csv');
const provenance = lines('publication/provenance.csv');
const keyOf = ({ measure, group, statistic }: Line): string => `${measure}|${group}|${statistic}`;
const written = new Map(results.map((row) => [keyOf(row), row]));

describe('provenance', () => {
  it('gives every table and figure an id of its own, which stands in the manifest too', () => {
    const exhibits = [...all.typeset, ...all.figures];
    const ids = exhibits.map((one) => one.provenance ?? '');
    expect(new Set(ids).size).toBe(exhibits.length);
    for (const id of ids) expect(id).toMatch(/^[tf]-[0-9a-f]{8}$/);
    const manifest = JSON.parse(textOf(io, `${report}/manifest.json`)) as Record<
      'tables' | 'figures',
      Record<string, { provenance: string; from: string[] }>
    >;
    for (const { id, provenance: own } of all.typeset) expect(manifest.tables[id]?.provenance).toBe(own);
    for (const { id, provenance: own } of all.figures) expect(manifest.figures[id]?.provenance).toBe(own);
  });

  it('leads from each id to rows that are in results.csv', () => {
    expect(provenance.length).toBeGreaterThan(300);
    expect(provenance.filter((line) => !written.has(keyOf(line)))).toEqual([]);
    const ids = new Set(provenance.map(({ id }) => id));
    for (const { provenance: id } of all.typeset) expect(ids.has(id)).toBe(true);
  });

  it('stands on every printout: under each table in every form, at the end of each legend', () => {
    for (const { id, number, provenance: own = '' } of all.typeset) {
      const path = `${report}/publication/tables/${number}-${id}`;
      for (const form of ['csv', 'md', 'tex']) expect(textOf(io, `${path}.${form}`), form).toContain(own);
      const docx = unzipSync(io.files.get(`${path}.docx`) as Uint8Array)['word/document.xml'];
      expect(strFromU8(docx as Uint8Array)).toContain(own);
    }
    const legends = textOf(io, `${report}/publication/legends.md`);
    for (const { provenance: own = '' } of [...all.typeset, ...all.figures]) expect(legends).toContain(own);
  });

  it('changes when a number does', async () => {
    const other = folderWith();
    const moved = await runIn(other, {
      text: `${auditText.replace('above: 30', 'above: 31')}\noutputs: { figures: [svg], leave_out: [double-angle] }\n`,
    });
    if (moved.kind !== 'published') throw new RangeError(moved.kind);
    const id = (of: typeof all) => of.typeset.find((table) => table.id === 'refractive-accuracy')?.provenance;
    expect(id(moved.all)).not.toBe(id(all));
  });
});

describe('a number is one number', () => {
  const numbers = (text: string): readonly string[] =>
    text
      .replaceAll('\u2212', '-')
      .replace(/(?<=\d),(?=\d{3}(?!\d))/g, '')
      .match(/-?\d+(?:\.\d+)?/g) ?? [];
  /** The row as results.csv has it: what is printed must follow from the file, not from memory. */
  const rowOf = (key: string): ResultRow => {
    const line = written.get(key);
    if (!line) throw new RangeError(`no row ${key}`);
    const number = (name: string) => (line[name] === '' ? undefined : Number(line[name]));
    return {
      ...(line as unknown as ResultRow),
      value: number('value'),
      ci_low: number('ci_low'),
      ci_high: number('ci_high'),
      n: Number(line.n),
      eyes: Number(line.eyes),
      patients: Number(line.patients),
    };
  };
  const printed = (key: string): readonly string[] => {
    const row = rowOf(key);
    return [
      valueText(row, en),
      intervalText(row, en) ?? '',
      String(row.n),
      String(row.patients),
      String(row.eyes),
    ].flatMap(numbers);
  };

  it('in every cell of every table, in all four files', () => {
    let met = 0;
    for (const table of all.typeset) {
      const path = `${report}/publication/tables/${table.number}-${table.id}`;
      const texts = ['csv', 'md', 'tex'].map(
        (form) => new Set(numbers(textOf(io, `${path}.${form}`).replaceAll('$-$', '-'))),
      );
      const xml = strFromU8(unzipSync(io.files.get(`${path}.docx`) as Uint8Array)['word/document.xml'] as Uint8Array);
      texts.push(new Set(numbers(xml.replace(/<[^>]*>/g, ' '))));
      for (const { cells } of table.rows) {
        for (const cell of cells) {
          for (const number of numbers(cell.text)) {
            met += 1;
            for (const text of texts) expect(text.has(number), `${table.id}: ${cell.text}`).toBe(true);
          }
          const known = new Set(cell.from.flatMap(printed));
          const plain = numbers(cell.text).filter((number) => !known.has(number));
          // Snellen fractions are set from the mean of the row; their own test holds them to the formula.
          if (!/^20\/\d+ \(6\//.test(cell.text))
            expect({ in: `${table.id}: ${cell.text}`, plain }).toEqual({ in: `${table.id}: ${cell.text}`, plain: [] });
        }
      }
    }
    expect(met).toBeGreaterThan(500);
  });

  it('on the page and in the pictures: every share of the headline is that of results.csv', () => {
    const share = rowOf('prediction_error|all|share_within_0.50');
    const text = valueText(share, en);
    expect(textOf(io, `${report}/publication/index.html`)).toContain(`${text} %`);
    expect(textOf(io, `${report}/publication/results.md`)).toContain(`${text} %`);
    const file = [...filesOf(io, report).keys()].find((path) => path.endsWith('accuracy-shares.svg')) ?? '';
    const shown = [...textOf(io, `${report}/${file}`).matchAll(/>([^<>]+)<\/text>/g)].flatMap(([, inside]) =>
      numbers(inside ?? ''),
    );
    const figure = all.figures.find(({ id }) => id === 'accuracy-shares');
    const rows = new Set((figure?.from ?? []).flatMap(printed));
    for (const key of figure?.from.filter((one) => one.endsWith('|share_within_0.50')) ?? []) {
      expect(shown).toContain(valueText(rowOf(key), en));
    }
    expect(figure?.from.some((one) => one.endsWith('|share_within_0.50'))).toBe(true);
    // Ticks of the axis, limits, the level, lines of the visit.
    const estimates = shown.filter((number) => number.includes('.') && !/^\d\.\d\d$/.test(number));
    expect(estimates.filter((number) => !rows.has(number))).toEqual([]);
  });
});
