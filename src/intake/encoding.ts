/** Encodings that are told apart; audit.yaml may name others. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1251' | 'windows-1252' | 'windows-1253';

export interface EncodingJudgement {
  encoding: Encoding;
  /** Bytes of the mark at the beginning, to be left out. */
  markBytes: 0 | 2 | 3;
}

/** How much of the beginning is looked at for a mark or for UTF-16. */
const beginning = 4096;

/** Bytes from here on are letters in the Windows pages. */
const firstLetter = 0xc0;

/**
 * The encoding that the beginning of a file settles: by its mark, or, for UTF-16 without one, by NUL at nearly every
 * other byte.
 *
 * @param firstBytes  the beginning of the file; a few thousand bytes are enough
 * @returns the encoding and how many bytes of mark to leave out; undefined where the whole file must be seen
 * @source Unicode Standard, byte order mark
 * @example encodingOfBeginning(Uint8Array.of(0xef, 0xbb, 0xbf)) // { encoding: 'utf-8', markBytes: 3 }
 */
export function encodingOfBeginning(firstBytes: Uint8Array): EncodingJudgement | undefined {
  const [first, second, third] = firstBytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) return { encoding: 'utf-8', markBytes: 3 };
  if (first === 0xff && second === 0xfe) return { encoding: 'utf-16le', markBytes: 2 };
  if (first === 0xfe && second === 0xff) return { encoding: 'utf-16be', markBytes: 2 };
  const looked = firstBytes.subarray(0, beginning);
  const even = looked.filter((byte, position) => byte === 0 && position % 2 === 0).length;
  const odd = looked.filter((byte, position) => byte === 0 && position % 2 === 1).length;
  // Text of Western letters has NUL at almost every odd (little end first) or even byte, and at no other.
  if (odd > looked.length / 5 && even < odd / 20) return { encoding: 'utf-16le', markBytes: 0 };
  if (even > looked.length / 5 && odd < even / 20) return { encoding: 'utf-16be', markBytes: 0 };
  return undefined;
}

/** Judges the encoding of a file while its bytes stream by; only the last byte settles it. */
export interface EncodingJudge {
  push(bytes: Uint8Array): void;
  /** After the last push. */
  verdict(): EncodingJudgement;
}

/**
 * Tells encodings apart: by the beginning, as `encodingOfBeginning`; by whether all bytes are valid UTF-8, but for a few
 * that are broken; else by how long runs of high letters are, since accents stand alone in Western words while Greek and
 * Cyrillic words are made of high letters. Among the pages it is a guess, to be reported and overridden where it is wrong.
 *
 * @returns a judge to push chunks into, in order
 * @source Unicode Standard for UTF-8; a run length of 2.5 parted ten samples in Western and Greek encodings
 * @example const judge = encodingJudge(); judge.push(bytes); judge.verdict().encoding // 'utf-8'
 */
export function encodingJudge(): EncodingJudge {
  let head = new Uint8Array(0);
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let isUtf8 = true;
  let letters = 0;
  let runs = 0;
  let inRun = false;
  let isGreek = true;
  const sequences = sequenceCounter();

  function lookAtLetters(bytes: Uint8Array): void {
    for (let position = 0; position < bytes.length; position += 1) {
      const byte = bytes[position] as number;
      sequences.push(byte);
      const isLetter = byte >= firstLetter;
      if (isLetter) {
        letters += 1;
        if (!inRun) runs += 1;
        // No letter in windows-1253; the Cyrillic Te and ya in windows-1251.
        if (byte === 0xd2 || byte === 0xff) isGreek = false;
      }
      inRun = isLetter;
    }
  }

  function wholeFile(): Encoding {
    if ((isUtf8 && isValid(decoder)) || sequences.areMostlyWhole()) return 'utf-8';
    if (letters < 2.5 * runs) return 'windows-1252';
    return isGreek ? 'windows-1253' : 'windows-1251';
  }

  return {
    push(bytes) {
      if (head.length < beginning) head = Uint8Array.of(...head, ...bytes.subarray(0, beginning - head.length));
      isUtf8 &&= isValid(decoder, bytes);
      lookAtLetters(bytes);
    },
    verdict() {
      return encodingOfBeginning(head) ?? { encoding: wholeFile(), markBytes: 0 };
    },
  };
}

/**
 * Counts characters of several bytes, whole and broken. In a page of single bytes the pairs that UTF-8 makes of an
 * accented letter do not occur; a file with many of them and a broken one is UTF-8 that was cut or joined.
 */
function sequenceCounter(): { push(byte: number): void; areMostlyWhole(): boolean } {
  let [whole, broken, missing] = [0, 0, 0];
  return {
    push(byte) {
      const continues = byte >= 0x80 && byte < 0xc0;
      if (missing > 0 && continues) {
        missing -= 1;
        if (missing === 0) whole += 1;
        return;
      }
      if (missing > 0 || continues) broken += 1;
      missing = byte >= 0xf5 || byte < 0xc2 ? 0 : byte >= 0xf0 ? 3 : byte >= 0xe0 ? 2 : 1;
      if (byte >= 0xf5 || byte === 0xc0 || byte === 0xc1) broken += 1;
    },
    areMostlyWhole: () => whole >= 3 && whole >= 10 * (broken + (missing > 0 ? 1 : 0)),
  };
}

/** Without bytes: whether the last character was complete. */
function isValid(decoder: InstanceType<typeof TextDecoder>, bytes?: Uint8Array): boolean {
  try {
    decoder.decode(bytes, { stream: bytes !== undefined });
    return true;
  } catch {
    return false;
  }
}
