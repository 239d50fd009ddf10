const digits = 36;

/** 32-bit FNV-1a of a text, by the prime and from the start given. */
function fnv(text: string, start: number, prime: number): number {
  let hash = start;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), prime);
  return hash >>> 0;
}

/**
 * A short name that the same doubt keeps from run to run. It begins with a letter that is no digit of a number, so
 * that no spreadsheet reads it as one.
 *
 * @param parts  what makes the doubt the same: rule, patient, eye, day, field, value as written
 * @returns 'q' and eight characters; two doubts in half a million share a name with a chance of about 1 in 20
 * @source FNV-1a, Fowler, Noll and Vo; 41 bits of two hashes are used
 * @example queryName(['axis-missing', 'P1', 'right', '30', 'axis', '']) // 'q' and eight of 0-9, a-z
 */
export function queryName(parts: readonly string[]): string {
  const text = parts.join('\u001f');
  const high = fnv(text, 0x811c9dc5, 0x0100_0193) % 0x200;
  const low = fnv(text, 0x2166_36b5, 0x85eb_ca6b);
  return `q${(high * 0x1_0000_0000 + low).toString(digits).padStart(8, '0')}`;
}
