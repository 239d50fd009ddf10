import { expect, it } from 'vitest';
import { cornealType, incisionSector } from '../../src/groups/astigmatism.js';

// ../shared/spec/6-settled.md: WTR 60–120 inclusive, ATR 0 to < 30 and > 150 to 180, the rest oblique; < 0.50 D low.
it.each([
  [1, 60, 'with the rule'],
  [1, 120, 'with the rule'],
  [1, 59.9, 'oblique'],
  [1, 30, 'oblique'],
  [1, 150, 'oblique'],
  [1, 29.9, 'against the rule'],
  [1, 150.1, 'against the rule'],
  [1, 180, 'against the rule'],
  [0.5, 90, 'with the rule'],
  [0.49, 90, 'low'],
  [0, Number.NaN, 'low'],
  [Number.NaN, 90, undefined],
  [1, Number.NaN, undefined],
] as const)('a cornea of %s D steep at %s is %s', (cylinder, meridian, type) => {
  expect(cornealType(cylinder, meridian)).toBe(type);
});

it('an incision belongs to the sector of its meridian: opposite positions share one', () => {
  expect([0, 22.4, 180, 337.5, 359].map(incisionSector)).toEqual(['180', '180', '180', '180', '180']);
  expect([22.5, 45, 225].map(incisionSector)).toEqual(['45', '45', '45']);
  expect([90, 270, 145, 325].map(incisionSector)).toEqual(['90', '90', '135', '135']);
  expect(incisionSector(Number.NaN)).toBeUndefined();
});
