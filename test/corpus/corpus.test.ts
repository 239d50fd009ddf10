import { describe, expect, it } from 'vitest';
import { ingest } from '../../pipeline/1-ingest.js';
import { harmonise } from '../../pipeline/2-harmonise.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { countOfSeverity } from '../../src/findings/builder.js';
import { tell } from '../../src/findings/telling.js';
import type { Finding } from '../../src/records/finding.js';
import { en } from '../../src/words/index.js';
import { allFindings } from '../findings/audited.js';
import { type ColumnForm, planOf } from '../findings/plan.js';
import { acuityCases } from './acuities.js';
import { ambiguousCases } from './ambiguous.js';
import { type Peculiar, readingOf, surgeryList, usual } from './corpus.js';
import { dateCases } from './dates.js';
import { encodingCases } from './encodings.js';
import { layoutCases } from './layouts.js';
import { notTableCases } from './not-tables.js';
import { numberCases } from './numbers.js';
import { refractionCases } from './refractions.js';
import { spreadsheetCases } from './spreadsheets.js';

const corpus: Readonly<Record<string, readonly Peculiar[]>> = {
  encodings: encodingCases,
  layouts: layoutCases,
  numbers: numberCases,
  dates: dateCases,
  acuities: acuityCases,
  refractions: refractionCases,
  'what spreadsheets leave': spreadsheetCases,
  'meaning left open': ambiguousCases,
  'no table of text': notTableCases,
};

const usualColumns: Readonly<Record<string, ColumnForm>> = {
  patient: 'ID',
  eye: 'Eye',
  exam_date: 'Date',
  sphere: 'Sph',
  cylinder: 'Cyl',
  axis: 'Axis',
  cdva: 'VA',
};

/** The smallest audit of one lane's export: its eyes' operations beside it. */
async function audit({ bytes, source, columns = {}, plan: more = {}, lettersPerLine, visits }: Peculiar) {
  const all = Object.entries({ ...usualColumns, ...columns });
  const mapped = Object.fromEntries(all.filter((entry): entry is [string, ColumnForm] => entry[1] !== undefined));
  const surgery = { patient: 'Case', eye: 'Side', surgery_date: 'Day' };
  const usualPlan = planOf(
    [
      { file: 'surgery.csv', holds: 'surgery', columns: surgery },
      { file: 'lane.csv', columns: mapped, ...source },
    ],
    more,
  );
  const sources = usualPlan.sources.map((one) => ({ ...one, letters_per_line: lettersPerLine }));
  const labelled = visits?.map((name) => ({ name, days: undefined, aim: undefined, labels: [] }));
  const follow_up = { ...usualPlan.follow_up, ...(visits && labelled && { visits: labelled, outcome: visits }) };
  const plan = { ...usualPlan, sources, follow_up };
  const { raw, findings } = await ingest(plan, memoryIo({ 'surgery.csv': surgeryList, 'lane.csv': bytes }), () => {});
  const stopped = countOfSeverity(findings, 'stop') > 0;
  const harmonised = stopped ? undefined : harmonise(raw, plan);
  const every = [...allFindings(findings), ...(harmonised ? allFindings(harmonised.findings) : [])];
  const told = every.map((one) => tell(one, { raw, plan, words: en.findings }));
  return { findings: every, told, reading: harmonised && readingOf(harmonised.tables) };
}

/** Of a finding, what the case speaks of, with rule, severity and row in any case. */
function part(of: Finding, asked: Partial<Finding>): Partial<Finding> {
  const { rule, severity, row } = of;
  const keys = Object.keys(asked) as (keyof Finding)[];
  return { rule, severity, row, ...Object.fromEntries(keys.map((key) => [key, of[key]])) };
}

describe.each(Object.entries(corpus))('%s', (_, cases) => {
  it.each(cases.map((one) => [one.name, one.peculiarity, one] as const))('%s: %s', async (_name, _what, one) => {
    const { findings, told, reading } = await audit(one);
    const { finds = [], reads = usual, lines } = one;
    expect(findings.map((found, i) => part(found, finds[i] ?? {}))).toEqual(
      finds.map((asked) => ({ severity: 'stop', row: 0, ...asked })),
    );
    const stops = told.filter((__, i) => findings[i]?.severity === 'stop');
    if (stops.length > 0) {
      expect(stops.flatMap((stop) => stop.lines)).toEqual(lines ?? []);
      expect(stops.every(({ sentence, act }) => sentence !== '' && act !== '')).toBe(true);
    }
    if (reads === 'nothing') expect(Object.keys(reading ?? {})).toEqual([]);
    else expect(reading).toEqual(reads);
  });
});

it('has sixty exports and more, each with its own name', () => {
  const names = Object.values(corpus).flatMap((cases) => cases.map(({ name }) => name));
  expect(names.length).toBeGreaterThanOrEqual(60);
  expect(new Set(names).size).toBe(names.length);
});
