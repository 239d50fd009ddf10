import { describe, expect, it } from 'vitest';
import { ingest } from '../../pipeline/1-ingest.js';
import type { Io } from '../../pipeline/io.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { tell } from '../../src/findings/telling.js';
import type { Finding, Findings } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import { en } from '../../src/words/index.js';
import { allFindings, findingsOf, ingested } from '../findings/audited.js';
import { type ColumnForm, planOf, type SourceForm } from '../findings/plan.js';

type Files = Readonly<Record<string, string | Uint8Array>>;

/** A lane file with the columns of a test, beside patient and eye. */
function lane(columns: Readonly<Record<string, ColumnForm>> = {}, more: Partial<SourceForm> = {}): Plan {
  return planOf([{ file: 'lane.csv', columns: { patient: 'ID', eye: 'Eye', ...columns }, ...more }]);
}

async function read(files: Files | string | Uint8Array, plan: Plan = lane()) {
  return ingested(typeof files === 'string' || files instanceof Uint8Array ? { 'lane.csv': files } : files, plan);
}

/** The only stop of a run, and its words. */
async function onlyStop(files: Files | string | Uint8Array, plan: Plan = lane()) {
  const { raw, findings } = await read(files, plan);
  const stops = allFindings(findings).filter(({ severity }) => severity === 'stop');
  expect(stops).toHaveLength(1);
  const finding = stops[0] as Finding;
  return { ...finding, told: tell(finding, { raw, plan, words: en.findings }) };
}

const severitiesOf = (findings: Findings): readonly string[] =>
  allFindings(findings).map(({ rule, severity }) => `${rule}: ${severity}`);

describe('a file', () => {
  it('that is missing is named, with the one that is there', async () => {
    const stop = await onlyStop({ 'lnae.csv': 'ID,Eye\nA1,R\n' });
    expect(stop).toMatchObject({ rule: 'file-missing', source: 0, written: 'lnae.csv', effect: 'nothing published' });
    expect(stop.told.sentence).toContain('lnae.csv');
    expect((await onlyStop({})).written).toBeUndefined();
  });

  it('of a pattern that meets none is missing too', async () => {
    const plan = lane({}, { file: 'exports/lane-*.csv' });
    const { raw, findings } = await read({ 'exports/lame-1.csv': 'ID,Eye\n' }, plan);
    expect(raw.map(({ file, rows }) => [file, rows])).toEqual([['exports/lane-*.csv', 0]]);
    expect(severitiesOf(findings)).toEqual(['file-missing: stop']);
  });

  it('that holds nothing, or only blanks, is empty', async () => {
    for (const text of ['', '\ufeff', '\n\n', ' ; ;\n;;\n']) {
      expect((await onlyStop(text, lane({}, { reading: { delimiter: 'semicolon' } }))).rule).toBe('file-empty');
    }
  });

  it('with a header and no rows is asked about, since one of many lanes may have seen nobody', async () => {
    const { findings } = await read('ID,Eye\n');
    expect(severitiesOf(findings)).toEqual(['file-without-rows: query']);
  });

  it('that is a workbook, a PDF or anything else but text is named for what it is', async () => {
    // First bytes as published for these formats: ZIP local header with a workbook part, PDF header, PNG signature.
    const zip = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), Buffer.from('....[Content_Types].xml')]);
    for (const [bytes, kind] of [
      [zip, 'a workbook'],
      [Buffer.from('%PDF-1.7\n'), 'a PDF'],
      [Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), 'an image'],
      [Buffer.from('ID,Eye\n\0\0\x01A1,R\n', 'latin1'), 'binary content'],
    ] as const) {
      const stop = await onlyStop(bytes);
      expect(stop.rule).toBe('file-not-csv');
      expect(stop.told.sentence).toBe(`this is ${kind}, not a table of text`);
    }
  });

  it('that is a folder, or breaks off while it is read, cannot be read', async () => {
    expect((await onlyStop({ 'lane.csv/x.csv': 'ID' })).rule).toBe('file-unreadable');
    const io: Io = {
      ...memoryIo({ 'lane.csv': 'ID,Eye\nA1,R\n' }),
      async *open() {
        yield Buffer.from('ID,Eye\nA1');
        throw new Error('EIO: the disk is gone');
      },
    };
    const { raw, findings } = await ingest(lane(), io, () => {});
    expect([raw[0]?.rows, ...severitiesOf(findings)]).toEqual([0, 'file-unreadable: stop']);
  });

  it('whose delimiter cannot be told asks for the line', async () => {
    const stop = await onlyStop('ID;x,Eye\nA1;x,R\n');
    expect(stop.rule).toBe('delimiter-open');
    expect(stop.told.lines).toContain('reading: { delimiter: semicolon }');
  });

  it('saved with another delimiter than declared says so once, instead of each column', async () => {
    const plan = lane({ axis: 'Axis' }, { reading: { delimiter: 'comma' } });
    const stop = await onlyStop('ID;Eye;Axis\nA1;R;90\n', plan);
    expect(stop).toMatchObject({ rule: 'delimiter-other', written: 'semicolon' });
    expect(stop.told.lines).toEqual(['reading: { delimiter: semicolon }']);
    expect(stop.told.sentence).toContain('parted by semicolon');
  });
});

