import { describe, expect, it } from 'vitest';
import { unfitReasons } from '../../pipeline/propose/reasons.js';
import { en } from '../../src/words/index.js';
import { clinic, csv, letter, theatreList } from '../propose/clinic.js';
import { type Files, outcomeOf } from '../propose/proposed.js';

const eyes = clinic(6);
const list = theatreList(eyes);

/** What stops, in words, and everything that a reader might see of it. */
async function stopped(files: Files) {
  const outcome = await outcomeOf(files);
  if (outcome.kind !== 'unfit') throw new RangeError(`expected a stop, found ${outcome.kind}`);
  const reasons = unfitReasons(outcome.files, en);
  return {
    rules: outcome.files.flatMap(({ findings }) => findings.map(({ rule }) => rule)),
    reasons,
    seen: JSON.stringify([outcome, reasons]),
  };
}

const withColumn = (header: string, cell: string): string =>
  csv(`ID,Eye,Op date,${header}`, eyes, (eye) => [eye.patient, letter(eye), eye.operated, `"${cell}"`]);

describe('the de-identification gate', () => {
  // Invented details of nobody; the number has the check digit of 943 476 591 by modulus 11.
  it.each([
    ['Surname', 'Muster'],
    ['Geburtsdatum', '03.02.1951'],
    ['Remarks', 'Muster, Erika'],
    ['Remarks', 'wer.auch@example.org'],
    ['Remarks', '+44 20 7946 0958'],
    ['Remarks', '943 476 5919'],
  ])('stops at %s with ‘%s’, names file and column, and never tells the cell', async (header, cell) => {
    const { rules, reasons, seen } = await stopped({ 'a.csv': list, 'b.csv': withColumn(header, cell) });
    expect(rules).toEqual(['identifier-present']);
    expect(reasons[0]?.place).toBe(`b.csv, column "${header}"`);
    expect(seen).not.toContain(cell);
  });

  it('stops at long numbers in the column that is recognised as the patient’s', async () => {
    const { reasons, seen } = await stopped({ 'a.csv': list.replaceAll('Q1', '1234567890') });
    expect(reasons.map(({ place }) => place)).toEqual(['a.csv, column "ID"']);
    expect(seen).not.toContain('1234567890');
  });

  it('tells all columns of all files at once', async () => {
    const { reasons } = await stopped({ 'a.csv': withColumn('Surname', 'x'), 'b.csv': withColumn('Phone', 'y') });
    expect(reasons.map(({ place }) => place)).toEqual(['a.csv, column "Surname"', 'b.csv, column "Phone"']);
  });

  it('calls a file whose name looks like a person’s by its number', async () => {
    const outcome = await outcomeOf({ 'Muster, Erika.csv': list });
    if (outcome.kind !== 'proposed') throw new RangeError(outcome.kind);
    expect(outcome.proposal.files[0]?.file.label).toBe('file 1');
  });
});

describe('files that cannot be used', () => {
  it.each([
    ['a workbook', 'file-not-csv', '[Content_Types].xml'],
    ['nothing', 'file-empty', ''],
    ['no headers', 'header-missing', '1,2,3\n4,5,6\n'],
  ])('%s is recognised', async (_, rule, content) => {
    const bytes = rule === 'file-not-csv' ? new TextEncoder().encode(`PK\x03\x04${content}`) : content;
    const { rules, reasons } = await stopped({ 'a.csv': bytes });
    expect(rules).toEqual([rule]);
    expect(reasons[0]?.sentence).not.toBe('');
  });

  it('a file that is not there is told, with one that is', async () => {
    const { proposeAudit } = await import('../../pipeline/propose/propose.js');
    const { memoryIo } = await import('../../pipeline/memory-io.js');
    const outcome = await proposeAudit(['lisst.csv'], {}, memoryIo({ 'list.csv': list }), () => {});
    if (outcome.kind !== 'unfit') throw new RangeError(outcome.kind);
    expect(unfitReasons(outcome.files, en)[0]?.sentence).toContain('list.csv is there');
  });

  it('files of which none says whose eyes they are give nothing', async () => {
    expect((await outcomeOf({ 'a.csv': 'Colour,Size\nred,1\nblue,2\n' })).kind).toBe('nothing');
  });
});
