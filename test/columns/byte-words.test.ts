import fc from 'fast-check';
import { expect, it } from 'vitest';
import { byteColumnBuilder } from '../../src/columns/byte-column.js';
import { byteWords, hashOf, hashSeed, nextHash } from '../../src/columns/byte-words.js';
import { wordColumnBuilder } from '../../src/columns/word-column.js';

const codeOf = (words: ReturnType<typeof byteWords>, text: string): number => {
  const bytes = Buffer.from(`<${text}>`);
  const own = bytes.subarray(1, -1);
  return words.codeOf(bytes, 1, bytes.length - 1, hashOf(own));
};

it('hashes as the published vectors say: Fowler, Noll and Vo, FNV-1a of 32 bits', () => {
  // Test vectors of the authors' page (from memory): '' 0x811c9dc5, 'a' 0xe40c292c, 'foobar' 0xbf9cf968.
  expect(hashSeed >>> 0).toBe(0x811c9dc5);
  expect(nextHash(hashSeed, 'a'.charCodeAt(0)) >>> 0).toBe(0xe40c292c);
  expect(hashOf(Buffer.from('foobar')) >>> 0).toBe(0xbf9cf968);
});

it('knows each word by one code, thousands of them, and gives back its text', () => {
  const words = byteWords();
  const texts = ['', ...Array.from({ length: 5000 }, (_, i) => `P${i * 7919}°ä`)];
  expect(texts.map((text) => codeOf(words, text))).toEqual([...texts.keys()]);
  expect(texts.map((text) => codeOf(words, text))).toEqual([...texts.keys()]);
  expect(texts.map((_, code) => words.word(code))).toEqual(texts);
  expect(words.size).toBe(5001);
});

it('keeps a mark a word while it grows, and forgets all when it is cleared', () => {
  const words = byteWords();
  words.marks[codeOf(words, 'OD')] = 2;
  for (let i = 0; i < 300; i++) codeOf(words, `w${i}`);
  expect([words.marks[1], words.marks[2]]).toEqual([2, 0]);
  words.clear();
  expect([words.size, codeOf(words, ''), codeOf(words, 'OS'), words.word(1), words.marks[1]]).toEqual([
    1,
    0,
    1,
    'OS',
    0,
  ]);
});

it('tells words of one hash apart', () => {
  const words = byteWords();
  const [a, b] = [Buffer.from('one'), Buffer.from('two')];
  expect([words.codeOf(a, 0, 3, 7), words.codeOf(b, 0, 3, 7), words.codeOf(a, 0, 3, 7)]).toEqual([1, 2, 1]);
});

it('gives the column that text gives, though its dictionary knows cells of other rows', () => {
  const cells = fc.array(
    fc.tuple(fc.constantFrom('', 'OD', 'OS', '−1,25', 'ä'), fc.constantFrom('code', 'text', 'not')),
  );
  fc.assert(
    fc.property(cells, (all) => {
      const words = byteWords();
      const [coded, plain] = [byteColumnBuilder(words), wordColumnBuilder()];
      for (const [cell, how] of all) {
        const code = codeOf(words, cell);
        if (how === 'not') continue;
        if (how === 'code') coded.pushCode(code);
        else coded.push(cell);
        plain.push(cell);
      }
      expect([coded.length, coded.words()]).toEqual([plain.length, plain.words()]);
      const [made, expected] = [coded.finish(), plain.finish()];
      expect([made.words, made.codes]).toEqual([expected.words, expected.codes]);
    }),
  );
});
