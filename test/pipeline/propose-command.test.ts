import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Interrupted } from '../../pipeline/commands/interrupt.js';
import { propose } from '../../pipeline/commands/propose.js';
import { plan as planFrom } from '../../pipeline/plan.js';
import { askerOn, type Terminal, valueTyped } from '../../pipeline/propose/ask.js';
import { auditJsonSchema } from '../../src/plan/schema.js';
import { en } from '../../src/words/index.js';
import { clinic, csv, keratometer, later, letter, theatreList } from '../propose/clinic.js';
import { committed } from '../sample-exports/committed.js';

const eyes = clinic(24);
const lane = csv('ID,Eye,Date,Sph,Cyl,Axis,Remarks', eyes, (eye, at) => [
  eye.patient,
  letter(eye),
  later(eye.operated, 30),
  eye.sphere,
  -eye.cylinder,
  eye.axis,
  `seen well at the visit number ${at} and content`,
]);
const exports: Readonly<Record<string, string>> = {
  'list.csv': theatreList(eyes),
  'kerato.csv': keratometer(eyes),
  'lane.csv': lane,
};

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'propose-'));
  for (const [name, text] of Object.entries(exports)) await writeFile(join(folder, name), text);
});
afterAll(() => rm(folder, { recursive: true }));

const never = new AbortController().signal;
const paths = () => Object.keys(exports).map((name) => join(folder, name));
const run = (files: readonly string[], options: { out?: string; like?: string } = {}, terminal?: Terminal) =>
  propose(files, { out: folder, ...options }, terminal, () => {}, never);

/** A terminal on which the lines are typed beforehand, and what it showed. */
function typing(lines: string, signal: AbortSignal = never) {
  const [input, output] = [new PassThrough(), new PassThrough()];
  input.end(lines);
  return { terminal: { input, output, signal }, shown: () => String(output.read() ?? '') };
}

const widest = (screen: string): number => Math.max(...screen.split('\n').map((line) => line.length));

describe('propose', () => {
  it('writes audit.yaml and its schema, and says what it saw and what comes next', async () => {
    const { code, screen, data } = await run(paths());
    expect(code).toBe(0);
    const text = await readFile(join(folder, 'audit.yaml'), 'utf8');
    expect('plan' in planFrom(text)).toBe(true);
    expect(text.startsWith('# yaml-language-server: $schema=audit.schema.json\n')).toBe(true);
    expect(JSON.parse(await readFile(join(folder, 'audit.schema.json'), 'utf8'))).toEqual(auditJsonSchema());
    expect(screen).toMatch(/^Looked into 3 files, 72 rows\. Your files were not changed\.\n/);
    expect(screen).toContain('6 of 7 columns placed');
    expect(screen).toContain('"Remarks": free text is not read');
    expect(screen).toMatch(/\nNext {3}halfdiopter check .*audit\.yaml\n$/);
    expect(data).toMatchObject({ outcome: 'proposed', open: 0 });
  });

  it('never overwrites an audit, and names a command that writes elsewhere', async () => {
    const before = await readFile(join(folder, 'audit.yaml'), 'utf8');
    const { code, screen } = await run(paths());
    expect(code).toBe(2);
    expect(screen.replace(/\s+/g, ' ')).toContain('is there already and is not overwritten');
    expect(screen.replace(/\s+/g, ' ')).toContain(`--out ${folder}/audit-2.yaml`);
    expect(await readFile(join(folder, 'audit.yaml'), 'utf8')).toBe(before);
  });

  it('writes the file that is named, its paths from there', async () => {
    const { code } = await run(paths(), { out: join(folder, 'next', 'mine.yaml') });
    expect(code).toBe(0);
    const planned = planFrom(await readFile(join(folder, 'next', 'mine.yaml'), 'utf8'));
    if ('faults' in planned) throw new RangeError(JSON.stringify(planned.faults));
    expect(planned.plan.allow_outside).toBe(true);
    expect(planned.plan.sources.map(({ file }) => file)).toEqual([['../list.csv'], ['../kerato.csv'], ['../lane.csv']]);
  });

  it('carries a former audit over', async () => {
    const { code, screen } = await run(paths(), { like: join(folder, 'audit.yaml'), out: join(folder, 'again.yaml') });
    expect(code).toBe(0);
    expect(screen).toContain('mapped as in the former audit');
  });

  it('a former audit that is not there, or has faults, ends it before a file is read', async () => {
    expect((await run(paths(), { like: join(folder, 'none.yaml'), out: join(folder, 'x.yaml') })).code).toBe(2);
    await writeFile(join(folder, 'faulty.yaml'), 'format: 1\ntitel: x\n');
    expect((await run(paths(), { like: join(folder, 'faulty.yaml'), out: join(folder, 'x.yaml') })).code).toBe(2);
    expect(await readdir(folder)).not.toContain('x.yaml');
  });

  it('identifiers stop it with the next command, and nothing is written', async () => {
    await writeFile(
      join(folder, 'named.csv'),
      csv('ID,Eye,Op date,Surname', eyes, (eye) => [eye.patient, letter(eye), eye.operated, 'Muster']),
    );
    const { code, screen } = await run([join(folder, 'named.csv')], { out: join(folder, 'y.yaml') });
    expect(code).toBe(1);
    expect(screen).toContain('column "Surname"');
    expect(screen.replace(/\s+/g, ' ')).toContain(
      `Next halfdiopter deidentify ${join(folder, 'named.csv')} --codebook ../codes.csv --out clean`,
    );
    expect(screen).not.toContain('Muster');
    expect(await readdir(folder)).not.toContain('y.yaml');
  });

  it('a file that is not there is a matter of what was typed', async () => {
    const { code, screen } = await run([join(folder, 'lain.csv')], { out: join(folder, 'z.yaml') });
    expect(code).toBe(2);
    expect(screen).toContain('lane.csv');
  });
});

