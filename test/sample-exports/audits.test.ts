import { readFileSync } from 'node:fs';
import { parse as parseCsv } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { committed, committedExport } from './committed.js';

interface Source {
  readonly file: string;
  readonly columns?: Readonly<Record<string, string | { readonly column: string; readonly occurrence?: number }>>;
  readonly blocks?: readonly Source[];
}

/** Headers that a source maps, with those of its blocks. */
function mapped(source: Source): { column: string; occurrence: number }[] {
  const own = Object.values(source.columns ?? {}).map((form) =>
    typeof form === 'string'
      ? { column: form, occurrence: 1 }
      : { column: form.column, occurrence: form.occurrence ?? 1 },
  );
  return [...own, ...(source.blocks ?? []).flatMap(mapped)];
}

describe.each(['audit.yaml', 'wide-audit.yaml'])('%s', (name) => {
  const audit: { sources: readonly Source[] } = parse(committed(name).toString('utf8'));

  it('maps columns that its files have, as often as it says', () => {
    expect(audit.sources.length).toBeGreaterThan(0);
    for (const source of audit.sources) {
      const { header } = committedExport(source.file);
      for (const { column, occurrence } of mapped(source)) {
        const times = header.filter((text) => text === column).length;
        expect(times, `${source.file}: ${column}`).toBeGreaterThanOrEqual(occurrence);
      }
    }
  });
});

// A radius in millimetres read as dioptres is impossible in every row: what an audit without `unit: mm` must stop at.
describe('half-impossible', () => {
  const folder = new URL('half-impossible/', import.meta.url);
  const text = (name: string) => readFileSync(new URL(name, folder), 'utf8');

  it('holds a keratometer whose radii are mapped as dioptres', () => {
    const audit: { sources: readonly Source[] } = parse(text('audit.yaml'));
    expect(audit.sources.find(({ file }) => file === 'keratometer.csv')?.columns?.k1).toBe('R1');
    const rows: Record<string, string>[] = parseCsv(text('keratometer.csv'), { columns: true });
    const impossible = rows.filter(({ R1 }) => Number(R1) < 30 || Number(R1) > 60);
    expect(impossible.length / rows.length).toBeGreaterThan(0.5);
    expect(impossible.length).toBeLessThan(rows.length);
  });
});
