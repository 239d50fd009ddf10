import { spawnSync } from 'node:child_process';

/**
 * Whether a program that reads our files stands on this machine. On the build server it must; elsewhere its checks are
 * left out, which is printed.
 */
export function isPresent(program: string, ...probe: readonly string[]): boolean {
  const { error } = spawnSync(program, probe, { stdio: 'ignore' });
  if (error === undefined) return true;
  if (process.env.CI) throw new Error(`${program} is not installed; the build server needs it (.ci/run)`);
  console.log(`left out: ${program} is not installed`);
  return false;
}

/** Runs a program to its end. @returns what it printed @throws where it ends with a fault */
export function read(program: string, args: readonly string[], folder: string): string {
  const { status, stdout, stderr } = spawnSync(program, args, { cwd: folder, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${program} ${args.join(' ')}: ${stdout.slice(-2000)} ${stderr.slice(-2000)}`);
  return stdout;
}
