import { lowVisionNames } from '../../src/acuity/low-vision.js';
import { parseAcuity } from '../../src/intake/acuity.js';
import type { Plan } from '../../src/records/plan.js';
import { type Block, type Mapped, mappedColumn } from './blocks.js';
import type { KindReader } from './measurement-rows.js';
import type { ReadContext } from './read-context.js';
import { tellUnreadable } from './unreadable.js';

/** The words of an acuity column, read. */
interface ReadWords {
  /** Exact logMAR; NaN where the word is missing or none. */
  values: Float64Array;
  /** Code of a low-vision word, 0 none. */
  lowVision: Uint8Array;
  unreadable: Uint8Array;
  /** 1 where letters stand behind the acuity and are not counted. */
  uncounted: Uint8Array;
}

function readWords(block: Block, column: Mapped, plan: Plan): ReadWords {
  const { words } = column.words;
  const lettersPerLine = block.sourcePlan.letters_per_line === 5 ? (5 as const) : undefined;
  const { decimal } = block.raw.read;
  const form = { decimal, numbers: column.plan.numbers, lettersPerLine, lowVision: plan.acuity.low_vision };
  const read: ReadWords = {
    values: new Float64Array(words.length).fill(Number.NaN),
    lowVision: new Uint8Array(words.length),
    unreadable: new Uint8Array(words.length),
    uncounted: new Uint8Array(words.length),
  };
  words.forEach((word, code) => {
    if (block.isMissing(word)) return;
    const acuity = parseAcuity(word, form);
    if ('reason' in acuity) {
      read.unreadable[code] = 1;
      return;
    }
    read.values[code] = acuity.logMAR;
    if (acuity.lowVision) read.lowVision[code] = lowVisionNames.indexOf(acuity.lowVision) + 1;
    if (acuity.suffix !== undefined && lettersPerLine === undefined) read.uncounted[code] = 1;
  });
  return read;
}

/** One note a column: how many acuities have letters behind them that do not count. */
function tellSuffixes(block: Block, column: Mapped, uncounted: Uint8Array, { findings }: ReadContext): void {
  if (!uncounted.includes(1)) return;
  let cells = 0;
  for (let row = 0; row < block.raw.rows; row++) {
    if (block.admitted[row] && uncounted[column.words.codes[row] as number]) cells++;
  }
  if (cells === 0) return;
  findings.add({
    rule: 'acuity-suffix',
    severity: 'note',
    effect: 'kept',
    source: block.source,
    column: column.header,
    field: column.plan.field,
    written: column.words.words[uncounted.indexOf(1)],
    detail: cells,
  });
}

/** Acuities, once a word: exact logMAR, and the code of a low-vision word (0 none). */
export function acuities(field: string, block: Block, plan: Plan, context: ReadContext): KindReader | undefined {
  const column = mappedColumn(block, field);
  if (!column) return undefined;
  const { values, lowVision, unreadable, uncounted } = readWords(block, column, plan);
  const told = { rule: 'acuity-unreadable', effect: 'acuity left out', as: 'number' } as const;
  tellUnreadable(block, column, unreadable, told, context);
  tellSuffixes(block, column, uncounted, context);
  const { words } = column;
  const { source, block: index } = block;
  context.readings.push({ source, block: index, field, column: column.header, words, values, eyes: context.eyes });
  return (row) => {
    const code = words.codes[row] as number;
    const value = values[code] as number;
    const unread = unreadable[code] === 1;
    return Number.isNaN(value) && !unread ? undefined : { own: [value, lowVision[code] as number], unread };
  };
}
