/**
 * Numbers that states and insurers give to persons, recognised by their shape and their check digit. Check rules as
 * the issuing bodies publish them, *from memory*; each is tested on the issuer's own specimen.
 */
interface NationalNumber {
  /** After blanks, dots, hyphens and slashes are taken out, in capitals. */
  shape: RegExp;
  checks(text: string): boolean;
}

const numbers: readonly NationalNumber[] = [
  // United Kingdom, ten digits: weights 10 to 2, modulo 11.
  { shape: /^\d{10}$/, checks: (text) => nhsDigit(text) === Number(text[9]) },
  // Germany, letter and nine digits: the letter's place in the alphabet as two digits, weights 1 and 2, modulo 10.
  { shape: /^[A-Z]\d{9}$/, checks: (text) => insuredDigit(text) === Number(text[9]) },
  // France, thirteen digits and a key of two: 97 − number modulo 97.
  { shape: /^[12]\d{14}$/, checks: (text) => 97 - (Number(text.slice(0, 13)) % 97) === Number(text.slice(13)) },
  // Switzerland, thirteen digits from 756: check digit of an article number.
  { shape: /^756\d{10}$/, checks: (text) => weighted(text, [1, 3]) % 10 === 0 },
  // Netherlands, nine digits: weights 9 to 2 and −1, modulo 11.
  { shape: /^\d{9}$/, checks: (text) => weighted(text, [9, 8, 7, 6, 5, 4, 3, 2, -1]) % 11 === 0 && Number(text) > 0 },
  // Poland, eleven digits: weights 1 3 7 9, modulo 10.
  { shape: /^\d{11}$/, checks: (text) => weighted(text, [1, 3, 7, 9, 1, 3, 7, 9, 1, 3, 1]) % 10 === 0 },
  // Spain, eight digits and a letter: modulo 23.
  { shape: /^\d{8}[A-Z]$/, checks: (text) => 'TRWAGMYFPDXBNJZSQVHLCKE'[Number(text.slice(0, 8)) % 23] === text[8] },
];

/** Digits of the longest, each set off from the next; a remark is longer. */
const longest = 32;

/**
 * Whether the words of a column are national numbers: of those with the shape of one, at least half have its check
 * digit. One word in ten has it by chance, so that codes of the same shape pass.
 *
 * @param words  distinct words of one column, as written
 * @example areNationalNumbers(['943 476 5919']) // true
 */
export function areNationalNumbers(words: readonly string[]): boolean {
  const plain = words
    .filter((word) => word.length <= longest)
    .map((word) => word.replace(/[\s.\-/]/g, '').toUpperCase());
  return numbers.some(({ shape, checks }) => {
    const shaped = plain.filter((word) => shape.test(word));
    return shaped.length > 0 && shaped.filter(checks).length * 2 >= shaped.length;
  });
}

/** Sum of digits times weights; the weights repeat. */
function weighted(text: string, weights: readonly number[]): number {
  return [...text].reduce((sum, digit, at) => sum + Number(digit) * (weights[at % weights.length] as number), 0);
}

function nhsDigit(text: string): number {
  return (11 - (weighted(text.slice(0, 9), [10, 9, 8, 7, 6, 5, 4, 3, 2]) % 11)) % 11;
}

function insuredDigit(text: string): number {
  const letter = String(text.charCodeAt(0) - 64).padStart(2, '0');
  const products = [...(letter + text.slice(1, 9))].map((digit, at) => Number(digit) * (1 + (at % 2)));
  return products.reduce((sum, product) => sum + Math.floor(product / 10) + (product % 10), 0) % 10;
}
