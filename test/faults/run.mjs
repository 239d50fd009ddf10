// Plants every fault of faults.json, one at a time, and demands that the test file that should see it fails; without any
// fault all of these files pass. One line a fault; exit code 1 where a fault is missed.
//
//   node test/faults/run.mjs [part of a name]
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const faults = JSON.parse(readFileSync(new URL('faults.json', import.meta.url), 'utf8'));

const folder = mkdtempSync(join(tmpdir(), 'faults-'));

/** Runs test files with a fault planted; without one where the name is undefined. */
function runTests(files, fault, reportName) {
  const report = join(folder, `${reportName}.json`);
  const { HALFDIOPTER_FAULT: _, ...environment } = process.env;
  const env = fault === undefined ? environment : { ...environment, HALFDIOPTER_FAULT: fault };
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');
  const bail = fault === undefined ? [] : ['--bail=1'];
  const options = [
    'run',
    '--no-isolate',
    '--config',
    'test/vitest.config.ts',
    '--reporter=json',
    `--outputFile=${report}`,
    ...bail,
  ];
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [vitest, ...options, ...files], { cwd: root, env, stdio: 'ignore' });
    child.on('exit', (code) => resolve({ code, results: readReport(report) }));
  });
}

function readReport(report) {
  try {
    return JSON.parse(readFileSync(report, 'utf8')).testResults;
  } catch {
    return [];
  }
}

/** What failed first: a test, or a promise that the code itself asserts while a file is loaded. */
function failureIn(results) {
  for (const { name, message, assertionResults } of results) {
    const file = name.slice(root.length);
    const failed = assertionResults.find(({ status }) => status === 'failed');
    if (failed) return { file, what: failed.fullName.trim(), message: failed.failureMessages.join('\n') };
    if (message) return { file, what: message.split('\n')[0], message };
  }
  return undefined;
}

/** A fault that cannot be planted, or does not compile, proves nothing. */
function isBroken(message) {
  return /must stand once|SyntaxError|Transform failed|PARSE_ERROR|ReferenceError|is not a function/.test(message);
}

async function tryFault({ name, seenBy }) {
  const { results } = await runTests([seenBy], name, String(faults.findIndex((one) => one.name === name)));
  const failure = failureIn(results);
  if (results.length === 0) return { name, isCaught: false, line: 'the tests did not run' };
  if (!failure) return { name, isCaught: false, line: `${seenBy} did not see it` };
  if (isBroken(failure.message)) return { name, isCaught: false, line: `cannot be planted: ${failure.what}` };
  return { name, isCaught: true, line: `${failure.file}: ${failure.what}` };
}

const wanted = faults.filter(({ name }) => name.includes(process.argv[2] ?? ''));
const sound = await runTests([...new Set(wanted.map(({ seenBy }) => seenBy))], undefined, 'sound');
if (sound.code !== 0) {
  const failure = failureIn(sound.results);
  console.error(
    `The tests fail without any fault: ${failure ? `${failure.file}: ${failure.what}` : 'they did not run'}`,
  );
  process.exit(1);
}

const queue = [...wanted];
let missed = 0;
async function work() {
  for (let fault = queue.shift(); fault; fault = queue.shift()) {
    const { name, isCaught, line } = await tryFault(fault);
    if (!isCaught) missed += 1;
    console.log(`${isCaught ? 'caught' : 'MISSED'}  ${name} — ${line}`);
  }
}
await Promise.all(Array.from({ length: Math.min(2, availableParallelism()) }, work));
rmSync(folder, { recursive: true });
console.log(`${wanted.length - missed} of ${wanted.length} faults are caught.`);
process.exit(missed === 0 && wanted.length > 0 ? 0 : 1);