describe('a column', () => {
  it('that is not there is named with the nearest header and the line that asks for it', async () => {
    const stop = await onlyStop('ID,Eye,Sphre\nA1,R,1\n', lane({ sphere: { column: 'Sphere', line: 12 } }));
    expect(stop).toMatchObject({ rule: 'column-missing', column: 'Sphere', field: 'sphere', written: 'Sphre' });
    expect(stop.told.act).toContain('audit.yaml line 12');
    expect(stop.told.lines).toEqual(['sphere: Sphre']);
    expect(stop.told.expected).toBe('one of ID, Eye, Sphre');
  });

  it('met twice needs its occurrence', async () => {
    const stop = await onlyStop('ID,Eye,Axis,axis\nA1,R,1,2\n', lane({ k1_axis: 'Axis' }));
    expect(stop).toMatchObject({ rule: 'column-twice', column: 'Axis', detail: 2 });
    expect(stop.told.lines).toEqual([
      'k1_axis: { column: Axis, occurrence: 1 }',
      'k1_axis: { column: Axis, occurrence: 2 }',
    ]);
  });

  it('whose occurrence or position is beyond the header is missing', async () => {
    expect((await onlyStop('ID,Eye,Ax\nA,R,1\n', lane({ axis: { column: 'Ax', occurrence: 2 } }))).told.sentence).toBe(
      'there is no column of this header number 2',
    );
    expect((await onlyStop('ID,Eye\nA,R\n', lane({ axis: { position: 3 } }))).column).toBe('column 3');
  });

  it('of a condition is asked for like any other', async () => {
    const only = [{ where: 'Type', at: undefined, operator: 'is' as const, value: 'REF', and: [] }];
    expect(await onlyStop('ID,Eye\nA,R\n', lane({}, { only }))).toMatchObject({
      rule: 'column-missing',
      column: 'Type',
    });
  });

  it('is missing without a word of the first row where a file has no header', async () => {
    const { raw, findings } = await read('PX-77,R,Muster\nPX-78,L,Beispiel\n');
    expect(allFindings(findings).map(({ rule }) => rule)).toEqual(['column-missing', 'column-missing']);
    const told = allFindings(findings).map((one) => tell(one, { raw, plan: lane(), words: en.findings }));
    expect(JSON.stringify([told, allFindings(findings)])).not.toMatch(/Muster|PX-77/);
  });
});

