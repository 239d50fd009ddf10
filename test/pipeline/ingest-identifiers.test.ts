import { describe, expect, it } from 'vitest';
import { tell } from '../../src/findings/telling.js';
import type { Plan } from '../../src/records/plan.js';
import { en } from '../../src/words/index.js';
import { allFindings, findingsOf, ingested } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';

const plan = (more: Partial<Plan> = {}): Plan =>
  planOf([{ file: 'lane.csv', columns: { patient: 'ID', eye: 'Eye' } }], more);

/** Columns that the gate stops at, and everything that a reader might see of them. */
async function gate(text: string, by: Plan = plan()) {
  const { raw, findings } = await ingested({ 'lane.csv': text }, by);
  const found = findingsOf(findings, 'identifier-present');
  const seen = JSON.stringify([
    allFindings(findings),
    allFindings(findings).map((one) => tell(one, { raw, plan: by, words: en.findings })),
  ]);
  return { columns: found.map(({ column }) => column), found, seen };
}

/** A file whose third column, which audit.yaml does not map, holds the given cells. */
const third = (header: string, cells: readonly string[]): string =>
  `ID;Eye;${header}\n${cells.map((cell, i) => `A${i};R;"${cell}"`).join('\n')}\n`;

describe('the de-identification gate', () => {
  it('stops at headers that name a person’s detail, mapped or not', async () => {
    const { columns } = await gate('ID;Eye;Surname;Date of birth;Post code;Phone;Lens name\nA1;R;;;;;x\n');
    expect(columns).toEqual(['Surname', 'Date of birth', 'Post code', 'Phone']);
  });

  // Invented details of nobody. The check digit of 943 476 591 by modulus 11, weights 10 to 2:
  // 90 + 36 + 24 + 28 + 42 + 30 + 20 + 27 + 2 = 299 = 27 · 11 + 2, and 11 − 2 = 9.
  it.each([
    ['an e-mail address', 'wer.auch@example.org'],
    ['a telephone number', '+44 20 7946 0958'],
    ['a national number', '943 476 5919'],
    ['a person', 'Muster, Erika'],
    ['a date of birth', '03.02.1951'],
  ])('stops at %s in a column that is not mapped, and never tells the cell', async (_, cell) => {
    const { columns, seen, found } = await gate(third('Remark', ['', cell, cell]));
    expect(columns).toEqual(['Remark']);
    expect(found[0]).toMatchObject({ severity: 'stop', written: undefined, row: 0, effect: 'nothing published' });
    expect(seen).not.toContain(cell);
    expect(seen).not.toContain(cell.slice(0, 6));
  });

  it('stops at long numbers and names in the patient’s column', async () => {
    for (const code of ['123456789', 'Muster, Erika', 'A-123456789']) {
      const { columns, seen } = await gate(`ID;Eye\n"${code}";R\n`);
      expect(columns).toEqual(['ID']);
      expect(seen).not.toContain(code);
    }
    expect((await gate('ID;Eye\nP0000001;R\n')).columns).toEqual([]);
  });

  it('looks at every cell: one among thousands of others, and one in a ragged row', async () => {
    const remarks = Array.from({ length: 9000 }, (_, i) => `remark ${i}`);
    remarks[8500] = 'see wer.auch@example.org';
    expect((await gate(third('Remark', remarks))).columns).toEqual(['Remark']);
    expect((await gate('ID;Eye\nA1;R\nA2;R;wer.auch@example.org\n')).columns).toEqual(['column 3']);
    expect((await gate('ID;Eye\nA1;R\nwer.auch@example.org\n')).columns).toEqual(['ID']);
  });

  it('does not judge a share from the last few cells of a long column', async () => {
    // 'Glaucoma, Uveitis' looks like surname and first name; among thousands of other words it is none.
    const remarks = Array.from({ length: 4200 }, (_, i) => `remark ${i}`);
    remarks[4199] = 'Glaucoma, Uveitis';
    expect((await gate(third('Remark', remarks))).columns).toEqual([]);
  });

  it('lets pass what audit.yaml declares reviewed, in that file alone', async () => {
    const reviewed = (file: string, column: string): Plan =>
      plan({ identifiers_reviewed: [{ file, column, reason: 'number of a device' }] });
    const text = third('Serial', ['12']);
    expect((await gate(text)).columns).toEqual(['Serial']);
    expect((await gate(text, reviewed('lane.csv', 'serial '))).columns).toEqual([]);
    expect((await gate(text, reviewed('lane*.csv', 'Serial'))).columns).toEqual([]);
    expect((await gate(text, reviewed('other.csv', 'Serial'))).columns).toEqual(['Serial']);
  });

  it('says what to write where a column is harmless', async () => {
    const by = plan();
    const { raw, findings } = await ingested({ 'lane.csv': third('Serial no.', ['12']) }, by);
    const told = allFindings(findings).map((one) => tell(one, { raw, plan: by, words: en.findings }));
    expect(told[0]?.lines).toEqual(['identifiers_reviewed:', '  - { file: lane.csv, column: Serial no., reason: … }']);
  });

  it('does not tell a header either where the first row of data stands in its place', async () => {
    const { columns, seen } = await gate('A1;R;wer.auch@example.org\nA2;L;"Muster, Erika"\n');
    expect(columns).toEqual(['column 3']);
    expect(seen).not.toMatch(/wer\.auch|Muster/);
  });
});

describe('the name of a file', () => {
  it('that looks like a person’s is asked about, and outputs call the file by its number', async () => {
    const by = planOf([
      { file: 'lane.csv', columns: { patient: 'ID', eye: 'Eye' } },
      { file: 'exports/Muster, Erika.csv', columns: { patient: 'ID', eye: 'Eye' } },
    ]);
    const files = { 'lane.csv': 'ID,Eye\nA1,R\n', 'exports/Muster, Erika.csv': 'ID,Eye\nA1,R\n' };
    const { raw, findings } = await ingested(files, by);
    expect(findingsOf(findings, 'file-name-identifies')).toMatchObject([{ severity: 'query', source: 1 }]);
    expect(raw.map(({ label }) => label)).toEqual(['lane.csv', 'file 2']);
  });
});
