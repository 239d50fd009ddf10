import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { version } from '../../pipeline/publish/version.js';
import { briefText } from './publish-audit.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const command = join(root, 'pipeline/halfdiopter.mjs');
const compiler = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin', 'tsc');
// What is checked is the command as it is shipped, from the sources as they are now.
execFileSync(process.execPath, [compiler, '-p', join(root, 'tsconfig.json')]);

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdiopter-cli-'));
  for (const name of ['audit.yaml', 'theatre.csv', 'lane.csv', 'keratometer.csv']) {
    cpSync(join(root, 'test/hand-audit', name), join(folder, name));
  }
  writeFileSync(join(folder, 'brief.yaml'), briefText);
});
afterEach(() => rmSync(folder, { recursive: true }));

interface Ended {
  code: number | null;
  out: string;
  err: string;
}

function halfdiopter(...words: readonly string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...words], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { code: status, out: stdout, err: stderr };
}

const report = (...names: readonly string[]): string => join(folder, 'reports', 'hand-audit', ...names);
const edit = (name: string, from: string | RegExp, to: string): void => {
  const path = join(folder, name);
  writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
};

describe('help', () => {
  it('lists the commands and says what comes first', () => {
    const { code, out, err } = halfdiopter('--help');
    expect([code, err]).toEqual([0, '']);
    for (const name of ['run', 'check', 'trace']) expect(out).toMatch(new RegExp(`^ {2}${name} `, 'm'));
    expect(out).toContain('check, mend, check again');
  });

  it('loads no package but the one that reads the words typed', () => {
    const hook = 'export async function load(u,c,n){process._rawDebug(u);return n(u,c)}';
    const register = `import{register}from'node:module';register('data:text/javascript,${encodeURIComponent(hook)}')`;
    const preload = `data:text/javascript,${encodeURIComponent(register)}`;
    const { stderr } = spawnSync(process.execPath, ['--import', preload, command, '--help'], { encoding: 'utf8' });
    const packages = [...stderr.matchAll(/node_modules\/((?:@[^/]+\/)?[^/]+)\//g)].map(([, name]) => name);
    expect(new Set(packages)).toEqual(new Set(['commander']));
    expect(stderr).not.toMatch(/pipeline\/(?:run|\d-\w+)\.js/);
  });

  it('knows its version', () => {
    const own = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
    expect(version).toBe(own.version);
    expect(halfdiopter('--version')).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });
});

describe('a word that is wrong ends with 2, and what comes next', () => {
  it.each([
    ['an unknown command', ['publish', 'audit.yaml']],
    ['no audit.yaml named', ['run']],
    ['an unknown option', ['run', 'audit.yaml', '--force']],
    ['no patient', ['trace', 'audit.yaml', '--eye', 'right']],
    ['an eye that is none', ['trace', 'audit.yaml', '--patient', 'H1', '--eye', 'both']],
  ])('%s', (_, words) => {
    const { code, out, err } = halfdiopter(...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/Next {3}halfdiopter --help\n/);
  });
});

describe('run', () => {
  it('publishes, tells the summary on stdout, and draws no progress where there is no terminal', () => {
    const { code, out, err } = halfdiopter('run', 'audit.yaml');
    expect([code, err]).toEqual([0, '']);
    // By hand: test/hand-audit/sheet.md, sections 2 and 3.
    expect(out).toMatch(/Operated +12 eyes, 8 patients\n/);
    expect(out).toMatch(/Outcome known, of eyes due +10 of 11/);
    expect(out).toContain('reports/hand-audit/publication/index.html');
    expect(out).not.toContain('\u001b');
    expect(readdirSync(report()).sort()).toEqual(['internal', 'manifest.json', 'publication']);
  });

  it('tells what moved since the former run', () => {
    halfdiopter('run', 'brief.yaml');
    edit('brief.yaml', 'above: 30', 'above: 31');
    const { out } = halfdiopter('run', 'brief.yaml');
    expect(out).toContain(
      'Since the former run\n    eligibility.exclude changed\n    Outcome known, of eyes due  91 → 92',
    );
  });

  it('takes paths from the folder of audit.yaml, wherever it is called', () => {
    const { code, out } = spawnIn('/', 'run', join(folder, 'brief.yaml'));
    expect(code).toBe(0);
    expect(out).toContain(join(folder, 'reports/hand-audit/publication/index.html'));
  });

  it('tells the same to programs with --json, and nothing with --quiet', () => {
    const { out } = halfdiopter('run', 'brief.yaml', '--json');
    const told = JSON.parse(out) as {
      outcome: string;
      headlines: { id: string; value: number }[];
      publication: string;
    };
    expect(told).toMatchObject({ outcome: 'published', publication: 'reports/hand-audit/publication/index.html' });
    // By hand: 10 of the 11 eyes that were due.
    expect(told.headlines.find(({ id }) => id === 'outcome-known')?.value).toBeCloseTo(10 / 11, 15);
    expect(halfdiopter('run', 'brief.yaml', '--quiet')).toEqual({ code: 0, out: '', err: '' });
  });

  it('ends with 1 where the data stop it, and touches no report', () => {
    halfdiopter('run', 'brief.yaml');
    const before = readFileSync(report('manifest.json'), 'utf8');
    edit('lane.csv', 'Axis', 'Meridian');
    const { code, out, err } = halfdiopter('run', 'brief.yaml');
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('Stopped. Nothing was published; the former report is untouched.');
    expect(err).toContain('rule column-missing');
    expect(err).toContain('reports/hand-audit.check/findings.csv');
    expect(readFileSync(report('manifest.json'), 'utf8')).toBe(before);
    expect(JSON.parse(halfdiopter('run', 'brief.yaml', '--json').out)).toMatchObject({ outcome: 'stopped' });
  });

  it('ends with 2 where audit.yaml has a fault, is missing, or is a folder', () => {
    edit('brief.yaml', 'holds: surgery', 'hold: surgery');
    const { code, err } = halfdiopter('run', 'brief.yaml');
    expect(code).toBe(2);
    expect(err).toMatch(/brief\.yaml line 8, column 5: "hold" is not known/);
    expect(halfdiopter('run', 'no.yaml')).toMatchObject({ code: 2, err: expect.stringContaining('no file no.yaml') });
    expect(halfdiopter('check', '.')).toMatchObject({ code: 2, err: expect.stringContaining('. is a folder') });
  });

  it('ends with 2 where the report folder cannot be', () => {
    writeFileSync(join(folder, 'reports'), 'a file in the way');
    const { code, err } = halfdiopter('run', 'brief.yaml');
    expect(code).toBe(2);
    expect(err).toContain('The folder reports cannot be written.');
  });

  it('ends with 2 where the report was changed by hand, and obeys --replace', () => {
    halfdiopter('run', 'brief.yaml');
    writeFileSync(report('publication', 'methods.md'), 'mine');
    const refused = halfdiopter('run', 'brief.yaml');
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('  publication/methods.md\n');
    expect(readFileSync(report('publication', 'methods.md'), 'utf8')).toBe('mine');
    expect(halfdiopter('run', 'brief.yaml', '--replace').code).toBe(0);
    expect(readFileSync(report('publication', 'methods.md'), 'utf8')).toContain('Statistical methods');
  });
});

describe('check', () => {
  it('counts, names the first place of each kind of doubt, and publishes nothing', () => {
    const { code, out } = halfdiopter('check', 'brief.yaml');
    expect(code).toBe(0);
    expect(out).toContain('3 read, 45 rows: 45 used, 0 set aside');
    expect(out).toContain('12 operated, 8 patients, 4 with both eyes');
    expect(out).toMatch(/cylinder without an axis: no vector +1 {2}lane\.csv row 20/);
    expect(readdirSync(join(folder, 'reports'))).toEqual(['hand-audit.check']);
  });
});

describe('trace', () => {
  // By hand: test/hand-audit/sheet.md, section 1: H1 right, −0.25 −0.50 × 90, −0.5 against −0.75 predicted.
  it('goes from the cells to the numbers of one eye, and writes nothing', () => {
    const { code, out } = halfdiopter('trace', 'brief.yaml', '--patient', 'H1', '--eye', 'right');
    expect(code).toBe(0);
    expect(out).toMatch(/^H1 right, operated 2025, manual/);
    expect(out).toContain('‘-0.25’');
    expect(out).toMatch(/prediction error +0\.250 D/);
    expect(existsSync(join(folder, 'reports'))).toBe(false);
  });

  it('ends with 2 for an eye that the audit does not have', () => {
    const { code, err } = halfdiopter('trace', 'brief.yaml', '--patient', 'H5', '--eye', 'left');
    expect(code).toBe(2);
    expect(err).toContain('Patient H5 has no operated left eye in this audit.');
  });
});

describe('Ctrl-C', () => {
  // A pipe in place of an export: it opens for writing when the run has begun to read it, and never gives a byte.
  it('ends with 130 while a file is read; the former report is untouched and nothing is left behind', async () => {
    halfdiopter('run', 'brief.yaml');
    const before = readFileSync(report('manifest.json'), 'utf8');
    rmSync(join(folder, 'lane.csv'));
    execFileSync('sh', ['-c', 'mkfifo "$0"', join(folder, 'lane.csv')]);
    const child = spawn(process.execPath, [command, 'run', 'brief.yaml'], { cwd: folder });
    const pipe = await open(join(folder, 'lane.csv'), 'w');
    // The pipe stays open until the run says that it was interrupted: it is no end of file that ends it.
    child.stderr.once('data', () => void pipe.close());
    const { code, err } = await endOf(child, () => child.kill('SIGINT'));
    expect(code).toBe(130);
    expect(err).toContain('Interrupted. Nothing was published');
    expect(readFileSync(report('manifest.json'), 'utf8')).toBe(before);
    expect(readdirSync(join(folder, 'reports'))).toEqual(['hand-audit']);
  });
});

function spawnIn(cwd: string, ...words: readonly string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...words], { cwd, encoding: 'utf8' });
  return { code: status, out: stdout, err: stderr };
}

function endOf(child: ChildProcess, begin: () => void): Promise<Ended> {
  const told = { out: '', err: '' };
  child.stdout?.on('data', (piece) => (told.out += piece));
  child.stderr?.on('data', (piece) => (told.err += piece));
  return new Promise((resolve) => {
    child.on('close', (code) => resolve({ code, ...told }));
    begin();
  });
}

it('a reader that closes the pipe early is no failure', () => {
  mkdirSync(join(folder, 'elsewhere'));
  const line = `"${process.execPath}" "${command}" check brief.yaml | head -1; echo "\${PIPESTATUS[0]}"`;
  const { stdout, stderr } = spawnSync('bash', ['-c', line], { cwd: folder, encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(stdout).toMatch(/^Twelve eyes worked by hand .*\n0\n$/);
});
