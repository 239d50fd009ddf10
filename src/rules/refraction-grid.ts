import { millionths } from '../units.js';
import { type ReadCell, readingsByFile, tellMinority } from './minority.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

const eighth = 0.125;

function isOff(value: number, tolerance: number): boolean {
  const apart = Math.abs(value - Math.round(value / eighth) * eighth);
  return millionths(apart) > millionths(tolerance);
}

/**
 * Lenses of a trial frame come in eighths: another power was mistyped. Where many are such, an autorefractor wrote
 * them, and its refraction is not a subjective one.
 */
export const refractionGrid: Rule = {
  id: 'refraction-grid',
  tells: ['refraction-grid', 'refraction-grid-file'],
  judge(context) {
    const tolerance = thresholdOf('grid', context.plan);
    for (const readings of readingsByFile(context.tables.readings, ['sphere', 'cylinder']).values()) {
      const off: ReadCell[] = [];
      const [all, offRows] = [new Set<number>(), new Set<number>()];
      for (const reading of readings) {
        const wordIsOff = Array.from(reading.values, (value) => isOff(value, tolerance));
        for (let row = 0; row < reading.words.length; row++) {
          const code = reading.words.codes[row] as number;
          if (Number.isNaN(reading.values[code])) continue;
          const examination = reading.block * reading.words.length + row;
          all.add(examination);
          if (!wordIsOff[code]) continue;
          // A refraction is told once, at the first of its cells.
          if (!offRows.has(examination)) off.push({ reading, row });
          offRows.add(examination);
        }
      }
      tellMinority('refraction-grid', off, all.size, context);
    }
  },
};
