import type { FindingsBuilder } from '../../src/findings/builder.js';
import { parseLaterality } from '../../src/intake/laterality.js';
import { leftoverOf, leftovers } from '../../src/intake/leftover.js';
import { unwrapped } from '../../src/intake/signs.js';
import type { Block } from './blocks.js';
import { mappedColumn } from './blocks.js';
import type { RowBooks } from './row-books.js';

/** A key is 2 × patient + side; these stand for rows that have none. */
const withoutKey = -1;

/** The patient of a row whose code a spreadsheet has broken: several patients may have become one. */
const brokenCode = -2;

export interface Keys {
  /** Patient codes in canonical order: by UTF-16 unit. */
  patients: readonly string[];
  /** For each block, the key of every row: 2 × patient + (0 right, 1 left); −1 none. */
  ofBlock: readonly Int32Array[];
}

/** What a side's word means, once a word: 0 right, 1 left, 2 both, 3 missing or unknown. */
function sidesOf(block: Block): (row: number) => number {
  const constant = block.plan.constants.eye;
  const column = mappedColumn(block, 'eye');
  const declared = column?.plan.words ?? {};
  const side = (word: string): number => {
    const eye = block.isMissing(word) ? undefined : parseLaterality(word, declared);
    return eye === undefined ? 3 : ['right', 'left', 'both'].indexOf(eye);
  };
  if (!column) {
    const fixed = side(String(constant ?? ''));
    return () => fixed;
  }
  const byWord = column.words.words.map(side);
  return (row) => byWord[column.words.codes[row] as number] as number;
}

/** Patients as first met; ranks follow when every file has been looked at. */
function patientIndex(): { indexOf(name: string): number; names(): string[] } {
  const known = new Map<string, number>();
  return {
    indexOf(name) {
      const index = known.get(name) ?? known.size;
      known.set(name, index);
      return index;
    },
    names: () => [...known.keys()],
  };
}

const sideFaults = ['', '', 'eye-both', 'eye-missing'] as const;

/** Keys of one block, patients numbered as first met. Rows without a key are told once a file. */
function blockKeys(
  block: Block,
  patients: ReturnType<typeof patientIndex>,
  books: RowBooks,
  told: Set<number>,
  findings: FindingsBuilder,
): Int32Array {
  const patientColumn = mappedColumn(block, 'patient');
  if (!patientColumn) throw new RangeError(`harmonise: ${block.raw.file} maps no patient`);
  const { words, codes } = patientColumn.words;
  const byWord = words.map((word) => {
    if (block.isMissing(word)) return withoutKey;
    return leftoverOf(word, 'word') === undefined ? patients.indexOf(unwrapped(word)) : brokenCode;
  });
  const sideOf = sidesOf(block);
  const eyeColumn = mappedColumn(block, 'eye');

  const fault = (
    row: number,
    reason: 'patient-missing' | 'eye-missing' | 'eye-both',
    rule: string = reason,
  ): number => {
    books.setAside(row, reason);
    const isPatient = reason === 'patient-missing';
    const column = isPatient ? patientColumn : eyeColumn;
    if (!told.has(row)) {
      const leftover = isPatient ? leftoverOf(column?.words.at(row) ?? '', 'word') : undefined;
      findings.add({
        rule,
        detail: leftover === undefined ? Number.NaN : leftovers.indexOf(leftover),
        severity: 'set aside',
        source: block.source,
        row: block.raw.rowNumber(row),
        column: column?.header,
        field: isPatient ? 'patient' : 'eye',
        written: column?.words.at(row),
        effect: 'row left out',
      });
    }
    told.add(row);
    return withoutKey;
  };
  return new Int32Array(block.raw.rows).map((_, row) => {
    if (!block.admitted[row]) {
      books.setAside(row, 'other-kind-of-row');
      return withoutKey;
    }
    const patient = byWord[codes[row] as number] as number;
    if (patient === withoutKey) return fault(row, 'patient-missing');
    if (patient === brokenCode) return fault(row, 'patient-missing', 'spreadsheet-leftover');
    const side = sideOf(row);
    const rule = sideFaults[side];
    return rule ? fault(row, rule) : 2 * patient + side;
  });
}

/** Patient and side of every row of every block. */
export function readKeys(blocks: readonly Block[], books: readonly RowBooks[], findings: FindingsBuilder): Keys {
  const patients = patientIndex();
  const told = new Map<number, Set<number>>();
  const found = blocks.map((block) => {
    const rows = told.get(block.source) ?? new Set<number>();
    told.set(block.source, rows);
    return blockKeys(block, patients, books[block.source] as RowBooks, rows, findings);
  });
  const names = patients.names();
  const sorted = [...names].sort();
  const rankOf = new Map(sorted.map((name, rank) => [name, rank]));
  const rank = names.map((name) => rankOf.get(name) as number);
  const canonical = (key: number): number => (key < 0 ? key : 2 * (rank[key >> 1] as number) + (key & 1));
  return { patients: sorted, ofBlock: found.map((keys) => keys.map(canonical)) };
}
