import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DocumentNode, entriesOf, nodeAt, placeAt, plainValue } from '../../src/plan/document.js';
import { readDocument } from '../../src/plan/read.js';

function rootOf(text: string): DocumentNode {
  const { root, faults } = readDocument(text);
  expect(faults).toEqual([]);
  return root ?? expect.fail('no document');
}

const slips = (text: string) =>
  readDocument(text).faults.map(({ line, column, message, advice }) => [`${line}:${column}`, message, ...advice]);

describe('reading audit.yaml as texts', () => {
  // YAML 1.2.2, 10.3 (core schema) would make 012 the number 12, true a boolean and ~ a null; YAML 1.1 made `no` false.
  it('keeps every word as it is spelled', () => {
    const text =
      'a: no\nb: 012\nc: 1e3\nd: true\ne: ~\nf: null\ng: 2025-06-01\nh: 6/12\ni: "quoted # 1"\nj: [OFF, 0x1F, .5]\n';
    expect(plainValue(rootOf(text))).toEqual({
      ...{ a: 'no', b: '012', c: '1e3', d: 'true', e: '~', f: 'null', g: '2025-06-01', h: '6/12', i: 'quoted # 1' },
      j: ['OFF', '0x1F', '.5'],
    });
  });

  it('tells nothing behind a colon from an empty text in quotation marks', () => {
    expect(plainValue(rootOf('a:\nb: ""\nc: { d, e: }\n'))).toEqual({ a: null, b: '', c: { d: null, e: null } });
  });

  it('knows the line and column of keys and values, behind a byte order mark and with any line ends', () => {
    const root = rootOf('\uFEFFa: 1\r\nb:\r\n  - c: x\r\n    d: [y, z]\r\n');
    expect(placeAt(root, ['a'])).toEqual({ line: 1, column: 4 });
    expect(placeAt(root, ['b'])).toEqual({ line: 2, column: 1 });
    expect(placeAt(root, ['b', 0, 'c'])).toEqual({ line: 3, column: 8 });
    expect(placeAt(root, ['b', 0, 'd', 1])).toEqual({ line: 4, column: 12 });
    expect(entriesOf(root)[1]?.place).toEqual({ line: 2, column: 1 });
  });

  it('points to what should hold a thing that is not there', () => {
    const root = rootOf('a:\n  b: 1\n');
    expect(placeAt(root, ['a', 'missing', 'deeper'])).toEqual({ line: 1, column: 1 });
    expect(nodeAt(root, ['a', 'missing'])).toBeUndefined();
  });
});

