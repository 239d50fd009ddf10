/**
 * How much memory and time a large export takes: node test/bench/stream.mjs [megabytes] [compiled pipeline]
 *
 * Writes a lane's export of that size with remarks in every row, reads it with the compiled pipeline (`npm run build`)
 * and prints what was held. Memory must grow with the columns kept, not with the text: the same rows with remarks ten
 * times as long take the same.
 */
import { createWriteStream, rmSync, statSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [megabytes = '100', compiled = new URL('../../dist', import.meta.url).pathname] = process.argv.slice(2);
const load = (path) => import(pathToFileURL(join(compiled, path)).href);
const { ingest } = await load('pipeline/1-ingest.js');
const { harmonise } = await load('pipeline/2-harmonise.js');
const { nodeIo } = await load('pipeline/node-io.js');
const { plan } = await load('pipeline/plan.js');

const remark = 'quiet eye, clear cornea; pupil reacts, lens well centred, patient content with far and near. ';

/** Rows of two eyes a patient, one examination a row. */
function* rows(count, remarks) {
  for (let i = 0; i < count; i++) {
    const day = String(1 + (i % 28)).padStart(2, '0');
    const month = String(1 + (i % 12)).padStart(2, '0');
    const sphere = ((i % 25) / 4 - 3).toFixed(2);
    const cylinder = (-(i % 9) / 4).toFixed(2);
    const cells = [`P${String(i >> 1).padStart(7, '0')}`, i % 2 ? 'L' : 'R', `2025-${month}-${day}`, sphere, cylinder];
    yield `${cells.join(',')},${(i * 7) % 181},6/${6 + (i % 7)},"${remark.repeat(remarks)}${i}"\n`;
  }
}

/** Writes an export; a chunk at a time, so that the writer holds nothing. */
async function write(path, count, remarks) {
  const out = createWriteStream(path);
  out.write('ID,Eye,Date,Sph,Cyl,Axis,VA,Remark\n');
  for (const row of rows(count, remarks)) if (!out.write(row)) await new Promise((ready) => out.once('drain', ready));
  await new Promise((done) => out.end(done));
}

const audit = `format: 1
title: Bench
sources:
  - file: lane.csv
    holds: exam
    columns: { patient: ID, eye: Eye, exam_date: Date, sphere: Sph, cylinder: Cyl, axis: Axis, cdva: VA }
    blank_means: { sphere: 0, cylinder: 0 }
  - file: surgery.csv
    holds: surgery
    columns: { patient: Case, eye: Side, surgery_date: Day }
`;

const folder = await mkdtemp(join(tmpdir(), 'lane-'));
const mb = (bytes) => `${(bytes / 2 ** 20).toFixed(0)} MB`;
try {
  const remarks = 1;
  const count = Math.round((Number(megabytes) * 2 ** 20) / (45 + remark.length));
  await write(join(folder, 'lane.csv'), count, remarks);
  const list = createWriteStream(join(folder, 'surgery.csv'));
  list.write('Case,Side,Day\nP0000000,R,2025-01-01\nP0000000,L,2025-01-01\n');
  await new Promise((done) => list.end(done));

  let peak = 0;
  const watch = setInterval(() => {
    peak = Math.max(peak, process.memoryUsage.rss());
  }, 20);
  const before = process.memoryUsage.rss();
  const read = plan(audit);
  if ('faults' in read) throw new Error(JSON.stringify(read.faults));
  const start = performance.now();
  const { raw, findings } = await ingest(read.plan, nodeIo(folder), () => {});
  const ingested = performance.now();
  peak = Math.max(peak, process.memoryUsage.rss());
  const held = raw.flatMap(({ columns }) => columns).reduce((sum, { codes }) => sum + codes.byteLength, 0);
  console.log(`${mb(statSync(join(folder, 'lane.csv')).size)}, ${count} rows, ${findings.length} findings`);
  console.log(`ingest     ${((ingested - start) / 1000).toFixed(1)} s, ${mb(before)} before, peak ${mb(peak)}`);
  console.log(
    `held       ${mb(held)} of codes, ${raw.flatMap(({ columns }) => columns).reduce((n, { words }) => n + words.length, 0)} words`,
  );
  harmonise(raw, read.plan);
  console.log(
    `harmonise  ${((performance.now() - ingested) / 1000).toFixed(1)} s, ${mb(process.memoryUsage.rss())} after`,
  );
  clearInterval(watch);
} finally {
  rmSync(folder, { recursive: true });
}
