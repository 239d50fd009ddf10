import iconv from 'iconv-lite';
import { describe, expect, it } from 'vitest';
import { encodingJudge, encodingOfBeginning } from '../../src/intake/encoding.js';

// Outside check: the bytes are made by iconv-lite, from its published code pages.
function judged(bytes: Uint8Array, pieceLength = bytes.length || 1) {
  const judge = encodingJudge();
  for (let at = 0; at < bytes.length; at += pieceLength) judge.push(bytes.subarray(at, at + pieceLength));
  return judge.verdict();
}

const german =
  'Auge;Nachuntersuchung;Bemerkung\nrechts;1 Monat;Hornhaut geklärt, größere Pupille\nlinks;1 Monat;früh\n';
const french = 'œil;date;remarque\ndroit;12/05/2024;cornée œdématiée, à réévaluer\ngauche;;très déçu\n';
const greek = 'οφθαλμός;ημερομηνία\nδεξιός;12/05/2024\nαριστερός;13/05/2024\n';
const russian = 'глаз;дата\nправый;12/05/2024\nлевый;после операции я\n';

describe.each([
  ['German', german],
  ['French', french],
  ['Greek', greek],
  ['Russian', russian],
])('%s', (_, text) => {
  it('in UTF-8, however it is cut into pieces', () => {
    const bytes = iconv.encode(text, 'utf8');
    for (const piece of [1, 3, 7, bytes.length])
      expect(judged(bytes, piece)).toEqual({ encoding: 'utf-8', markBytes: 0 });
  });

  it('with its mark', () => {
    expect(judged(iconv.encode(text, 'utf8', { addBOM: true }), 2)).toEqual({ encoding: 'utf-8', markBytes: 3 });
    expect(judged(iconv.encode(text, 'utf-16le', { addBOM: true }))).toEqual({ encoding: 'utf-16le', markBytes: 2 });
    expect(judged(iconv.encode(text, 'utf-16be', { addBOM: true }))).toEqual({ encoding: 'utf-16be', markBytes: 2 });
  });
});

it.each([
  ['German', german, 'windows-1252'],
  ['French', french, 'windows-1252'],
  ['Greek', greek, 'windows-1253'],
  ['Russian', russian, 'windows-1251'],
] as const)('tells the page of %s text', (_, text, encoding) => {
  const bytes = iconv.encode(text, encoding);
  expect(judged(bytes)).toEqual({ encoding, markBytes: 0 });
  expect(judged(bytes, 5)).toEqual({ encoding, markBytes: 0 });
});

it('finds UTF-16 without a mark by its NULs', () => {
  const text = 'eye;sphere\nOD;-1.25\nOS;0.50\n';
  expect(judged(iconv.encode(text, 'utf-16le')).encoding).toBe('utf-16le');
  expect(judged(iconv.encode(text, 'utf-16be')).encoding).toBe('utf-16be');
  expect(encodingOfBeginning(iconv.encode(text, 'utf-16le'))).toEqual({ encoding: 'utf-16le', markBytes: 0 });
});

it('needs the last byte: one late accent decides', () => {
  const ascii = 'eye;note\n'.repeat(10_000);
  expect(judged(iconv.encode(`${ascii}OD;né\n`, 'windows-1252'), 4096).encoding).toBe('windows-1252');
  expect(judged(iconv.encode(`${ascii}OD;né`, 'windows-1252'), 4096).encoding).toBe('windows-1252');
  expect(encodingOfBeginning(iconv.encode(ascii, 'utf8'))).toBeUndefined();
});

it('takes plain ASCII and an empty file for UTF-8', () => {
  expect(judged(new Uint8Array(0))).toEqual({ encoding: 'utf-8', markBytes: 0 });
  expect(judged(iconv.encode('a;b\n', 'ascii')).encoding).toBe('utf-8');
});
