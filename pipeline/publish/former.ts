import type { Io } from '../io.js';
import { readAll } from './digest.js';
import { manifestFile } from './manifest.js';
import { resultsPath } from './report-folder.js';

/** What the report that a run replaces had said. */
export interface Former {
  /** The settings of its plan, as the manifest shows them. */
  settings: unknown;
  /** Value by key of the results row; rows without a value are left out. */
  values: ReadonlyMap<string, number>;
}

/** The rows of a results.csv as text by column; undefined where there is none that can be read. */
export async function readResults(io: Io, path: string): Promise<readonly Record<string, string>[] | undefined> {
  if (!(await io.stat(path))) return undefined;
  const { parse } = await import('csv-parse/sync');
  try {
    return parse(new TextDecoder().decode(await readAll(io, path)), { columns: true });
  } catch (error) {
    if ((error as { code?: string }).code?.startsWith('CSV_')) return undefined;
    throw error;
  }
}

/** The former report's settings and numbers; undefined where there is none that can be read. */
export async function readFormer(io: Io, target: string): Promise<Former | undefined> {
  const [manifest, results] = [`${target}/${manifestFile}`, `${target}/${resultsPath}`];
  const rows = (await io.stat(manifest)) && (await readResults(io, results));
  if (!rows) return undefined;
  try {
    const { settings } = JSON.parse(new TextDecoder().decode(await readAll(io, manifest))) as { settings: unknown };
    const numbers = rows.filter(({ value }) => value !== undefined && value !== '');
    return {
      settings,
      values: new Map(numbers.map((row) => [`${row.measure}|${row.group}|${row.statistic}`, Number(row.value)])),
    };
  } catch (error) {
    // A report replaced by force may have been edited beyond reading; the new one does not need it.
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
