import type { CanonicalTables, FieldReading } from '../records/canonical.js';
import type { Exams } from './exams.js';

/** Sphere and cylinder as they were recorded, in the notation of the file. */
export type Recorded = (refractions: Exams, i: number) => { sphere: number; cylinder: number };

/**
 * Refractions as recorded. Where a value was taken over from a joined row, the measurement stands in plus notation,
 * whose signs are not those of any cell.
 */
export function recordedRefractions({ readings }: CanonicalTables): Recorded {
  const byBlock = new Map<string, FieldReading>();
  for (const reading of readings) byBlock.set(`${reading.source} ${reading.block} ${reading.field}`, reading);
  return (refractions, i) => {
    const at = (field: string): number => {
      const reading = byBlock.get(`${refractions.source[i]} ${refractions.block[i]} ${field}`);
      return reading
        ? (reading.values[reading.words.codes[refractions.row[i] as number] as number] as number)
        : Number.NaN;
    };
    const recorded = { sphere: at('sphere'), cylinder: at('cylinder') };
    if (!Number.isNaN(recorded.sphere + recorded.cylinder)) return recorded;
    return {
      sphere: refractions.numbers('sphere')[i] as number,
      cylinder: refractions.numbers('cylinder')[i] as number,
    };
  };
}