describe('a decimal mark', () => {
  const sphere = (values: readonly string[], reading: SourceForm['reading'] = {}) =>
    read(`ID;Eye;S\n${values.map((value, i) => `A${i};R;${value}`).join('\n')}\n`, lane({ sphere: 'S' }, { reading }));

  it('is judged from all numbers of the file', async () => {
    expect((await sphere(['1,234', '-0,50'])).raw[0]?.read.decimal).toBe('comma');
    expect((await sphere(['1.25', '2'])).raw[0]?.read.decimal).toBe('point');
    expect((await sphere(['1', '2'])).raw[0]?.read.decimal).toBe('none');
  });

  it('that stays open stops and names the line', async () => {
    const plan = lane({ sphere: { column: 'S', line: 9 } });
    const stop = await onlyStop('ID;Eye;S\nA1;R;1,234\nA2;R;2,345\n', plan);
    expect(stop).toMatchObject({ rule: 'decimal-open', row: 2, column: 'S', field: 'sphere', written: '1,234' });
    expect(stop.told.lines).toEqual(['reading: { decimal: point }', 'reading: { decimal: comma }']);
  });

  it('that contradicts itself stops, with one of each', async () => {
    const stop = await onlyStop('ID;Eye;S\nA1;R;1,25\nA2;R;2.5\n', lane({ sphere: 'S' }));
    expect(stop).toMatchObject({ rule: 'decimal-mixed', column: 'S' });
    expect(stop.told.sentence).toContain('‘2.5’ and ‘1,25’');
  });

  it('that audit.yaml names wins over every doubt', async () => {
    const { raw, findings } = await sphere(['1,234', '2.5'], { decimal: 'comma' });
    expect(findings.length).toBe(0);
    expect(raw[0]?.read.decimal).toBe('comma');
  });

  it('is asked of mapped columns alone, codes and words for "no value" aside', async () => {
    const plan = lane({ sphere: 'S', lens_model: 'Lens' }, { reading: { missing: ['1,111'] } });
    const { raw, findings } = await read('ID;Eye;S;Lens;Other\nA1;R;1.25;1,234;9,99\nA2;R;1,111;x;9,99\n', plan);
    expect([findings.length, raw[0]?.read.decimal]).toEqual([0, 'point']);
  });
});

describe('an order of dates', () => {
  const dates = (values: readonly string[]) => `ID;Eye;D\n${values.map((value, i) => `A${i};R;${value}`).join('\n')}\n`;

  it('is judged from all dates of the file', async () => {
    const plan = lane({ exam_date: 'D' });
    const order = async (values: readonly string[]) => (await read(dates(values), plan)).raw[0]?.read.dateOrder;
    expect(await order(['01/02/2025', '13/02/2025'])).toBe('day-first');
    expect(await order(['01/02/2025', '02/13/2025'])).toBe('month-first');
    expect(await order(['2025-02-01'])).toBe('year-first');
    expect(await order([''])).toBe('none');
  });

  it('that stays open stops and names the lines', async () => {
    const stop = await onlyStop(dates(['01/02/2025', '03/04/2025']), lane({ exam_date: 'D' }));
    expect(stop).toMatchObject({ rule: 'date-order-open', row: 2, column: 'D', written: undefined });
    expect(stop.told.lines[0]).toBe('reading: { date_order: day-first }');
  });

  it('that contradicts itself stops, unless audit.yaml names one', async () => {
    const text = dates(['13/02/2025', '02/13/2025']);
    const stop = await onlyStop(text, lane({ exam_date: 'D' }));
    expect(stop).toMatchObject({ rule: 'date-order-mixed', row: 3, detail: 2, written: undefined });
    expect(stop.told.sentence).toContain('row 2');
    expect(JSON.stringify(stop)).not.toContain('2025');
    const { raw, findings } = await read(text, lane({ exam_date: 'D' }, { reading: { date_order: 'day-first' } }));
    expect([findings.length, raw[0]?.read.dateOrder]).toEqual([0, 'day-first']);
  });
});

describe('a scale of acuity', () => {
  it('is asked for where bare numbers have none, with the lines that fit', async () => {
    const text = 'ID;Eye;V c.c.\nA1;R;0,8\nA2;L;6/9\nA3;R;CF\nA4;R;0,05\n';
    const stop = await onlyStop(text, lane({ cdva: { column: 'V c.c.', line: 31 } }));
    expect(stop).toMatchObject({ rule: 'acuity-scale-open', row: 2, column: 'V c.c.', written: '0,8', detail: 2 });
    expect(stop.told.act).toBe('audit.yaml line 31, write one of');
    expect(stop.told.lines).toEqual([
      'cdva: { column: V c.c., numbers: decimal }',
      'cdva: { column: V c.c., numbers: logmar }',
    ]);
  });

  it('is not asked for where it is declared, or fractions and words explain themselves', async () => {
    expect((await read('ID;Eye;V\nA1;R;6/9\nA2;R;HM\n', lane({ cdva: 'V' }))).findings.length).toBe(0);
    const declared = lane({ cdva: { column: 'V', numbers: 'logmar' } });
    expect((await read('ID;Eye;V\nA1;R;0.2\n', declared)).findings.length).toBe(0);
  });

  it('is asked for in one go with an open decimal mark', async () => {
    const { findings } = await read('ID;Eye;V;S\nA1;R;0,8;1.5\n', lane({ cdva: 'V', sphere: 'S' }));
    expect(severitiesOf(findings)).toEqual(['decimal-mixed: stop', 'acuity-scale-open: stop']);
  });
});

