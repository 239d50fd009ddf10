import { spectacleMark } from '../../src/records/canonical.js';
import { mappedColumn } from './blocks.js';
import type { FactContext } from './facts.js';

/** What audit.yaml declares of whole sources and a measure has to know eye by eye; no column where it declares nothing. */
export function sourceMarks({ blocks, rowsOfEye }: FactContext): Readonly<Record<string, Float64Array>> {
  const declared = blocks.map((block) => mappedColumn(block, 'predicted_cylinder')?.plan.plane === 'spectacle');
  if (!declared.includes(true)) return {};
  return { [spectacleMark]: Float64Array.from(rowsOfEye, (rows) => (rows.some(({ at }) => declared[at]) ? 1 : 0)) };
}
