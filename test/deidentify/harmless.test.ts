import { describe, expect, it } from 'vitest';
import { holdsIdentifier, isCodeLike, isLabel, isMeasurement, isPartOfDate } from '../../src/deidentify/harmless.js';

// Spellings in common practice, no source; numbers, names and addresses are invented.
describe('a cell of a measurement', () => {
  it.each([
    '+0.50',
    '\u22120.50',
    '-1.25 D',
    '43.5',
    '118.9',
    '0.301029995663981',
    '2543',
    '005',
    'x 90',
    '180°',
    'plano',
    'DS',
    '6/9',
    '6/9-2',
    '20/400',
    'CF',
    'HBW',
    '-1.25 -0.50 x 90',
    '-10.25 -10.50 x 175',
    '>30',
    '7.8/8.1',
    '1.25 / 3',
  ])('"%s" may leave the clinic', (word) => {
    expect(isMeasurement(word, 'point', false)).toBe(true);
  });

  it.each([
    'see Mrs Quillfeather',
    'Quillfeather',
    '07700 900123',
    '+44 7700 900123',
    '12.05.1948',
    '1948-05-12',
    '12 May 1948',
    '45321',
    '0004711',
    '0171.2345678',
    'a@b.example',
    '943 476 5919',
    '08:15',
    '1E+05',
    '123-45-6789',
    '12/05/48',
  ])('"%s" may not', (word) => {
    expect(isMeasurement(word, 'point', false)).toBe(false);
  });

  it('may be an hour on a dial where one is asked for', () => {
    expect(isMeasurement('10:30', 'point', true)).toBe(true);
    expect(isMeasurement('10:30', 'point', false)).toBe(false);
  });
});

describe('a label', () => {
  it.each([
    ['PCR', false],
    ['man.', false],
    ['A1T', false],
    ['anterior capsule tear', false],
    ['yes', false],
    ['1 month', false],
    ['North', false],
    ['Riverside unit', true],
  ])('"%s" may leave the clinic (of several patients: %s)', (text, shared) => {
    expect(isLabel(text, shared)).toBe(true);
  });

  it.each([
    ['Riverside unit', false],
    ['Mrs Quillfeather', true],
    ['Quillfeather, Anna', true],
    ['A1234567', true],
    ['12.05.1948', true],
    ['rang 07700 900123', true],
    ['Quillfeather', false],
    ['a text that goes on and on and tells of the day', true],
  ])('"%s" may not (of several patients: %s)', (text, shared) => {
    expect(isLabel(text, shared)).toBe(false);
  });

  it('of a list of codes may be two words with a comma', () => {
    expect(isLabel('Glaucoma, Uveitis', true, 'comorbidity')).toBe(true);
    expect(isLabel('Glaucoma, Uveitis', true)).toBe(false);
  });

  it('has the shape of a code where it is short', () => {
    expect(['S1', 'PCR', 'GL', 'man', 'SX-20'].every(isCodeLike)).toBe(true);
    expect(['Anna', 'SX123456', 'two words'].some(isCodeLike)).toBe(false);
  });
});

describe('a text that was read through', () => {
  it.each([
    'soft lens',
    'dense nucleus, small pupil',
    'axis 90, aim -0.50',
    'DR present',
    'drops twice a day for 4 weeks',
  ])('"%s" holds nothing that identifies', (text) => {
    expect(holdsIdentifier(text)).toBe(false);
  });

  it.each([
    'told Mrs Quillfeather',
    'born 12.05.1948',
    'seen on 3 May 2024 again',
    'ring 01632 960 123',
    'ring (01632) 960123',
    'mail a@b.example today',
    'see www.clinic.example',
    'record 0004711',
    'Frau Dr. Meier kommt',
    'letter of 2024-05-03.',
  ])('"%s" holds something', (text) => {
    expect(holdsIdentifier(text)).toBe(true);
  });
});

it.each(['05/2024', '5-1948', '2024-05', '12.2024', '12. 5.', 'May 1948', '06-Sep'])(
  '"%s" is part of a date',
  (text) => {
    expect(isPartOfDate(text)).toBe(true);
  },
);

it.each(['6/12', '20/40', '43.25', '13/2024', '2024', '12.5', '-1.25'])('"%s" is none', (text) => {
  expect(isPartOfDate(text)).toBe(false);
});
