import { createHash } from 'node:crypto';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { RunOutcome } from '../../pipeline/commands/outcome.js';
import type { MemoryIo } from '../../pipeline/memory-io.js';
import { sha256 } from '../../pipeline/publish/digest.js';
import { resultColumns } from '../../src/records/result.js';
import {
  auditText,
  briefText,
  exports,
  filesOf,
  fingerprints,
  folderWith,
  patientCode,
  report,
  runIn,
  textOf,
} from './publish-audit.js';

type Published = Extract<RunOutcome, { kind: 'published' }>;

const io = folderWith();
const outcome = await published(io);

async function published(into: MemoryIo): Promise<Published> {
  const ended = await runIn(into);
  if (ended.kind !== 'published') throw new RangeError(`the hand audit ended as ${ended.kind}`);
  return ended;
}

type Row = Record<string, string>;
const rowsOf = (path: string, delimiter = ','): Row[] =>
  parse(textOf(io, `${report}/${path}`), { columns: true, bom: true, delimiter });

describe('the report folder', () => {
  it('holds the report, its tables and figures by number and name, the lists of the clinic, and nothing else', () => {
    const names = [...filesOf(io, report).keys()].sort();
    const numbered = (folder: string, ids: readonly string[], endings: readonly string[]): readonly string[] =>
      ids.flatMap((id, at) => endings.map((ending) => `publication/${folder}/${at + 1}-${id}.${ending}`));
    const tables = outcome.all.typeset.map(({ id }) => id);
    const figures = outcome.all.figures.map(({ id }) => id);
    expect(names).toEqual(
      [
        ...[
          'checklist.md',
          'index.html',
          'legends.md',
          'methods.md',
          'provenance.csv',
          'references.bib',
          'results.csv',
          'results.md',
        ].map((name) => `publication/${name}`),
        ...numbered('tables', tables, ['csv', 'md']),
        ...numbered('figures', figures, ['svg', 'png']),
        ...['audit.yaml', 'eyes.csv', 'flow.csv', 'index.html', 'queries.csv', 'review.csv'].map(
          (n) => `internal/${n}`,
        ),
        'manifest.json',
      ].sort(),
    );
    expect(tables).toContain('refractive-accuracy');
    expect(figures).toContain('double-angle');
  });

  it('leaves nothing beside itself', () => {
    const beside = [...io.files.keys()].filter((path) => path.startsWith('reports/') && !path.startsWith(`${report}/`));
    expect(beside).toEqual([]);
  });

  it('is the same to the byte when the same files are read again, in a folder or over a former report', async () => {
    const first = fingerprints(io, report);
    const elsewhere = folderWith();
    await runIn(elsewhere);
    expect(fingerprints(elsewhere, report)).toEqual(first);
    expect((await runIn(elsewhere)).kind).toBe('published');
    expect(fingerprints(elsewhere, report)).toEqual(first);
  });
});

