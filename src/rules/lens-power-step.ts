import { millionths } from '../units.js';
import type { Rule } from './rule.js';

const step = 0.25;

/** Lenses are made in steps of a quarter dioptre or more: another power may be a digit mistyped, or a lens of thirds. */
export const lensPowerStep: Rule = {
  id: 'lens-power-step',
  judge({ tables, raw, report }) {
    for (const { field, source, column, words, values, eyes } of tables.readings) {
      if (field !== 'lens_power') continue;
      const isOff = values.map((value) => (millionths(value) % millionths(step) === 0 ? 0 : 1));
      eyes.forEach((eye, row) => {
        const code = words.codes[row] as number;
        if (eye < 0 || !isOff[code] || Number.isNaN(values[code])) return;
        const written = words.words[code];
        const place = { source, row: raw[source]?.rowNumber(row) ?? 0, column, field, written, eye };
        report({ rule: 'lens-power-step', severity: 'note', ...place, effect: 'kept' });
      });
    }
  },
};
