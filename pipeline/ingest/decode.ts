/** Turns the bytes of a file into text, piece by piece; a character may lie across two pieces. */
export interface Decoder {
  write(bytes: Uint8Array): string;
  end(): string;
}

/**
 * A decoder. The package behind it is loaded here, when a file needs it, and nowhere else; Node's own decoder reads
 * windows-1252 wrongly.
 *
 * @param encoding  a name that audit.yaml allows
 * @throws {RangeError} when no such encoding is known: audit.yaml was to be refused
 */
export async function decoderOf(encoding: string): Promise<Decoder> {
  const { default: iconv } = await import('iconv-lite');
  if (!iconv.encodingExists(encoding)) throw new RangeError(`decoderOf: ${encoding} is no known encoding`);
  const decoder = iconv.getDecoder(encoding);
  return { write: (bytes) => decoder.write(Buffer.from(bytes)), end: () => decoder.end() ?? '' };
}
