import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvLine } from '../../src/format/csv.js';

// RFC 4180, section 2: fields with delimiter, quotes or line breaks are quoted, quotes inside doubled.
describe('csvLine', () => {
  it('quotes what needs quoting', () => {
    expect(csvLine(['a', 'b,c', 'd"e', ' f', 'g\nh'], ',')).toBe('a,"b,c","d""e"," f","g\nh"\n');
    expect(csvLine(['b,c', 'd;e'], ';')).toBe('b,c;"d;e"\n');
  });

  it('is read back by another reader', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '7', ' ', ',', ';', '"', '\n', 'é', '\u2212') });
    fc.assert(
      fc.property(
        fc.array(cell, { minLength: 2, maxLength: 6 }),
        fc.constantFrom(',' as const, ';' as const),
        (cells, delimiter) => {
          const read: string[][] = parse(csvLine(cells, delimiter), { delimiter, record_delimiter: '\n' });
          expect(read).toEqual([cells]);
        },
      ),
    );
  });

  it.each(['=1+1', '@sum', '+1+cmd', '-2+3', '-2 -3', '-cmd', '\t=1', '+49 30 =1'])('disarms %j', (cell) => {
    const read: string[][] = parse(csvLine([cell, 'b'], ','), { trim: false });
    expect(read).toEqual([[`'${cell}`, 'b']]);
  });

  it.each([
    '-0.06',
    '+0.50',
    '-',
    '-0,06',
    '-1.25e-7',
    '-6e+22',
    '-0.06 (-0.10 to -0.01)',
    '-1.13 to 2.00*',
    '-0.10*†',
  ])('leaves %j', (cell) => {
    const read: string[][] = parse(csvLine([cell, 'b'], ';'), { delimiter: ';' });
    expect(read).toEqual([[cell, 'b']]);
  });
});
