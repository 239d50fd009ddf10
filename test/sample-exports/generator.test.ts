import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { correctionFor, makeEyes } from '../../sample-exports/generator/eyes.js';
import {
  along,
  excess,
  fromPrincipal,
  matrix,
  meanPower,
  movedForward,
  principal,
  turned,
} from '../../sample-exports/generator/power-matrix.js';
import { stream, xorshift128 } from '../../sample-exports/generator/random.js';
import { sampleFiles } from '../../sample-exports/generator/sample.js';
import { committed } from './committed.js';

describe('the generator', () => {
  it('writes the committed files again, byte for byte', () => {
    const files = sampleFiles(committed('README.md').toString('utf8'));
    expect([...files.keys()].sort()).toEqual([
      'README.md',
      'biometry.csv',
      'endothelium.csv',
      'keratometer.csv',
      'lane-north.csv',
      'lane-south.csv',
      'planted.json',
      'theatre-list.csv',
      'wide.csv',
    ]);
    for (const [name, content] of files) {
      expect(Buffer.from(content).equals(committed(name)), `${name} differs: run npm run sample:make`).toBe(true);
      expect(content.length, name).toBeLessThan(200_000);
    }
  });

  it('imports nothing but its own files and Node', () => {
    const folder = new URL('../../sample-exports/generator/', import.meta.url);
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
    expect(files.length).toBeGreaterThan(20);
    for (const file of files) {
      const text = readFileSync(new URL(file, folder), 'utf8');
      for (const [, from = ''] of text.matchAll(/(?:from|import) '([^']+)'/g)) {
        const inside = from.startsWith('node:') || new URL(from, new URL(file, folder)).href.startsWith(folder.href);
        expect(inside, `${file} imports ${from}`).toBe(true);
      }
    }
  });

  it('makes other eyes from another seed, and the same from the same', () => {
    expect(makeEyes(7)).toEqual(makeEyes(7));
    expect(makeEyes(8)).not.toEqual(makeEyes(7));
  });
});

describe('random numbers', () => {
  // The sequence that xor128 of Marsaglia 2003 gives from the start printed in the paper; from memory.
  it('are those of xorshift128', () => {
    const next = xorshift128();
    expect(Array.from({ length: 5 }, next)).toEqual([3701687786, 458299110, 2500872618, 3633119408, 516391518]);
  });

  // Bounds of about 4.5 standard errors of each moment at this n: 1/√n, √(2/n), √(15/n), √(96/n).
  it('make normal deviates with the moments 0, 1, 0 and 3', () => {
    const n = 40_000;
    const random = stream(1, 'moments');
    const values = Array.from({ length: n }, () => random.normal());
    const moment = (power: number) => values.reduce((sum, value) => sum + value ** power, 0) / n;
    expect(Math.abs(moment(1))).toBeLessThan(4.5 / Math.sqrt(n));
    expect(Math.abs(moment(2) - 1)).toBeLessThan(4.5 * Math.sqrt(2 / n));
    expect(Math.abs(moment(3))).toBeLessThan(4.5 * Math.sqrt(15 / n));
    expect(Math.abs(moment(4) - 3)).toBeLessThan(4.5 * Math.sqrt(96 / n));
  });

  it('of two streams have nothing in common', () => {
    const n = 20_000;
    const [a, b] = [stream(1, 'eyes of P1001'), stream(1, 'eyes of P1004')];
    const products = Array.from({ length: n }, () => a.normal() * b.normal());
    expect(Math.abs(products.reduce((sum, value) => sum + value, 0) / n)).toBeLessThan(4.5 / Math.sqrt(n));
  });
});

describe('power matrices', () => {
  // ../shared/spec/optics.md section 1: −8.00 −2.50 × 30 worn at 12 mm is −7.2993 −2.0258 × 30 at the cornea
  // (computed there in R, and in Python by another method).
  it('move a refraction to the cornea and back', () => {
    const atCornea = movedForward(fromPrincipal(-8, -10.5, 120), -12);
    const { least, greatest, meridianOfGreatest } = principal(atCornea);
    expect(greatest).toBeCloseTo(-7.2993, 4);
    expect(least - greatest).toBeCloseTo(-2.0258, 4);
    expect(meridianOfGreatest).toBeCloseTo(30, 9);
    const back = principal(movedForward(atCornea, 12));
    expect(back.greatest).toBeCloseTo(-8, 12);
    expect(back.least).toBeCloseTo(-10.5, 12);
  });

  // ../shared/spec/optics.md section 2: 44.50 @ 92 with 43.25 @ 2, vector (−1.246955, −0.087196), F(30), F(47), F(92).
  it('give the power of a cornea along any meridian', () => {
    const cornea = fromPrincipal(43.25, 44.5, 92);
    expect([30, 47, 92].map((meridian) => along(cornea, meridian))).toEqual(
      [43.5255, 43.875, 44.5].map((power) => expect.closeTo(power, 4)),
    );
    expect(excess(cornea, 0)).toBeCloseTo(-1.246955, 6);
    expect(excess(cornea, 45)).toBeCloseTo(-0.087196, 6);
  });

  // ../shared/spec/optics.md section 2: 44.00 sphere becoming 43.70 @ 145 / 44.20 @ 55 is flattened by exactly 0.5 at 145.
  it('turn a flattening into the frame of its incision', () => {
    const change = turned(matrix(0, -0.5, 0), 145);
    expect(excess(change, 145)).toBeCloseTo(-0.5, 12);
    expect(principal(change).meridianOfGreatest).toBeCloseTo(55, 9);
  });

  it('are found from the spherical equivalent that the spectacles must have', () => {
    const correction = correctionFor(matrix(0, 1.4, -0.6), -7.13);
    expect(meanPower(movedForward(correction, 12))).toBeCloseTo(-7.13, 11);
    expect(excess(correction, 0)).toBeCloseTo(-1.4, 12);
    expect(excess(correction, 45)).toBeCloseTo(0.6, 12);
  });
});
