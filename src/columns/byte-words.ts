/**
 * Distinct cells of one column as bytes in UTF-8: a cell met before is known without making its text. Code 0 is the
 * blank cell.
 */
export interface ByteWords {
  readonly size: number;
  /** A byte a word for what its reader knows of it; 0 for a new word. */
  readonly marks: Uint8Array;
  /**
   * The code of a cell; a new cell gets the next.
   *
   * @param hash  `nextHash` over the bytes from `start` to `end`, from `hashSeed`
   */
  codeOf(bytes: Uint8Array, start: number, end: number, hash: number): number;
  word(code: number): string;
  /** Forgets all words but the blank one. */
  clear(): void;
}

/** Where a hash begins. */
export const hashSeed = 0x811c9dc5 | 0;

/** The hash with one more byte. @source Fowler–Noll–Vo, variant 1a, 32 bits (public domain; from memory) */
export function nextHash(hash: number, byte: number): number {
  return Math.imul(hash ^ byte, 0x01000193);
}

/** Hash of all bytes. */
export function hashOf(bytes: Uint8Array): number {
  let hash = hashSeed;
  for (let i = 0; i < bytes.length; i++) hash = nextHash(hash, bytes[i] as number);
  return hash;
}

const text = new TextDecoder('utf-8', { ignoreBOM: true });

/** Cells are short and nearly always ASCII, for which a decoder's start costs more than the text. */
function textOf(bytes: Uint8Array, start: number, end: number): string {
  let made = '';
  for (let i = start; i < end; i++) {
    const byte = bytes[i] as number;
    if (byte >= 0x80) return text.decode(bytes.subarray(start, end));
    made += String.fromCharCode(byte);
  }
  return made;
}

/** The places of words in one store of bytes, found by hash: open addressing, at most half full. */
class HashedWords implements ByteWords {
  size = 0;
  marks = new Uint8Array(64);
  private slots = new Int32Array(128);
  private hashes = new Int32Array(64);
  /** Where each word begins in the store; one more tells where the last ends. */
  private starts = new Uint32Array(65);
  private store = new Uint8Array(1024);
  private texts: string[] = [];

  constructor() {
    this.clear();
  }

  clear(): void {
    this.slots.fill(0);
    this.marks.fill(0);
    this.texts = [];
    this.size = 0;
    this.codeOf(new Uint8Array(), 0, 0, hashSeed);
  }

  codeOf(bytes: Uint8Array, start: number, end: number, hash: number): number {
    const { slots, hashes } = this;
    const mask = slots.length - 1;
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (;;) {
      const code = (slots[slot] as number) - 1;
      if (code < 0) return this.add(bytes, start, end, hash);
      if (hashes[code] === hash && this.isWord(code, bytes, start, end)) return code;
      slot = (slot + 1) & mask;
    }
  }

  word(code: number): string {
    const known = this.texts[code];
    if (known !== undefined) return known;
    const made = textOf(this.store, this.starts[code] as number, this.starts[code + 1] as number);
    this.texts[code] = made;
    return made;
  }

  private isWord(code: number, bytes: Uint8Array, start: number, end: number): boolean {
    const { store } = this;
    const from = this.starts[code] as number;
    if ((this.starts[code + 1] as number) - from !== end - start) return false;
    for (let i = start, at = from; i < end; i++, at++) if (store[at] !== bytes[i]) return false;
    return true;
  }

  private add(bytes: Uint8Array, start: number, end: number, hash: number): number {
    const code = this.size;
    const from = code === 0 ? 0 : (this.starts[code] as number);
    const to = from + end - start;
    if (to > this.store.length) this.store = wider(this.store, Math.max(2 * this.store.length, to));
    if (code === this.hashes.length) this.widen(2 * code);
    this.store.set(bytes.subarray(start, end), from);
    this.starts[code + 1] = to;
    this.hashes[code] = hash;
    this.size++;
    this.place(code);
    return code;
  }

  private place(code: number): void {
    const { slots } = this;
    const mask = slots.length - 1;
    const hash = this.hashes[code] as number;
    let slot = (hash ^ (hash >>> 15)) & mask;
    while (slots[slot] !== 0) slot = (slot + 1) & mask;
    slots[slot] = code + 1;
  }

  private widen(room: number): void {
    this.hashes = wider(this.hashes, room);
    this.marks = wider(this.marks, room);
    this.starts = wider(this.starts, room + 1);
    this.slots = new Int32Array(2 * room);
    for (let code = 0; code < this.size; code++) this.place(code);
  }
}

function wider<T extends Uint8Array | Int32Array | Uint32Array>(column: T, length: number): T {
  const made = new (column.constructor as new (length: number) => T)(length);
  made.set(column);
  return made;
}

/**
 * A dictionary of cells by their bytes.
 *
 * @example const words = byteWords(); const od = Buffer.from('OD'); words.word(words.codeOf(od, 0, 2, hashOf(od))) // 'OD'
 */
export function byteWords(): ByteWords {
  return new HashedWords();
}
