import { type NotATable, notATable } from '../../src/intake/not-a-table.js';
import { standardReading } from '../../src/plan/standard-reading.js';
import { decoderOf } from '../ingest/decode.js';
import { bytesForm, type Passed, readTable, tableForm } from '../ingest/read-bytes.js';
import type { TableRead } from '../ingest/read-table.js';
import { survey } from '../ingest/survey.js';
import type { Layout } from '../ingest/wanted.js';
import type { Io } from '../io.js';
import { findTopRows, type TopRows } from './top-rows.js';

/** A file whose header was found, read; or why it has none to be found. */
export type OpenExport =
  | { why: 'empty' | 'no-header' }
  | { why: 'no-delimiter' }
  | { why: 'not-csv'; kind: NotATable }
  | { why: undefined; top: TopRows; encoding: string; read: TableRead };

/** Which columns of a header are kept, once the first rows of the file have been looked at. */
export type LayoutFrom = (text: string, top: TopRows) => Promise<(header: readonly string[]) => Layout>;

/**
 * Opens a file of which nothing is known but its bytes: what kind of file it is, its encoding, where its header stands.
 *
 * @throws {ReadFailure} where it cannot be read
 */
export async function openExport(path: string, layoutFrom: LayoutFrom, io: Io, passed: Passed): Promise<OpenExport> {
  const found = await survey(path, io, passed);
  if (found.bytes === found.judged.markBytes) return { why: 'empty' };
  const kind = notATable(found.sample);
  if (kind) return { why: 'not-csv', kind };
  const text = (await decoderOf(found.judged.encoding)).write(found.sample);
  const top = await findTopRows(text);
  if (!top) return { why: 'no-header' };
  const reading = { ...standardReading, header_row: top.headerRow, delimiter: top.delimiter };
  const form = await bytesForm(found, reading);
  if (!form) return { why: 'no-delimiter' };
  const layoutOf = await layoutFrom(text, top);
  const { read } = await readTable(path, tableForm(form, reading, layoutOf), form.encoding, io, passed);
  return { why: undefined, top, encoding: form.encoding, read };
}
