import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ClockView, clockPosition, clockText, parseClock } from '../../src/intake/clock.js';

it.each([
  ['10', 10],
  ['10:10', 10 + 10 / 60],
  ['1h30', 1.5],
  ['10.5', 10.5],
  ['10,5', 10.5],
  ["10 o'clock", 10],
  ['10 Uhr', 10],
  ['12', 0],
  ['12:30', 0.5],
])('reads %j', (text, hours) => {
  expect(parseClock(text)).toBeCloseTo(hours, 12);
});

it.each(['', '13', '10:60', '10.10', '10.25', 'x', '145°', '-1'])('refuses %j', (text) => {
  expect(parseClock(text)).toBeUndefined();
});

// Facing the patient 3 is 0, 12 is 90, 9 is 180; 145° is 10:10 facing and 4:10 from the superior seat: common practice,
// no source. The whole table of seats stands in optics-checks.csv, section 8.
describe('positions', () => {
  it.each([
    [3, 'facing', 'right', 0],
    [12, 'facing', 'right', 90],
    [9, 'facing', 'left', 180],
    [6, 'facing', 'left', 270],
    [10 + 10 / 60, 'facing', 'right', 145],
    [4 + 10 / 60, 'surgeon-superior', 'right', 145],
    [9, 'surgeon-temporal', 'right', 90],
    [3, 'surgeon-temporal', 'left', 90],
    [6, 'surgeon-temporal', 'right', 180],
    [6, 'surgeon-temporal', 'left', 0],
  ] as const)('%d o’clock, %s, %s eye, is %d°', (hours, view, eye, position) => {
    expect(clockPosition(hours, view, eye)).toBeCloseTo(position, 9);
  });

  it('goes from position to dial and back, from every seat', () => {
    const views: ClockView[] = ['facing', 'surgeon-superior', 'surgeon-temporal'];
    const eyes = fc.constantFrom('right' as const, 'left' as const);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 719 }), fc.constantFrom(...views), eyes, (halfDegrees, view, eye) => {
        const hours = parseClock(clockText(halfDegrees / 2, view, eye));
        expect(clockPosition(hours as number, view, eye)).toBeCloseTo(halfDegrees / 2, 9);
      }),
    );
  });

  it('does not let the eye matter but from the temporal seat', () => {
    expect(clockPosition(10, 'facing', 'left')).toBe(clockPosition(10, 'facing', 'right'));
    expect(clockPosition(10, 'surgeon-superior', 'left')).toBe(clockPosition(10, 'surgeon-superior', 'right'));
  });
});
