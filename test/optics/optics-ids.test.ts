import { describe, expect, it } from 'vitest';
import { referencePresent, referenceText } from '../shared-reference.js';
import { errorChecks, formulaChecks } from './reference.js';

/** Ids of sections 5 and 6 that no test computes, and why. */
const notOurs: Readonly<Record<string, string>> = {
  '5.tm10': 'trimmed means are not offered',
  '5.tm20': 'trimmed means are not offered',
  '5.tmabs20': 'trimmed means are not offered',
  '6.sens.cw.E5': 'concerns the coefficient 5.40948 of another print',
  '6.sens.cw.E8': 'concerns the coefficient 5.40948 of another print',
  '6.sens.lcor.E7': 'concerns the coefficient 1.715 of another print',
  '6.sens.lcor.E8': 'concerns the coefficient 1.715 of another print',
  '6.srk.jump.c1715': 'concerns the coefficient 1.715 of another print',
};

describe.skipIf(!referencePresent)('ids of sections 5 and 6 of the outside check values', () => {
  const ids = referencePresent
    ? referenceText('optics-checks.csv')
        .split('\n')
        .map((line) => line.split(',')[0] as string)
        .filter((id) => /^[56]\./.test(id))
    : [];
  const ours = new Set([...errorChecks.keys(), ...formulaChecks.keys()]);

  it('are all computed by a test, or named here with the reason', () => {
    expect(ids.length).toBeGreaterThan(580);
    expect(ids.filter((id) => !ours.has(id) && !(id in notOurs))).toEqual([]);
  });

  it('are not named here in vain', () => {
    expect(Object.keys(notOurs).filter((id) => ours.has(id) || !ids.includes(id))).toEqual([]);
  });

  it('have in the committed files the values that they have outside', () => {
    const outside = new Map(
      referenceText('optics-checks.csv')
        .split('\n')
        .map((line) => line.split(',') as [string, string]),
    );
    for (const [id, value] of [...errorChecks, ...formulaChecks]) expect(Number(outside.get(id)), id).toBe(value);
  });
});