describe('a quotation mark that nobody closed', () => {
  it('stops with the row in which it was opened', async () => {
    expect(await onlyStop('ID;Eye\nA1;R\n"A2;R\nA3;L\n')).toMatchObject({ rule: 'quote-open', row: 3 });
    expect(await onlyStop('sep=;\nID;Eye\nA1;R\n"A2;R\nA3;L\n')).toMatchObject({ rule: 'quote-open', row: 3 });
  });

  it('stops where a later cell closes it and rows were swallowed', async () => {
    const stop = await onlyStop('ID;Eye;N\nA1;R;x\nA2;R;"broken\nA3;L;"whole"\nA4;L;y\n');
    expect(stop).toMatchObject({ rule: 'quote-open', row: 3 });
  });

  it('is found in a large file before the rest is read into one cell', async () => {
    const rows = Array.from({ length: 60_000 }, (_, i) => `A${i};R;a remark of some length`);
    rows[20] = 'A20;R;"open';
    expect(await onlyStop(`ID;Eye;N\n${rows.join('\n')}\n`)).toMatchObject({ rule: 'quote-open', row: 22 });
  });

  it('is no fault inside a cell, nor where a cell quotes somebody over two lines', async () => {
    const { findings, raw } = await read('ID;Eye;N\nA1;R;5" lens\nA2;L;"""well,""\nshe said"\n');
    expect([findings.length, raw[0]?.rows]).toEqual([0, 2]);
  });
});

describe('a ragged row', () => {
  it('is set aside with its number and what it holds; the others are read', async () => {
    const { raw, findings } = await read('ID;Eye;S\nA1;R;1\nA2;R\nA3;L;1;2\nA4;L;1\n');
    expect(findingsOf(findings, 'row-ragged')).toMatchObject([
      { severity: 'set aside', row: 3, detail: 2, effect: 'row left out' },
      { severity: 'set aside', row: 4, detail: 4 },
    ]);
    expect([raw[0]?.rows, raw[0]?.read.ragged]).toEqual([2, 2]);
  });
});

it('rows that were passed over are counted, so that the books close', async () => {
  const { findings } = await read('\nID;Eye\n;\nA1;R\n\n');
  expect(findingsOf(findings, 'rows-passed-over')).toMatchObject([{ severity: 'note', detail: 3 }]);
});

it('characters that the declared encoding does not know are asked about', async () => {
  const bytes = Buffer.from('ID;Eye\nA\xe9;R\nA\xe9;L\nB;R\n', 'latin1');
  const { findings } = await read(bytes, lane({}, { reading: { encoding: 'utf-8' } }));
  expect(findingsOf(findings, 'encoding-doubtful')).toMatchObject([{ severity: 'query', detail: 2 }]);
});

it('everything that any file stops for is told at once', async () => {
  const plan = planOf([
    { file: 'gone.csv', holds: 'surgery', columns: { patient: 'ID', eye: 'Eye' } },
    { file: 'lane.csv', columns: { patient: 'ID', eye: 'Side', exam_date: 'D', cdva: 'V', sphere: 'S' } },
    { file: 'good.csv', columns: { patient: 'ID', eye: 'Eye' } },
  ]);
  const lanes = 'ID;Eye;D;V;S;E-mail\nA1;R;01/02/2025;0.8;1,25;x\nA2;R;03/04/2025;0.8;1,25;x\n"A3';
  const { raw, findings } = await ingested({ 'lane.csv': lanes, 'good.csv': 'ID,Eye\nA1,R\n' }, plan);
  expect(allFindings(findings).map(({ source, rule }) => `${source} ${rule}`)).toEqual([
    '0 file-missing',
    '1 column-missing',
    '1 quote-open',
    '1 identifier-present',
    '1 decimal-mixed',
    '1 date-order-open',
    '1 acuity-scale-open',
  ]);
  expect(raw.map(({ file, rows }) => [file, rows])).toEqual([
    ['gone.csv', 0],
    ['lane.csv', 2],
    ['good.csv', 1],
  ]);
});
