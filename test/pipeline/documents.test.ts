import { strFromU8, unzipSync } from 'fflate';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { tabulate } from '../../pipeline/6-tabulate.js';
import { wordTables } from '../../pipeline/documents/word.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { comparedRows } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';

const tables = tabulate(indexResults(comparedRows), planOf(), en);
const font = 'Times New Roman';
const part = (bytes: Uint8Array, name: string): string => strFromU8(unzipSync(bytes)[name] ?? new Uint8Array());
const plain = (xml: string): string => xml.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&amp;/g, '&');

/** Cells of the tables of a document, by row (ECMA-376, part 1, section 17.4: w:tr, w:tc; 17.3.3.31: w:t). */
function rowsOf(xml: string): readonly (readonly string[])[] {
  return [...xml.matchAll(/<w:tr>.*?<\/w:tr>/gs)].map(([row]) =>
    [...row.matchAll(/<w:tc>.*?<\/w:tc>/gs)].map(([cell]) =>
      [...cell.matchAll(/<w:t[ >][^<]*/g)].map(([text]) => plain(text.slice(text.indexOf('>') + 1))).join(''),
    ),
  );
}

afterEach(() => {
  vi.useRealTimers();
  process.env.TZ = 'UTC';
});

describe('wordTables', async () => {
  const bytes = await wordTables(tables, font, en);
  const xml = part(bytes, 'word/document.xml');

  it('holds every cell of every table as it was typeset', () => {
    const wanted = tables.flatMap(({ head, rows }) => [
      head.length,
      ...rows.map(({ label, cells }) => [label, ...cells.map(({ text }) => text)]),
    ]);
    const found = rowsOf(xml);
    let at = 0;
    for (const row of wanted) {
      if (typeof row === 'number') expect(found[at]).toHaveLength(row);
      else expect(found[at]).toEqual(row);
      at += 1;
    }
    expect(found).toHaveLength(at);
    expect(at).toBeGreaterThan(100);
  });

  // ECMA-376, part 1: 17.4.49 tblHeader, 17.4.6 cantSplit, 17.4.38 tblBorders (sizes in eighths of a point).
  it('has three rules, no upright one, and a head that every page repeats', () => {
    expect(xml.match(/<w:tbl>/g)).toHaveLength(tables.length);
    expect(xml.match(/<w:tblHeader\/>/g)).toHaveLength(tables.length);
    const heads = [...xml.matchAll(/<w:tr>(?:(?!<\/w:tr>).)*<w:tblHeader\/>.*?<\/w:tr>/gs)];
    for (const [head] of heads) expect(head).toContain('<w:bottom w:val="single" w:color="000000" w:sz="6"/>');
    const borders = [...xml.matchAll(/<w:tblBorders>(.*?)<\/w:tblBorders>/gs)].map(([, found]) => found ?? '');
    for (const found of borders) {
      expect(found).toContain('<w:top w:val="single" w:color="000000" w:sz="12"/>');
      expect(found).toContain('<w:bottom w:val="single" w:color="000000" w:sz="12"/>');
      for (const side of ['left', 'right', 'insideH', 'insideV']) expect(found).toContain(`<w:${side} w:val="none"`);
    }
  });

  it('sets all text in the font asked for, captions above and footnotes below', () => {
    expect(part(bytes, 'word/styles.xml')).toContain(`w:ascii="${font}"`);
    for (const table of tables) {
      const text = plain(xml.replace(/<[^>]*>/g, ''));
      expect(text).toContain(`Table ${table.number}. ${table.title}`);
      for (const note of table.footnotes) expect(text).toContain(note);
    }
  });

  it('is the same to the byte at another time and in another zone', async () => {
    vi.useFakeTimers({ now: new Date('2031-07-05T23:30:00Z'), toFake: ['Date'] });
    process.env.TZ = 'Pacific/Honolulu';
    expect(Buffer.compare(await wordTables(tables, font, en), bytes)).toBe(0);
  });

  it('bears no moment at which it was made', () => {
    const dates = part(bytes, 'docProps/core.xml').match(/\d{4}-\d\d-\d\dT/g) ?? [];
    expect(new Set(dates)).toEqual(new Set(['1980-01-01T']));
  });
});