describe('what may leave the clinic', () => {
  const isPublic = (path: string): boolean => path.startsWith('publication/');
  const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

  it('names no patient in any file, while the lists of the clinic do', () => {
    const naming = [...filesOf(io, report)].filter(([, bytes]) => patientCode.test(latin(bytes))).map(([path]) => path);
    expect(naming.filter(isPublic)).toEqual([]);
    expect(naming.sort()).toEqual([
      'internal/eyes.csv',
      'internal/index.html',
      'internal/queries.csv',
      'internal/review.csv',
    ]);
  });

  it('tells no date of an operation or examination; nor does anything else that is written', () => {
    const dates = /2025-0[1-6]-\d\d|0[1-6]\/2025/;
    const telling = [...filesOf(io, report)].filter(([, bytes]) => dates.test(latin(bytes))).map(([path]) => path);
    expect(telling).toEqual([]);
  });

  it('carries no script, no point with a name and no single value of an eye', () => {
    const page = textOf(io, `${report}/publication/index.html`);
    expect(page).not.toContain('<script');
    const shapes = [...page.matchAll(/<(?:path|circle)[^>]*aria-label/g)];
    expect(shapes).toEqual([]);
    expect(textOf(io, `${report}/internal/index.html`)).toMatch(/<path[^>]*aria-label="ZQX/);
  });
});

describe('manifest.json', () => {
  const manifest = (): Record<string, never> => JSON.parse(textOf(io, `${report}/manifest.json`));

  // FIPS 180-2, appendix B.1: the digest of "abc".
  it('hashes as the standard does', () => {
    expect(sha256(Buffer.from('abc'))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('lists every file but itself with its hash and size', () => {
    const { outputs } = manifest() as unknown as { outputs: { file: string; sha256: string; bytes: number }[] };
    const files = filesOf(io, report);
    expect(outputs.map(({ file }) => file).sort()).toEqual(
      [...files.keys()].filter((f) => f !== 'manifest.json').sort(),
    );
    for (const { file, sha256: hash, bytes } of outputs) {
      const written = files.get(file) as Uint8Array;
      expect({ file, bytes, hash }).toEqual({
        file,
        bytes: written.length,
        hash: createHash('sha256').update(written).digest('hex'),
      });
    }
  });

  // Counted by hand: test/hand-audit/sheet.md, section 2; rows are lines of the three files.
  it('tells what was read and what became of the eyes', () => {
    const { inputs, counts } = manifest() as unknown as {
      inputs: { file: string; rows: { read: number; used: number } }[];
      counts: { patients: number; eyes: number; flow: Record<string, Record<string, unknown>> };
    };
    expect(inputs.map(({ file, rows }) => [file, rows.read, rows.used])).toEqual([
      ['theatre.csv', 12, 12],
      ['lane.csv', 23, 23],
      ['keratometer.csv', 10, 10],
    ]);
    expect([counts.patients, counts.eyes]).toEqual([8, 12]);
    expect(counts.flow.refraction).toMatchObject({
      operated: 12,
      excluded: { 'Axial length over 30 mm': 1 },
      no_visit: 1,
      analysed: 10,
    });
  });

  it('names neither machine nor folder nor time', () => {
    const text = textOf(io, `${report}/manifest.json`);
    expect(text).not.toContain(process.cwd());
    expect(text).not.toMatch(/\/(?:home|root|tmp|Users)\//);
    expect(text).not.toMatch(/T\d\d:\d\d/);
  });
});

describe('results.csv', () => {
  it('reads back to the same doubles, in twelve columns and in the order of the results', () => {
    const rows = rowsOf('publication/results.csv');
    expect(Object.keys(rows[0] ?? {})).toEqual([...resultColumns]);
    expect(rows).toHaveLength(outcome.all.results.rows.length);
    outcome.all.results.rows.forEach((row, at) => {
      for (const name of ['value', 'ci_low', 'ci_high', 'n'] as const) {
        const text = rows[at]?.[name] ?? 'absent';
        expect(text === '' ? undefined : Number(text), `${row.measure}|${row.group}|${row.statistic} ${name}`).toBe(
          row[name] === undefined ? undefined : (row[name] as number) + 0,
        );
      }
    });
  });

  it('has commas and points whatever the spreadsheet; the lists for people follow it', async () => {
    const other = folderWith();
    await runIn(other, { text: `${auditText}\noutputs: { spreadsheet: comma }\n` });
    expect(textOf(other, `${report}/publication/results.csv`)).toBe(textOf(io, `${report}/publication/results.csv`));
    const eyes = textOf(other, `${report}/internal/eyes.csv`);
    expect(eyes.split('\n')[0]).toContain('patient;eye;surgery_year');
    expect(eyes).toContain(';-1,5;');
  });
});

describe('eyes.csv', () => {
  // Errors worked by hand: test/hand-audit/sheet.md, section 1.
  const errors: Readonly<Record<string, string>> = {
    'ZQX0001 right': '0.25',
    'ZQX0001 left': '0.12',
    'ZQX0002 right': '0.2',
    'ZQX0002 left': '0.4',
    'ZQX0003 right': '0.5',
    'ZQX0003 left': '0.3',
    'ZQX0004 right': '-0.05',
    'ZQX0004 left': '',
    'ZQX0005 right': '-1.5',
    'ZQX0006 left': '-0.125',
    'ZQX0007 right': '0.275',
    'ZQX0008 left': '-0.525',
  };

  it('has a row for every operated eye, in order, with the values worked by hand', () => {
    const rows = rowsOf('internal/eyes.csv');
    expect(rows.map(({ patient, eye, prediction_error_D }) => [`${patient} ${eye}`, prediction_error_D])).toEqual(
      Object.entries(errors),
    );
  });

  it('writes named values by their names, and leaves blank what a rule set aside', async () => {
    const theatre = (exports['theatre.csv'] ?? '').split('\n').map((line, at) => `${line},${at === 0 ? 'Sex' : 'F'}`);
    // 93.40 mm: a length that no eye has.
    const other = folderWith({ 'theatre.csv': theatre.join('\n').replace('23.40', '93.40') });
    await runIn(other, { text: briefText.replace('lens_model: Lens', 'lens_model: Lens\n      sex: Sex') });
    const [first] = parse(textOf(other, `${report}/internal/eyes.csv`), { columns: true, bom: true }) as Row[];
    expect(first).toMatchObject({ patient: 'ZQX0001', eye: 'right', sex: 'F', axial_length_mm: '' });
  });

  it('tells why an eye is not analysed, and carries units in its headers', () => {
    const rows = rowsOf('internal/eyes.csv');
    expect(rows.map((row) => row.refraction_family).filter((step) => step !== 'analysed')).toEqual([
      'no_visit',
      'excluded:Axial length over 30 mm',
    ]);
    const headers = Object.keys(rows[0] ?? {});
    expect(headers).toEqual(
      expect.arrayContaining([
        'axial_length_mm',
        'sphere_outcome_D',
        'axis_outcome_deg',
        'cdva_logMAR',
        'lens_power_D',
      ]),
    );
    expect(new Set(headers).size).toBe(headers.length);
  });
});

describe('the lists of the clinic', () => {
  // By hand: of the errors above only -1.50 D lies beyond 1 D, and no eye lost two lines or had a complication.
  it('names the eyes to look at again, with the reason', () => {
    const rows = rowsOf('internal/review.csv');
    expect(rows.map(({ patient, eye, reasons }) => [patient, eye, reasons])).toEqual([
      ['ZQX0005', 'right', 'prediction error -1.50 D'],
    ]);
    expect(outcome.published.review).toBe(1);
  });

  // By hand: row 20 of lane.csv (H6 left, 0.00 -0.75) has no axis.
  it('asks about the cylinder that has no axis', () => {
    const [query, ...others] = rowsOf('internal/queries.csv');
    expect(others).toEqual([]);
    expect(query).toMatchObject({ patient: 'ZQX0006', eye: 'left', file: 'lane.csv', row: '20', column: 'Axis' });
  });

  it('closes the books: rows, measurements and eyes that came in are those kept and left out', () => {
    const rows = rowsOf('internal/flow.csv');
    const sum = (stage: string, of: string, group: string, wanted: (reason: string) => boolean): number =>
      rows
        .filter((row) => row.stage === stage && row.of === of && row.group === group && wanted(row.reason ?? ''))
        .reduce((total, row) => total + Number(row.count), 0);
    const parts = new Set(rows.map(({ stage, of, group }) => [stage, of, group].join('|')));
    const first: Readonly<Record<string, string>> = { rows: 'read', measurements: 'in', eyes: 'operated' };
    expect(parts.size).toBeGreaterThan(20);
    for (const part of parts) {
      const [stage = '', of = '', group = ''] = part.split('|');
      const came = sum(stage, of, group, (reason) => reason === first[stage]);
      expect(
        sum(stage, of, group, (reason) => reason !== first[stage]),
        part,
      ).toBe(came);
    }
  });

  it('keeps audit.yaml as it was read', () => {
    expect(textOf(io, `${report}/internal/audit.yaml`)).toBe(auditText);
  });
});
