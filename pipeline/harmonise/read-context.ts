import type { FindingsBuilder } from '../../src/findings/builder.js';
import type { FieldReading } from '../../src/records/canonical.js';

/** What every reader of cells needs beside the block itself. */
export interface ReadContext {
  /** Eye index of every row of the block; negative where the row belongs to no eye of the audit. */
  eyes: Int32Array;
  /** 1 where the row names a patient and an eye. */
  keyed: Uint8Array;
  findings: FindingsBuilder;
  readings: FieldReading[];
}
