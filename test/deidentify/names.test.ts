import { describe, expect, it } from 'vitest';
import { copyNames } from '../../src/deidentify/copy-names.js';
import { knownPersons } from '../../src/deidentify/known-persons.js';
import { doublesWithoutZeros, recordKey } from '../../src/deidentify/record-number.js';

const nobody = knownPersons([]);
const named = (path: string, persons = nobody): string | undefined => copyNames([path], persons)[0]?.name;

describe('the name of a copy', () => {
  it.each([
    'theatre-list.csv',
    'lane-north.csv',
    'Keratometer 2025.csv',
    'OP-Liste.csv',
    'Biometrie_März.csv',
    'refrax.csv',
    'OCT.csv',
  ])('%s stays', (name) => {
    expect(named(`exports/${name}`)).toBe(name);
  });

  it.each([
    'Smith_lane.csv',
    'Surname, First.csv',
    'lane of Quillfeather.csv',
    'a@b.example.csv',
    '943 476 5919.csv',
    '.csv',
  ])('%s gives way to its place', (name) => {
    expect(named(`exports/${name}`)).toBe('file-1.csv');
  });

  it('gives way where it holds a name or number of somebody in the files, however it is written', () => {
    const persons = knownPersons(['Quillfeather, Anna', '0004711']);
    expect(named('quillfeather-lane.csv', persons)).toBe('file-1.csv');
    expect(named('0004711.csv', persons)).toBe('file-1.csv');
    expect(named('lane.csv', persons)).toBe('lane.csv');
  });

  it('is another one for every file', () => {
    const names = copyNames(['a/lane.csv', 'b/LANE.CSV', 'file-4.csv', 'Smith.csv'], nobody).map(({ name }) => name);
    expect(names).toEqual(['lane.csv', 'LANE-2.csv', 'file-4.csv', 'file-4-2.csv']);
  });
});

describe('persons that the files name', () => {
  it('are found in other texts by any word of their names, but not by words of the trade', () => {
    const persons = knownPersons(['Lens, Élodie', '4711', 'Li', '2024']);
    expect(persons.isNamedIn('for ELODIE')).toBe(true);
    expect(persons.isNamedIn('no 4711')).toBe(true);
    expect(['lens power', 'Lisbon', 'in 2024', 'no 47110'].some((text) => persons.isNamedIn(text))).toBe(false);
  });
});

describe('a patient’s number', () => {
  it.each([
    [' 00 12\u00a034', '001234'],
    ['="00123"', '00123'],
    ["'00123", '00123'],
    ['P 12-3', 'P12-3'],
    ['  ', ''],
  ])('"%s" is compared as "%s"', (written, key) => {
    expect(recordKey(written)).toBe(key);
  });

  it('keeps leading zeros, and those that differ in them alone are counted', () => {
    expect(recordKey('007')).not.toBe(recordKey('7'));
    expect(doublesWithoutZeros(['007', '7', '0', '00', '8', 'P07', 'P7'])).toBe(4);
  });
});
