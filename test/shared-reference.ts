import { existsSync, readFileSync } from 'node:fs';

/** The folder of outside reference files, kept beside the project and not copied into it. */
const folder = new URL('../../shared/reference/', import.meta.url);

/**
 * Whether the outside reference files lie beside the project. Tests that need them are skipped with a
 * printed reason where they are absent; on the build server their absence is a failure.
 */
export const referencePresent = existsSync(folder);

if (!referencePresent) {
  const reason = 'shared/reference is not beside the project: checks against its files are skipped';
  if (process.env.CI) throw new Error(reason);
  console.warn(reason);
}

/** Text of one reference file, by its name inside shared/reference. */
export function referenceText(name: string): string {
  return readFileSync(new URL(name, folder), 'utf8');
}
