import { describe, expect, it } from 'vitest';
import { fitsPattern } from '../../pipeline/ingest/files.js';
import { plan as planFrom } from '../../pipeline/plan.js';
import type { Former } from '../../src/propose/like-proposal.js';
import { clinic, csv, type Eye, later, letter } from '../propose/clinic.js';
import { type Files, formOf, outcomeOf } from '../propose/proposed.js';
import { auditOf } from '../whole/audit.js';

/** Last year's audit, as a person left it. */
const formerText = `# yaml-language-server: $schema=audit.schema.json
format: 1
title: Cataract outcomes 2024
name: cataract-2024
period: { from: 2024-01-01, to: 2024-12-31 }
data_until: 2025-03-31
sources:
  - file: exports/list-2024.csv
    holds: surgery
    columns:
      patient: Kennwort
      eye: { column: Which, words: { right: [x], left: [y] } }
      surgery_date: When
      technique: How
      lens_model: What
      lens_power: Strength
    covariates:
      dense: { column: Dense, type: category }
    constants: { site: north }
    reading: { date_order: year-first }
  - file: exports/lane-*.csv
    columns: { patient: Kennwort, eye: { column: Which, words: { right: [x], left: [y] } } }
    blocks:
      - holds: exam
        columns:
          exam_date: When
          sphere: one
          cylinder: { column: two, notation: minus }
          axis: three
        blank_means: { cylinder: 0 }
        only: [{ where: Kind, is: [REF, refraction] }]
  - file: exports/cells.csv
    holds: exam
    columns: { patient: Kennwort, eye: Which, exam_date: When, ecd: Count }

# What our theatre writes.
values:
  technique: { manual: [M], laser-assisted: [L] }
follow_up:
  visits:
    - { name: 1 month, days: [21, 60] }
eligibility:
  exclude:
    - { where: lens_power, above: 30, reason: Power over 30 D } # agreed in 2023
prefer: [exports/list-2024.csv]
identifiers_reviewed:
  - { file: exports/list-2024.csv, column: Serial, reason: number of the lens box }
`;

function former(text = formerText): Former {
  const planned = planFrom(text);
  if ('faults' in planned) throw new RangeError(JSON.stringify(planned.faults));
  return { text, plan: planned.plan, fits: fitsPattern };
}

const eyes = clinic(14);
const which = (eye: Eye): string => (letter(eye) === 'R' ? 'x' : 'y');
const list = (
  header = 'Kennwort,Which,When,How,What,Strength,Dense,Serial',
  how = (at: number) => ['M', 'L', 'F'][at % 3] ?? '',
) =>
  csv(header, eyes, (eye, at) => [eye.patient, which(eye), eye.operated, how(at), 'A1', eye.power, at % 2, `B-${at}`]);
const lane = csv('Kennwort,Which,When,Kind,one,two,three', eyes, (eye) => [
  eye.patient,
  which(eye),
  later(eye.operated, 30),
  'REF',
  eye.sphere,
  -eye.cylinder,
  eye.axis,
]);
const files: Files = { 'exports/list-2025.csv': list(), 'exports/lane-2025.csv': lane };

async function carried(given: Files, text?: string) {
  const outcome = await outcomeOf(given, { former: former(text) });
  if (outcome.kind !== 'proposed') throw new RangeError(JSON.stringify(outcome));
  const planned = planFrom(outcome.proposal.text);
  if ('faults' in planned) throw new RangeError(`${JSON.stringify(planned.faults)}\n${outcome.proposal.text}`);
  return { ...outcome.proposal, plan: planned.plan };
}

