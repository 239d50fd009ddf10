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

/** The former report's settings and numbers; undefined where there is none that can be read. */
export async function readFormer(io: Io, target: string): Promise<Former | undefined> {
  const [manifest, results] = [`${target}/${manifestFile}`, `${target}/${resultsPath}`];
  if (!(await io.stat(manifest)) || !(await io.stat(results))) return undefined;
  const { parse } = await import('csv-parse/sync');
  const decode = async (path: string): Promise<string> => new TextDecoder().decode(await readAll(io, path));
  try {
    const { settings } = JSON.parse(await decode(manifest)) as { settings: unknown };
    const rows = parse(await decode(results), { columns: true }) as Record<string, string>[];
    const numbers = rows.filter(({ value }) => value !== undefined && value !== '');
    return {
      settings,
      values: new Map(numbers.map((row) => [`${row.measure}|${row.group}|${row.statistic}`, Number(row.value)])),
    };
  } catch (error) {
    // A report replaced by force may have been edited beyond reading; the new one does not need it.
    if (error instanceof SyntaxError || (error as { code?: string }).code?.startsWith('CSV_')) return undefined;
    throw error;
  }
}
