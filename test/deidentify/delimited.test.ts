import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { delimitedLine } from '../../src/deidentify/delimited.js';

// RFC 4180, sections 2.5 to 2.7: cells with a comma, a quotation mark or a line break are quoted, marks doubled.
it('quotes what needs it and nothing else', () => {
  expect(delimitedLine(['6/9', '-1,25', 'a;b', 'say "ah"', 'two\nlines', ' x '], ';')).toBe(
    '6/9;-1,25;"a;b";"say ""ah""";"two\nlines"; x \n',
  );
});

it('is read back cell by cell by another reader', () => {
  const cell = fc.string({ unit: fc.constantFrom('a', 'Ä', '1', ' ', '"', ',', ';', '\t', '|', '\n', '\r', '=', '-') });
  const rows = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(rows, fc.constantFrom(',', ';', '\t', '|'), (cells, delimiter) => {
      const text = cells.map((row) => delimitedLine(row, delimiter)).join('');
      expect(parse(text, { delimiter, record_delimiter: '\n', relax_column_count: true })).toEqual(cells);
    }),
  );
});
