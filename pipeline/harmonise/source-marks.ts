import { markColumns } from '../../src/records/canonical.js';
import { type Block, mappedColumn } from './blocks.js';
import type { FactContext } from './facts.js';

/** 1 for eyes whose rows come from a block of which something is declared; undefined where it is declared of none. */
function markedBy({ blocks, rowsOfEye }: FactContext, holds: (block: Block) => boolean): Float64Array | undefined {
  const declared = blocks.map(holds);
  if (!declared.some(Boolean)) return undefined;
  return Float64Array.from(rowsOfEye, (rows) => (rows.some(({ at }) => declared[at]) ? 1 : 0));
}

/** What audit.yaml declares of whole sources and a measure has to know eye by eye. */
export function sourceMarks(context: FactContext): Readonly<Record<string, Float64Array>> {
  const { plan } = context;
  const marks = {
    [markColumns.spectacle]: markedBy(
      context,
      (block) => mappedColumn(block, 'predicted_cylinder')?.plan.plane === 'spectacle',
    ),
    [markColumns.sphere]: markedBy(
      context,
      (block) => block.plan.holds === 'surgery' && plan.sources[block.raw.source]?.lens_power_is === 'sphere',
    ),
  };
  return Object.fromEntries(Object.entries(marks).flatMap(([name, mark]) => (mark ? [[name, mark]] : [])));
}
