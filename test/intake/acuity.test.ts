import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logMAROfFraction } from '../../src/acuity/log-mar.js';
import { defaultLowVision } from '../../src/acuity/low-vision.js';
import { type AcuityForm, parseAcuity } from '../../src/intake/acuity.js';

const unsaid: AcuityForm = { decimal: 'point', lowVision: defaultLowVision };
const decimal: AcuityForm = { ...unsaid, numbers: 'decimal' };

// logMAR by definition, log10 of denominator over numerator; the fractions of the conversion chart are in log-mar.test.
describe('fractions explain themselves', () => {
  it.each([
    ['6/9', 0.1761],
    ['20/40', 0.301],
    ['6/7.5', 0.0969],
    ['6 / 6', 0],
    ['3/60', 1.301],
    ['20/12.5', -0.2041],
    ['6/9.5', 0.1996],
    ['4/4', 0],
  ])('reads %j', (text, logMAR) => {
    const read = parseAcuity(text, unsaid);
    expect(read).toHaveProperty('logMAR');
    expect((read as { logMAR: number }).logMAR).toBeCloseTo(logMAR, 4);
  });

  it('does not move 6/9.5 to the line', () => {
    expect(parseAcuity('6/9.5', unsaid)).toEqual({ logMAR: logMAROfFraction(6, 9.5) });
    expect(logMAROfFraction(6, 9.5)).not.toBe(0.2);
  });

  it('reads a decimal comma in a file of decimal commas', () => {
    expect(parseAcuity('6/7,5', { ...unsaid, decimal: 'comma' })).toEqual({ logMAR: logMAROfFraction(6, 7.5) });
  });
});

describe('letters behind a line', () => {
  const counted: AcuityForm = { ...unsaid, lettersPerLine: 5 };
  const line = logMAROfFraction(6, 9);

  it('are kept as text, and the line used, unless five letters a line are declared', () => {
    expect(parseAcuity('6/9-2', unsaid)).toEqual({ logMAR: line, suffix: '-2' });
    expect(parseAcuity('6/9 -2', unsaid)).toEqual({ logMAR: line, suffix: '-2' });
  });

  it('count 0.02 each: worse for letters missed, better for letters of the next line', () => {
    expect(parseAcuity('6/9−2', counted)).toEqual({ logMAR: line + 0.04, suffix: '-2' });
    expect(parseAcuity('6/9(+1)', counted)).toEqual({ logMAR: line - 0.02, suffix: '+1' });
  });

  it.each(['p', 'part', '-', '+', 'pp'])('count nothing where %j gives no number', (suffix) => {
    expect(parseAcuity(`6/9${suffix}`, counted)).toEqual({ logMAR: line, suffix });
  });

  it('stand behind decimals too', () => {
    expect(parseAcuity('0.8p', decimal)).toMatchObject({ suffix: 'p' });
    expect(parseAcuity('1.0-2', { ...decimal, lettersPerLine: 5 })).toMatchObject({ logMAR: 0.04, suffix: '-2' });
  });
});

describe('bare numbers', () => {
  it('need their scale', () => {
    for (const text of ['0.8', '85', '1', '-0.1', '0.8p'])
      expect(parseAcuity(text, unsaid)).toEqual({ reason: 'scale-needed' });
  });

  it('are read by it', () => {
    expect(parseAcuity('0.5', decimal)).toEqual({ logMAR: logMAROfFraction(20, 40) });
    expect(parseAcuity('0,8', { ...decimal, decimal: 'comma' })).toEqual({ logMAR: logMAROfFraction(20, 25) });
    expect(parseAcuity('-0.10', { ...unsaid, numbers: 'logmar' })).toEqual({ logMAR: -0.1 });
    expect(parseAcuity('70', { ...unsaid, numbers: 'letters' })).toEqual({ logMAR: 0.3 });
  });

  it('may say it themselves', () => {
    expect(parseAcuity('70 letters', decimal)).toEqual({ logMAR: 0.3 });
    expect(parseAcuity('0.3 logMAR', decimal)).toEqual({ logMAR: 0.3 });
  });

  it('are refused where the scale cannot hold them', () => {
    expect(parseAcuity('0', decimal)).toEqual({ reason: 'zero' });
    expect(parseAcuity('-0.1', decimal)).toEqual({ reason: 'not-an-acuity' });
    expect(parseAcuity('70.5', { ...unsaid, numbers: 'letters' })).toEqual({ reason: 'not-an-acuity' });
    expect(parseAcuity('0.3-2', { ...unsaid, numbers: 'logmar' })).toEqual({ reason: 'not-an-acuity' });
  });
});

it('reads low vision by the table of the audit, and names the category', () => {
  expect(parseAcuity('CF 1m', unsaid)).toEqual({ logMAR: 1.9, lowVision: 'count_fingers' });
  const own = { ...unsaid, lowVision: { ...defaultLowVision, hand_movements: 3 } };
  expect(parseAcuity('HM', own)).toEqual({ logMAR: 3, lowVision: 'hand_movements' });
});

// Spreadsheets open 6/9 as a date and export it as one of these.
it.each(['06-Sep', '9-Jun', '6. Sep', 'Sep-06', '6-9', '06/09/2025', '2025-09-06'])(
  'recognises %j as a fraction made a date',
  (text) => {
    expect(parseAcuity(text, unsaid)).toEqual({ reason: 'date-like' });
  },
);

it.each(['normal', '40/20', '6/', '/9', '6//9', '120/80', 'abc12'])('refuses %j', (text) => {
  expect(parseAcuity(text, decimal)).toEqual({ reason: 'not-an-acuity' });
});

it('refuses a fraction of zero', () => {
  expect(parseAcuity('0/60', unsaid)).toEqual({ reason: 'zero' });
  expect(parseAcuity('6/0', unsaid)).toEqual({ reason: 'zero' });
});

it('reads a fraction as the same acuity in feet and metres', () => {
  fc.assert(
    fc.property(fc.integer({ min: 10, max: 400 }), (feet) => {
      const inFeet = parseAcuity(`20/${feet}`, unsaid) as { logMAR: number };
      const inMetres = parseAcuity(`6/${(feet * 3) / 10}`, unsaid) as { logMAR: number };
      expect(inMetres.logMAR).toBeCloseTo(inFeet.logMAR, 12);
    }),
  );
});
