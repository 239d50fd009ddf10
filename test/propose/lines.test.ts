import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { plan as planFrom } from '../../pipeline/plan.js';
import { doubt } from '../../src/propose/draft/doubt.js';
import { yamlBraces, yamlList, yamlOf, yamlText } from '../../src/propose/draft/lines.js';

/** Headers as exports may have them: any characters but the control ones that no text file holds. */
const header = fc
  .string({ unit: 'binary', minLength: 1, maxLength: 24 })
  .map((text) =>
    text
      .replace(/[\p{Cc}\p{Cs}\u2028\u2029\ufeff\ufffe\uffff]/gu, ' ')
      .replace(/\s+/g, ' ')
      .trim(),
  )
  .filter((text) => text !== '');

const read = (text: string): unknown => parse(text, { schema: 'failsafe' });

// Outside this project: the yaml package reads what is written here.
describe('a text in audit.yaml', () => {
  it('is read back as it was, on a line of its own, in braces and in a list', () => {
    fc.assert(
      fc.property(header, header, (a, b) => {
        expect(read(`column: ${yamlText(a)}`)).toEqual({ column: a });
        expect(
          read(
            `field: ${yamlBraces([
              ['column', yamlText(a)],
              ['words', yamlBraces([['right', yamlList([b, a])]])],
            ])}`,
          ),
        ).toEqual({
          field: { column: a, words: { right: [b, a] } },
        });
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    'Op: R',
    '# of eyes',
    '- none',
    "it's",
    'a "b"',
    'x, y',
    '{a}',
    '[b]',
    '*',
    '&a',
    '!b',
    '%',
    '@',
    '`',
    '| a',
    '>',
    '?',
    'a: ',
    ': b',
    '"',
    "'",
    'a #b',
    '\\',
    '~',
    '012',
    'no',
    'null',
    '+cyl',
  ])('‘%s’ keeps its meaning', (text) => {
    expect(read(`column: ${yamlText(text)}`)).toEqual({ column: text.trim() });
  });

  it('a header of any signs maps a column', () => {
    fc.assert(
      fc.property(header, (name) => {
        const text = `format: 1\ntitle: t\nsources:\n  - file: a.csv\n    holds: eye\n    columns:\n      patient: ${yamlText(name)}\n      eye: Eye\n`;
        const planned = planFrom(text);
        if ('faults' in planned) throw new RangeError(`${JSON.stringify(planned.faults)}\n${text}`);
        expect(planned.plan.sources[0]?.blocks[0]?.columns[0]?.column).toBe(name);
      }),
      { numRuns: 300 },
    );
  });

  it('plain words stay plain', () => {
    for (const text of ['Op date', 'Visus s.c.', 'Achse °', 'IOL-Achse °', 'm1_sph', 'Cells/mm²', 'Sphäre', 'K1 (D)']) {
      expect(yamlText(text)).toBe(text);
    }
  });
});

describe('lines', () => {
  it('comments stand below one another, doubts and notes above, and what is off behind a #', () => {
    const text = yamlOf([
      [
        { depth: 0, text: 'columns:', notes: ['a note'] },
        { depth: 1, text: 'sphere: Sph', comment: 'short' },
        { depth: 1, text: 'cylinder: Cylinder', comment: 'long', doubts: [doubt('by cells', 'unsure')] },
        { depth: 1, text: 'axis: Ax', off: true },
      ],
      [],
      [{ depth: 0, text: 'format: 1' }],
    ]);
    expect(text).toBe(
      [
        '# a note',
        'columns:',
        '  sphere: Sph          # short',
        '  # doubt: unsure',
        '  cylinder: Cylinder   # long',
        '  # axis: Ax',
        '',
        'format: 1',
        '',
      ].join('\n'),
    );
  });

  it('a long doubt is broken, and every line of it stays a comment', () => {
    const text = yamlOf([[{ depth: 2, text: 'a: b', doubts: [doubt('by cells', 'word '.repeat(60))] }]]);
    const above = text.split('\n').slice(0, -2);
    expect(above.length).toBeGreaterThan(2);
    for (const line of above) expect(line).toMatch(/^ {4}# .{1,96}$/);
  });
});
