// Makes reports/example anew: the publication folder of the small series without pictures in pixels, and the one
// figure of the large sample that the README shows.

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, rmSync } from 'node:fs';

const reports = new URL('../../reports/', import.meta.url);
const command = new URL('../../pipeline/halfdiopter.mjs', import.meta.url).pathname;

for (const audit of ['audit.yaml', 'wide-audit.yaml']) {
  const path = new URL(`../../sample-exports/${audit}`, import.meta.url).pathname;
  const { status } = spawnSync(process.execPath, [command, 'run', path, '--quiet', '--replace'], { stdio: 'inherit' });
  if (status !== 0) process.exit(1);
}

const example = new URL('example/', reports);
rmSync(example, { recursive: true, force: true });
mkdirSync(example);
cpSync(new URL('short-sighted-2025/publication/', reports), new URL('publication/', example), {
  recursive: true,
  filter: (path) => !path.endsWith('.png'),
});
const figures = new URL('cataract-2024-2025/publication/figures/', reports);
const doubleAngle = readdirSync(figures).find((name) => /^\d+-double-angle\.svg$/.test(name));
cpSync(new URL(doubleAngle, figures), new URL('double-angle.svg', example));
