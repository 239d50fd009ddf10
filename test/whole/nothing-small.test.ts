import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { memoryIo } from '../../pipeline/memory-io.js';
import { run } from '../../pipeline/run.js';
import { auditText, committedFiles } from './sample.js';

/** Counts below this are not to be found in what leaves the clinic. */
const least = 11;
const asked = 'outputs: { folder: ../reports }';
const text = auditText().replace(
  asked,
  `outputs: { folder: reports, small_cells: ${least}, operator_min_eyes: 130, figures: [svg], leave_out: [double-angle] }`,
);
const io = memoryIo(committedFiles());
const outcome = await run(text, io, { replace: true }, () => {});
const publication = [...io.files]
  .filter(([path]) => path.includes('/publication/'))
  .map(([path, bytes]) => ({
    path: path.slice(path.indexOf('/publication/') + 13),
    text: new TextDecoder().decode(bytes),
  }));
const file = (name: string) => publication.find(({ path }) => path === name)?.text ?? '';

/** Rows of results.csv. */
const rows = (parse(file('results.csv'), { columns: true }) as Record<string, string>[]).map((row) => ({
  measure: row.measure ?? '',
  group: row.group ?? '',
  statistic: row.statistic ?? '',
  value: row.value ?? '',
  unit: row.unit ?? '',
  n: Number(row.n),
  patients: Number(row.patients),
}));
const isSmall = (number: number): boolean => number >= 1 && number < least;

describe('publication/ with a declared cell size', () => {
  it('was written, all of it', () => {
    expect(outcome.kind).toBe('published');
    expect(publication.length).toBeGreaterThan(40);
    expect(rows.length).toBeGreaterThan(5000);
    expect(rows.filter(({ value }) => value === '').length).toBeGreaterThan(100);
  });

  it('holds no patient and no row of one eye, in any file', () => {
    for (const { path, text: content } of publication) {
      expect(/\bP1\d{3}\b/.test(content), path).toBe(false);
      expect(/^(patient|eye),/m.test(content), path).toBe(false);
    }
    expect(publication.map(({ path }) => path).filter((path) => /eyes|queries|review/.test(path))).toEqual([]);
  });

  it('has no count of eyes or patients below the cell size in results.csv', () => {
    const counts = rows.filter(({ unit }) => unit === 'eyes' || unit === 'patients');
    expect(counts.length).toBeGreaterThan(500);
    const small = counts.filter(
      ({ value, measure }) => value !== '' && isSmall(Number(value)) && !measure.startsWith('monitoring:'),
    );
    expect(small.map(({ measure, group, statistic, value }) => `${measure}|${group}|${statistic} ${value}`)).toEqual(
      [],
    );
    expect(
      rows
        .filter(({ n, patients }) => isSmall(n) || isSmall(patients))
        .map(({ measure, group }) => `${measure}|${group}`),
    ).toEqual([]);
  });

  it('has none in a table, a text, a page or a picture', () => {
    for (const { path, text: content } of publication.filter(({ path }) => path !== 'results.csv')) {
      const fractions = [...content.matchAll(/\b(\d[\d,]*)\/(\d[\d,]*), \d/g)].map(([, x = '', n = '']) => [
        Number(x.replace(',', '')),
        Number(n.replace(',', '')),
      ]);
      for (const [x, n] of fractions as [number, number][]) {
        expect([path, x, n, isSmall(x) || isSmall(n - x)]).toEqual([path, x, n, false]);
      }
      // Fixed sentences name limits: the fewest patients that an interval needs, how far is far.
      const counted = content.replace(/[Ff]ewer than \d+ (patients|eyes)|from 5 to 9 patients|beyond 0\.1, eyes/g, '');
      const told = [...counted.matchAll(/.{0,30}\b(\d[\d,]*) (?:eyes?|patients?)\b/g)];
      const small = told.filter(([, n = '']) => isSmall(Number(n.replace(',', ''))));
      expect(small.map(([text]) => `${path} ${text}`)).toEqual([]);
    }
  });

  it('names no operator with fewer eyes than declared', () => {
    const small = rows.filter(({ group, value }) => /surgeon=S3/.test(group) && value !== '');
    expect(small).toEqual([]);
    expect(rows.some(({ group, value }) => /surgeon=S2/.test(group) && value !== '')).toBe(true);
  });

  it('leaves zero, and what is large enough, where it was', () => {
    const shown = rows.find(
      ({ measure, group, statistic }) => measure === 'prediction_error' && group === 'all' && statistic === 'n',
    );
    expect(Number(shown?.value)).toBe(376);
    expect(rows.some(({ statistic, value }) => statistic.startsWith('count') && value === '0')).toBe(true);
  });
});

describe('internal/ of the same run', () => {
  it('has every number', () => {
    const page = [...io.files].find(([path]) => path.endsWith('internal/index.html'))?.[1];
    const complications = /8\/420, 1\.9/;
    expect(complications.test(new TextDecoder().decode(page))).toBe(true);
    expect(complications.test(file('index.html'))).toBe(false);
  });
});
