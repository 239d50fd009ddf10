import type { FieldReading } from '../records/canonical.js';
import { millionths } from '../units.js';

/** A length in one file that is that of the fellow eye in another. */
export interface MisplacedLength {
  reading: FieldReading;
  row: number;
  eye: number;
  /** What another file gives for this eye. */
  own: number;
}

/** Rows that give a length, by eye; of several the first. */
export function lengthsOf({ words, values, eyes }: FieldReading): ReadonlyMap<number, { row: number; value: number }> {
  const found = new Map<number, { row: number; value: number }>();
  eyes.forEach((eye, row) => {
    const value = values[words.codes[row] as number] as number;
    if (eye >= 0 && !found.has(eye) && !Number.isNaN(value)) found.set(eye, { row, value });
  });
  return found;
}

/**
 * Lengths that two files give differently and that fit the fellow eye; told in the file that is read later.
 *
 * @param limits  how far from the own eye's length elsewhere, and how near the fellow's, millimetres
 */
export function misplacedLengths(
  readings: readonly FieldReading[],
  pairs: readonly (readonly [number, number])[],
  limits: { apart: number; near: number },
): readonly MisplacedLength[] {
  const files = readings
    .filter(({ field }) => field === 'axial_length')
    .map((reading) => {
      return { reading, lengths: lengthsOf(reading) };
    });
  const sides = pairs.flatMap(([right, left]) => [
    [right, left],
    [left, right],
  ]) as [number, number][];
  return files.flatMap(({ reading, lengths }, at) =>
    sides.flatMap(([eye, fellow]): readonly MisplacedLength[] => {
      const here = lengths.get(eye);
      const other = files.slice(0, at).find((file) => file.lengths.has(eye) && file.lengths.has(fellow))?.lengths;
      const [own, across] = [other?.get(eye)?.value, other?.get(fellow)?.value];
      if (!here || own === undefined || across === undefined) return [];
      const isFar = millionths(Math.abs(here.value - own)) > millionths(limits.apart);
      const isNear = millionths(Math.abs(here.value - across)) <= millionths(limits.near);
      return isFar && isNear ? [{ reading, row: here.row, eye, own }] : [];
    }),
  );
}
