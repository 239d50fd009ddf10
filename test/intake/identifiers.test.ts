import { describe, expect, it } from 'vitest';
import { fileNameIdentifier, valueIdentifier } from '../../src/intake/identifiers.js';

// Invented values; 'P0000001' and nine digits in a row are the cases of the specification.
it.each([
  ['value-email', ['', 'someone@example.org']],
  ['value-web-address', ['see www.example.org']],
  ['value-web-address', ['192.168.0.12']],
  ['value-phone', ['+44 20 7946 0958']],
  ['value-phone', ['0151 2345678']],
  ['value-phone', ['020 7946 0958', '']],
  ['value-phone', ['07700900123']],
  ['value-phone', ['(555) 555-0123']],
  ['value-national-number', ['943 476 5919']],
  ['value-national-number', ['123-45-6789']],
  ['value-birth-date', ['12.03.1945', '01.12.1951', '30.06.1938']],
  ['value-person', ['Surname, First', 'Other, Second B.']],
] as const)('stops at %s', (rule, words) => {
  expect(valueIdentifier({ words })).toBe(rule);
});

describe('in the patient column', () => {
  it.each([['123456789'], ['P123456789'], ['00000000012']])('nine digits in a row stop the run: %s', (word) => {
    expect(valueIdentifier({ words: [word], field: 'patient' })).toBe('value-long-number');
  });

  it('one name is enough', () => {
    expect(valueIdentifier({ words: ['P1', 'P2', 'P3', 'Surname, First'], field: 'patient' })).toBe('value-person');
    expect(valueIdentifier({ words: ['P1', 'P2', 'P3', 'Surname, First'] })).toBeUndefined();
  });

  it('pseudonyms pass', () => {
    expect(valueIdentifier({ words: ['P0000001', '12345678', 'case-17', 'A/0012'], field: 'patient' })).toBeUndefined();
  });
});

it('stops at dates where an age belongs', () => {
  expect(valueIdentifier({ words: ['71', '12.03.2001'], field: 'age' })).toBe('value-birth-date');
});

it.each([
  [['-1.25 -0.50 x 90', '+0.50/-1.25x175', '+12.50 -10.25 x 180'], undefined],
  [['01-05-2024', '13.05.2024 10:15', '2024-05-13T10:15:00.000Z', '05/13/24'], 'surgery_date'],
  [['0.43@92.5', '6/9-2', '20/40', '44.50', '2450'], undefined],
  [['Glaucoma, Uveitis', 'Haze, mild'], 'comorbidity'],
  [['PCR, VL', 'PCR', 'none'], 'complication'],
  [['12345', '10:15', '4:10', '0.012'], undefined],
] as const)('finds nothing in %j', (words, field) => {
  expect(valueIdentifier({ words: [...words], field })).toBeUndefined();
});

it('looks at the name of a file, without its folder and ending', () => {
  expect(fileNameIdentifier('exports/Surname, First.csv')).toBe('value-person');
  expect(fileNameIdentifier('exports/123456789.csv')).toBe('value-long-number');
  expect(fileNameIdentifier('Surname, First/theatre-list.csv')).toBeUndefined();
  expect(fileNameIdentifier('lane-2024-05.csv')).toBeUndefined();
  expect(fileNameIdentifier('export 20240513.csv')).toBeUndefined();
});
