// Builds after `npm ci`. An install without development packages has no compiler and needs none.
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const require = createRequire(import.meta.url);

/** The compiler's command, or undefined where it is not installed. */
function compiler() {
  try {
    return join(dirname(require.resolve('typescript/package.json')), 'bin', 'tsc');
  } catch {
    return undefined;
  }
}

const tsc = compiler();
if (tsc) {
  const { status } = spawnSync(process.execPath, [tsc, '-p', 'tsconfig.json'], { stdio: 'inherit' });
  process.exitCode = status ?? 1;
}