describe('a former audit.yaml', () => {
  it('lends its mapping to files with the same headers, key by key', async () => {
    const now = (await carried(files)).plan;
    const then = former().plan;
    const plain = (plan: typeof now) =>
      plan.sources.map(({ blocks, reading, letters_per_line, lens_power_is }) => ({
        reading,
        letters_per_line,
        lens_power_is,
        blocks: blocks.map(({ columns, covariates, ...rest }) => ({
          ...rest,
          columns: columns.map(formOf),
          covariates: covariates.map(formOf),
        })),
      }));
    expect(plain(now)).toEqual(plain(then).slice(0, 2));
  });

  it('names the new files: by path, or by the former pattern where it fits them', async () => {
    const { plan } = await carried(files);
    expect(plan.sources.map(({ file }) => file)).toEqual([['exports/list-2025.csv'], ['exports/lane-*.csv']]);
    expect(plan.prefer).toEqual(['exports/list-2025.csv']);
    expect(plan.identifiers_reviewed[0]?.file).toBe('exports/list-2025.csv');
  });

  it('moves title, name and period on by the years that passed', async () => {
    const { plan, text } = await carried(files);
    expect(plan).toMatchObject({
      title: 'Cataract outcomes 2025',
      name: 'cataract-2025',
      period: { from: '2025-01-01', to: '2025-12-31' },
    });
    expect(plan.data_until).toBeUndefined();
    expect(text).toContain('# data_until: 2026-03-31');
  });

  it('keeps every other section as it was written, with its comments', async () => {
    const { text } = await carried(files);
    expect(text).toContain('# What our theatre writes.\nvalues:\n  technique: { manual: [M], laser-assisted: [L] }\n');
    expect(text).toContain('    - { where: lens_power, above: 30, reason: Power over 30 D } # agreed in 2023\n');
  });

  it('runs, and reads by the former words and notations', async () => {
    const { text } = await carried(files);
    const { results } = await auditOf(text, files);
    expect(results.get('eyes_operated', 'all', 'count').value).toBe(14);
  });

  it('names words that are new, and words that are gone', async () => {
    const { doubts } = await carried({ ...files, 'exports/list-2025.csv': list(undefined, () => 'F') });
    const texts = doubts.map(({ text }) => text);
    expect(texts).toContain('new in technique, and in no list: F');
    expect(texts).toContain('listed for technique, and in no file any more: M, L');
  });

  it('names columns that are new, and takes out those that are gone with what needs them', async () => {
    const changed = lane.replace('Kind,one,two,three', 'Kind,one,deux,three');
    const { plan, text, files: summaries } = await carried({ ...files, 'exports/lane-2025.csv': changed });
    expect(text).toContain('# cylinder: { column: two, notation: minus }');
    expect(text).toContain('doubt: this column of the former audit is gone');
    expect(plan.sources[1]?.blocks[0]?.columns.map(({ field }) => field)).toEqual(['patient', 'eye', 'exam_date']);
    expect(text).toContain('new: "deux"');
    expect(summaries.find(({ file }) => file.file.includes('lane'))?.left.map(({ header }) => header)).toEqual([
      'deux',
    ]);
  });

  it('names sources for which no file came', async () => {
    expect((await carried(files)).notes).toEqual(['Of the former audit no file came for exports/cells.csv.']);
  });

  it('looks at other files anew, and says so', async () => {
    const biometry = csv('Code,Eye,AL', eyes, (eye, at) => [
      eye.patient,
      letter(eye),
      (23 + at / 10 + 0.03).toFixed(2),
    ]);
    const { plan, files: summaries } = await carried({ ...files, 'exports/bio.csv': biometry });
    expect(plan.sources[2]?.blocks[0]).toMatchObject({ holds: 'eye' });
    expect(summaries.map(({ note }) => note)).toEqual([
      'mapped as in the former audit',
      'mapped as in the former audit',
      'not in the former audit; looked at anew',
    ]);
  });

  it('takes the columns that were reviewed for safe, and no others', async () => {
    const phone = list('Kennwort,Which,When,How,What,Strength,Dense,Phone');
    expect((await outcomeOf({ ...files, 'exports/list-2025.csv': phone }, { former: former() })).kind).toBe('unfit');
    expect((await outcomeOf({ 'exports/list-2025.csv': list() })).kind).toBe('unfit');
  });

  it('keeps its period where no later operation came', async () => {
    const then = formerText
      .replaceAll('2024-', '2025-')
      .replaceAll(' 2024', ' 2025')
      .replace('cataract-2024', 'cataract-2025');
    const { plan, doubts } = await carried(files, then);
    expect(plan.period).toEqual({ from: '2025-01-01', to: '2025-12-31' });
    expect(doubts.map(({ text }) => text)).toContain('kept as it was: no operation was found behind its end');
  });
});