describe('slips of writing', () => {
  it('shows a header with a colon in quotation marks', () => {
    expect(slips('a:\n  surgery_date: Op: date\n  k1: R1:\n  k2: R2\n')).toEqual([
      [
        '2:17',
        'a colon followed by a blank, or at the end, needs quotation marks around the value',
        'Write     surgery_date: "Op: date"',
      ],
      [
        '3:7',
        'a colon followed by a blank, or at the end, needs quotation marks around the value',
        'Write     k1: "R1:"',
      ],
    ]);
  });

  it('does so in braces, and leaves a comment where it stands', () => {
    expect(slips('a: { column: Op: date, numbers: decimal }\n')[0]?.at(-1)).toBe(
      'Write     a: { column: "Op: date", numbers: decimal }',
    );
    expect(slips('a: Op: date  # 1.2.2025\n')[0]?.at(-1)).toBe('Write     a: "Op: date"  # 1.2.2025');
  });

  it('uses single quotation marks where the header holds double ones', () => {
    expect(slips('a: VA "left": x\n')[0]?.at(-1)).toBe(`Write     a: 'VA "left": x'`);
  });

  it('reads on behind a slip, as if it were mended', () => {
    const { root } = readDocument('a: Op: date\nb: @K\nc: 3\n');
    expect(root && plainValue(root)).toEqual({ a: 'Op: date', b: '@K', c: '3' });
  });

  it.each([
    ['k1: @K1', 'k1: "@K1"'],
    ['k1: %change', 'k1: "%change"'],
    ['k1: `x`', 'k1: "`x`"'],
    ['k1: *K', 'k1: "*K"'],
    ['k1: *K steep', 'k1: "*K steep"'],
    ['k1: &K', 'k1: "&K"'],
    ['k1: !K', 'k1: "!K"'],
    ['k1: |K', 'k1: "|K"'],
    ['k1: "Pred" SE', `k1: '"Pred" SE'`],
    ['- file: *.csv', '- file: "*.csv"'],
    ['a: { k1: @K, k2: x }', 'a: { k1: "@K", k2: x }'],
  ])('shows %s as %s: its sign means something to yaml', (written, mended) => {
    const [only, ...others] = slips(`${written}\n`);
    expect(others).toEqual([]);
    expect(only?.[0]).toBe(`1:${mended.search(/["'](?=[@%`*&!|"])/) + 1}`);
    expect(only?.[1]).toContain('the value starts with a sign that has a meaning of its own');
    expect(only?.at(-1)).toBe(`Write     ${mended}`);
  });

  it('refuses a reference where it stands, and the anchor too', () => {
    expect(slips('a: &b\n  c: 1\nd: *b\n').map(([place]) => place)).toEqual(['1:4', '3:4']);
  });

  it('tells tabs once, with all their lines, and shows the first in blanks', () => {
    expect(slips('a:\n\tb: 1\n\t\tc: 2\n')).toEqual([
      [
        '2:1',
        'a tab stands where lines are indented, on 2 lines: 2, 3',
        'Do        blanks instead of tabs, two for each level',
        'Write       b: 1',
      ],
    ]);
  });

  it('misses a blank behind a colon', () => {
    expect(slips('format:1\ntitle: x\n')).toEqual([
      ['1:8', 'a blank is missing behind the colon', 'Write     format: 1'],
    ]);
  });

  it.each([
    ['a: "x\nb: 2\n', '1:4', 'a quotation mark is opened here and not closed'],
    ['a: [1, 2\nb: 2\n', '2:1', 'a bracket or brace opened above this line is not closed'],
    ['a:\n   b: 1\n  c: 2\n', '3:1', 'this line does not stand under the lines it belongs to'],
    ['a:\n  b\n  c: 1\n', '2:3', 'this line is not of the form key: value'],
    ['a: x\n  b: 2\n', '1:4', 'a value stands here, and keys below it'],
    ['a: 1\n---\nb: 2\n', '2:1', 'a second document starts here'],
    ['a: "\\q"\n', '1:5', 'a backslash in double quotation marks has a meaning of its own'],
  ])('stops at %j', (text, place, message) => {
    const { root, faults } = readDocument(text);
    expect(root).toBeUndefined();
    expect(faults.map((fault) => [`${fault.line}:${fault.column}`, fault.message])).toContainEqual([place, message]);
    expect(faults.every(({ advice }) => advice.length > 0)).toBe(true);
  });

  it('refuses a key that stands twice, and a key that is a list', () => {
    expect(slips('a: 1\nb: 2\na: 3\n')).toEqual([['3:1', '"a" stands here twice', 'Do        keep one of them']]);
    expect(slips('? [a]\n: 1\n').map(([place, message]) => [place, message])).toEqual([
      ['1:3', 'a list or mapping stands where a key is expected'],
    ]);
  });

  it('never throws, whatever the text', () => {
    const bits = fc.constantFrom(
      'a',
      ': ',
      ':',
      '\n',
      '  ',
      '- ',
      '\t',
      '{',
      '}',
      '[',
      ']',
      ', ',
      '"',
      "'",
      '#',
      '*',
      '&',
      '!',
      '|',
      '>',
      '@',
      '%',
      '---\n',
      '\\',
      '? ',
      '012',
    );
    fc.assert(
      fc.property(fc.array(bits, { maxLength: 40 }), (parts) => {
        const { root, faults } = readDocument(parts.join(''));
        expect(root !== undefined || faults.length > 0).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
});
