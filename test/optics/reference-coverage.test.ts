// The copies beside these tests are the outside files, whole where they concern astigmatism.
import { describe, expect, it } from 'vitest';
import { referencePresent, referenceText } from '../shared-reference.js';
import { formulaChecks, opticsChecks, toricChecks } from './reference.js';

/** Sections of optics-checks.csv by the test that computes every id of theirs. */
const sections: Readonly<Record<string, { where: string; copy: ReadonlyMap<string, number> } | { reason: string }>> = {
  1: { where: 'optics-checks.test.ts', copy: opticsChecks },
  2: { where: 'optics-checks.test.ts', copy: opticsChecks },
  3: { where: 'plane-checks.test.ts', copy: opticsChecks },
  4: { where: 'optics-checks.test.ts', copy: opticsChecks },
  5: { reason: 'errors and shares: test/statistics computes them' },
  6: { reason: 'formulas of lens power: formulas.test.ts computes those of formula-checks.csv' },
  7: { where: 'toric-checks.test.ts', copy: toricChecks },
  8: { where: 'optics-checks.test.ts', copy: opticsChecks },
  9: { reason: 'acuity: optics-checks.test.ts computes those of the copy' },
};

describe.skipIf(!referencePresent)('optics-checks.csv', () => {
  // Tests are gathered where they are skipped, too.
  const outside = (referencePresent ? referenceText('optics-checks.csv') : '')
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split(',') as [string, string])
    .map(([id, value]): readonly [string, number] => [id, value === 'NA' ? Number.NaN : Number(value)]);

  it('has no section that is not told of here', () => {
    expect([...new Set(outside.map(([id]) => id.split('.')[0]))]).toEqual(Object.keys(sections));
  });

  it.each(Object.entries(sections).filter(([, of]) => 'copy' in of))(
    'section %s stands in the copy, id for id and value for value',
    (section, of) => {
      if (!('copy' in of)) throw new Error('a section with a copy');
      const wanted = outside.filter(([id]) => id.startsWith(`${section}.`));
      const copied = [...of.copy].filter(([id]) => id.startsWith(`${section}.`));
      expect(new Map(copied)).toEqual(new Map(wanted));
    },
  );

  it('copies nothing that is not there', () => {
    const known = new Map(outside);
    const copied = [...opticsChecks, ...toricChecks, ...formulaChecks];
    expect(copied.filter(([id, value]) => !Object.is(known.get(id), value))).toEqual([]);
  });
});
