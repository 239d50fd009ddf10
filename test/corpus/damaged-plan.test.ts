import iconv from 'iconv-lite';
import { expect, it } from 'vitest';
import { harmonise } from '../../pipeline/2-harmonise.js';
import { qualify } from '../../pipeline/3-qualify.js';
import { plan as planFrom } from '../../pipeline/plan.js';
import { countOfSeverity } from '../../src/findings/builder.js';
import { ingested } from '../findings/audited.js';
import { committed } from '../sample-exports/committed.js';

const names = ['theatre-list', 'lane-north', 'lane-south', 'keratometer', 'biometry', 'endothelium', 'wide'];
const rows = 12;

/** The first rows of every sample export, byte for byte. */
const files = Object.fromEntries(
  names.map((name) => {
    const text = iconv.decode(committed(`${name}.csv`), 'latin1');
    return [`${name}.csv`, iconv.encode(`${text.split('\n').slice(0, rows).join('\n')}\n`, 'latin1')];
  }),
);

/** Ways in which a line of audit.yaml goes astray while it is edited by hand. */
const damages: Readonly<Record<string, (line: string) => string>> = {
  commented: (line) => `# ${line}`,
  'key misspelt': (line) => line.replace(/([a-z_]+):/i, '$1x:'),
  'another value': (line) => line.replace(/: .*$/, ': Zzz'),
};

/** How far a damaged audit comes. @throws where our own code breaks a promise, which is what is looked for */
async function comesTo(text: string): Promise<'faults' | 'stopped' | 'read'> {
  const planned = planFrom(text);
  if ('faults' in planned) {
    expect(planned.faults.every(({ line, message }) => line > 0 && message !== '')).toBe(true);
    return 'faults';
  }
  const { raw, findings } = await ingested(files, planned.plan);
  if (countOfSeverity(findings, 'stop') > 0) return 'stopped';
  const { tables, findings: more } = harmonise(raw, planned.plan);
  if (countOfSeverity(more, 'stop') > 0) return 'stopped';
  qualify(tables, raw, planned.plan);
  return 'read';
}

it.each(['audit.yaml', 'wide-audit.yaml'])(
  '%s with any one line damaged has faults with their line, stops, or is read: never a failure of ours',
  async (name) => {
    const lines = committed(name).toString('utf8').split('\n');
    const ends = new Map<string, number>();
    for (const [at] of lines.entries()) {
      for (const damage of Object.values(damages)) {
        const end = await comesTo(lines.map((line, i) => (i === at ? damage(line) : line)).join('\n'));
        ends.set(end, (ends.get(end) ?? 0) + 1);
      }
    }
    expect(await comesTo(lines.join('\n'))).toBe('read');
    for (const end of ['faults', 'stopped', 'read']) expect(ends.get(end) ?? 0, end).toBeGreaterThan(10);
  },
  60_000,
);

// Whose row it is may be lost in any of the places where audit.yaml can say it.
it.each([
  ['a source without the line', 'columns: { eye: Eye, exam_date: Date, cdva: VA }', 9],
  ['blocks that share none', 'blocks:\n      - { holds: exam, visit: before, columns: { eye: Eye, cdva: VA } }', 9],
  ['a constant in its place', 'constants: { patient: A1 }\n    columns: { eye: Eye, exam_date: Date, cdva: VA }', 9],
])('%s: a fault with its line and what to do', (_, columns, line) => {
  const holds = columns.startsWith('blocks') ? '' : '    holds: exam\n';
  const text = `format: 1\ntitle: x\nsources:\n  - file: t.csv\n    holds: surgery\n    columns: { patient: ID, eye: Eye, surgery_date: D }\n  - file: lane.csv\n${holds}    ${columns}\n`;
  const planned = planFrom(text);
  const faults = 'faults' in planned ? planned.faults : [];
  expect(faults).toMatchObject([{ line, message: expect.stringContaining('"patient"') }]);
  expect(faults[0]?.advice.some((told) => told.startsWith('Do'))).toBe(true);
});
