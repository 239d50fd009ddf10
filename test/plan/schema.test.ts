import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { publishedCharts } from '../../src/charts/index.js';
import { artworks } from '../../src/charts/theme.js';
import { fields } from '../../src/plan/fields.js';
import { artworkNames, figureNames, tableNames } from '../../src/plan/published.js';
import { auditJsonSchema } from '../../src/plan/schema.js';
import { publishedTables } from '../../src/tables/index.js';
import { fixture } from './audit-text.js';

const copy = new URL('../../src/plan/audit.schema.json', import.meta.url);
const changed = new URL('../../src/plan/audit.schema.changed.json', import.meta.url);

interface JsonSchema {
  description?: string;
  enum?: readonly string[];
  properties?: Record<string, JsonSchema>;
  definitions?: Record<string, JsonSchema>;
}

const schema = auditJsonSchema() as JsonSchema;

/** What an editor sees: the values of YAML 1.2 and the published JSON Schema, without any of our reading. */
function editorAccepts(text: string): boolean {
  return z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0]).safeParse(parse(text)).success;
}

describe('the JSON Schema of audit.yaml', () => {
  it('is the copy in the repository', () => {
    const made = JSON.stringify(schema, null, 2);
    const same = existsSync(copy) && JSON.stringify(JSON.parse(readFileSync(copy, 'utf8')), null, 2) === made;
    if (same) rmSync(changed, { force: true });
    else writeFileSync(changed, `${made}\n`);
    expect(same, 'the schema has changed: read audit.schema.changed.json, then put it in the place of the copy').toBe(
      true,
    );
  });

  it.each(['least.yaml', 'clinic-year.yaml'])('accepts the example %s as editors read it', (name) => {
    expect(editorAccepts(fixture(name))).toBe(true);
  });

  it('accepts headers and codes that editors read as numbers', () => {
    const text = fixture('least.yaml');
    expect(editorAccepts(text.replace('lens_model: IOL', 'lens_model: 012'))).toBe(true);
    expect(editorAccepts(text.replace('title: My audit 2025', 'title: 2025'))).toBe(true);
  });

  it.each([
    ['an unknown key', 'format: 1', 'format: 1\ncolour: red'],
    ['an unknown field', 'technique: Technique', 'tecnique: Technique'],
    [
      'a key that does not fit its field',
      '{ column: preop BCVA, numbers: decimal }',
      '{ column: preop BCVA, unit: mm }',
    ],
    ['a missing title', 'title: My audit 2025\n', ''],
    ['another format', 'format: 1', 'format: 2'],
    ['a word that is none of the choices', 'holds: surgery', 'holds: operation'],
  ])('refuses %s', (_what, from, to) => {
    const text = fixture('least.yaml');
    expect(text).toContain(from);
    expect(editorAccepts(text.replace(from, to))).toBe(false);
  });

  it('explains every key and every field', () => {
    const silent: string[] = [];
    const look = (at: JsonSchema, path: string): void => {
      for (const [key, value] of Object.entries(at.properties ?? {})) {
        const refersTo = JSON.stringify(value).includes('#/definitions/columns"');
        if (!value.description && !refersTo) silent.push(`${path}${key}`);
        look(value, `${path}${key}.`);
      }
    };
    look(schema, '');
    for (const [name, definition] of Object.entries(schema.definitions ?? {})) look(definition, `${name}: `);
    expect(silent).toEqual([]);
    expect(Object.keys(schema.definitions?.columns?.properties ?? {})).toEqual(fields.map(({ name }) => name));
  });

  it('knows the widths that charts can be drawn in', () => {
    expect(artworkNames).toEqual(Object.keys(artworks));
  });

  it('knows every table and figure that is made', () => {
    expect(tableNames).toEqual(expect.arrayContaining([...publishedTables.keys()]));
    expect(figureNames).toEqual(expect.arrayContaining([...publishedCharts.keys()]));
  });
});