describe('questions at a terminal', () => {
  it('come after what was seen, with the evidence, and an empty line takes the likelier', async () => {
    const { terminal, shown } = typing('\n');
    const { code, screen } = await run(paths(), { out: join(folder, 'asked.yaml') }, terminal);
    expect(code).toBe(0);
    const text = shown();
    expect(text).toContain('One answer changes numbers.');
    expect(text).toContain('1 of 1  ');
    expect(text.replace(/\s+/g, ' ')).toContain('24 cylinders carry no sign.');
    expect(text).toMatch(/minus {2}fits the keratometer's axis in 100 % of 24 eyes\n/);
    expect(text).toContain('minus or plus [minus]: ');
    expect(screen).not.toContain('Looked into');
    expect(await readFile(join(folder, 'asked.yaml'), 'utf8')).toContain('{ column: Cyl, notation: minus }');
    expect(Math.max(widest(text), widest(screen))).toBeLessThanOrEqual(78);
  });

  it('an answer is taken by its beginning; another word is asked again', async () => {
    const { terminal, shown } = typing('sideways\npl\n');
    await run(paths(), { out: join(folder, 'plus.yaml') }, terminal);
    expect(shown()).toContain(en.proposeScreens.again);
    expect(await readFile(join(folder, 'plus.yaml'), 'utf8')).toContain('{ column: Cyl, notation: plus }');
  });

  it('the end of the input takes what is likelier', async () => {
    const { terminal } = typing('');
    expect((await run(paths(), { out: join(folder, 'end.yaml') }, terminal)).code).toBe(0);
  });

  it('an interruption ends it, and nothing is written', async () => {
    const controller = new AbortController();
    const terminal: Terminal = { input: new PassThrough(), output: new PassThrough(), signal: controller.signal };
    const asker = askerOn(terminal, en);
    const answer = asker.ask({
      number: 1,
      of: 1,
      place: 'a',
      found: 'b',
      options: [{ value: 'x', text: '' }],
      likelier: 'x',
    });
    controller.abort();
    await expect(answer).rejects.toThrow(Interrupted);
    asker.close();
  });

  it.each([
    ['m', 'minus'],
    ['PLUS', 'plus'],
    ['', undefined],
    ['x', undefined],
    ['corneal', undefined],
    ['corneal p', 'corneal plus'],
  ])('‘%s’ is %s', (typed, value) => {
    expect(valueTyped(typed, ['minus', 'plus', 'corneal plus', 'corneal minus'])).toBe(value);
  });
});

it('the screen of the sample fits 78 columns', async () => {
  const names = ['biometry.csv', 'keratometer.csv', 'lane-north.csv', 'lane-south.csv', 'theatre-list.csv', 'wide.csv'];
  const sample = await mkdtemp(join(tmpdir(), 'propose-'));
  try {
    for (const name of names) await writeFile(join(sample, name), committed(name));
    const { screen } = await run([join(sample, '*.csv')], { out: sample });
    expect(screen).toContain('Looked into 6 files');
    // Paths are never cut: the folder of this test is longer than a line.
    expect(widest(screen.replaceAll(sample, '.'))).toBeLessThanOrEqual(78);
  } finally {
    await rm(sample, { recursive: true });
  }
});
