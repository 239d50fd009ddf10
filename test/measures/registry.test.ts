import { describe, expect, it } from 'vitest';
import { measureRegistry } from '../../src/measures/index.js';
import { errorBins, errorLimits } from '../../src/measures/profiles.js';
import { families, type Measure } from '../../src/records/measure.js';

const registry = measureRegistry(['second']);
const measure = (name: string): Measure => {
  const found = registry.find((one) => one.name === name);
  if (!found) throw new RangeError(`no measure ${name}`);
  return found;
};

describe('the registry', () => {
  it('names every measure once, with its formula and where its definition is from', () => {
    const names = registry.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, formula, source, family } of registry) {
      expect(formula.length, name).toBeGreaterThan(3);
      expect(source.length, name).toBeGreaterThan(3);
      expect(families, name).toContain(family);
    }
  });

  it('stands in the order of work: what a measure is made of comes before it', () => {
    const made = new Set<string>();
    const names = new Set(registry.map(({ name }) => name));
    for (const second of [false, true]) {
      for (const { name, inputs } of registry.filter((one) => (one.second ?? false) === second)) {
        const missing = inputs.filter((input) => names.has(input) && !made.has(input) && input !== name);
        expect(missing, name).toEqual([]);
        made.add(name);
      }
    }
  });

  it('has both components of every vector', () => {
    const names = new Set(registry.flatMap(({ vector }) => (vector ? [vector.name] : [])));
    expect(names).toContain('refractive_cylinder_after');
    expect(names.size).toBeGreaterThan(10);
    for (const name of names) {
      const parts = registry
        .filter(({ vector }) => vector?.name === name)
        .map((one) => `${one.name} ${one.vector?.component}`);
      expect(parts).toEqual([`${name}_x x`, `${name}_y y`]);
    }
  });

  it('has a prediction error for every further formula', () => {
    expect(measure('prediction_error:second').inputs).toEqual(['spherical_equivalent_compared', 'predicted_se:second']);
    expect(measureRegistry([]).some(({ name }) => name.startsWith('prediction_error:'))).toBe(false);
  });

  it('is missing wherever an input is', () => {
    for (const { name, inputs, of } of registry) {
      if (name === 'right_eye') continue;
      expect(of(...inputs.map(() => Number.NaN)), name).toBeNaN();
    }
  });
});

describe('one eye', () => {
  // +0.25 −0.75 × 165 is −0.50 +0.75 × 75 in plus notation: SE −0.125. Predicted −0.40, intended 0.00.
  it('has signed errors: achieved less predicted, achieved less intended', () => {
    expect(measure('spherical_equivalent').of(-0.5, 0.75)).toBe(-0.125);
    expect(measure('prediction_error').of(-0.125, -0.4)).toBeCloseTo(0.275, 12);
    expect(measure('target_error').of(-0.125, 0)).toBe(-0.125);
  });

  // ../shared/spec/optics.md section 1: −8.00 −2.50 × 30 at 12 mm is −7.2993 −2.0258 × 30 at the cornea. In plus
  // notation −10.50 +2.50 × 120: the cylinder at the cornea is the same 2.0258, at 120.
  it('has its cylinder moved to the cornea meridian by meridian', () => {
    const sphere = measure('corneal_plane_sphere_after').of(-10.5, 12);
    const cylinder = measure('corneal_plane_cylinder_after').of(-10.5, 2.5, 12, sphere);
    // Two rounded numbers are added up: the fourth decimal may be off by one.
    expect(sphere).toBeCloseTo(-7.2993 - 2.0258, 3);
    expect(cylinder).toBeCloseTo(2.0258, 4);
    expect(measure('refractive_cylinder_after_x').of(cylinder, 120)).toBeCloseTo(
      2.0258 * Math.cos((240 * Math.PI) / 180),
      4,
    );
    expect(measure('refractive_cylinder_after_y').of(cylinder, 120)).toBeCloseTo(
      2.0258 * Math.sin((240 * Math.PI) / 180),
      4,
    );
  });

  // ../shared/spec/optics.md section 2: 44.50 @ 92 with 43.25 @ 2 is the vector (−1.246955, −0.087196).
  it('has the vector of its cornea at the steep meridian', () => {
    const magnitude = measure('corneal_cylinder_magnitude_before').of(43.25, 44.5);
    expect(magnitude).toBe(1.25);
    expect(measure('k_mean_before').of(43.25, 44.5)).toBe(43.875);
    expect(measure('corneal_cylinder_before_x').of(magnitude, 92)).toBeCloseTo(-1.246955, 6);
    expect(measure('corneal_cylinder_before_y').of(magnitude, 92)).toBeCloseTo(-0.087196, 6);
  });

  it('without cylinder and axis is the zero vector, with a cylinder alone has none', () => {
    const { of } = measure('refractive_cylinder_after_x');
    expect([of(0, Number.NaN), of(0.009, Number.NaN), of(0.25, Number.NaN)]).toEqual([0, 0, Number.NaN]);
  });

  it('has properties that are yes, no or not known', () => {
    const toric = measure('toric').of;
    expect([toric(1.5), toric(0), toric(Number.NaN)]).toEqual([1, 0, Number.NaN]);
    expect([measure('right_eye').of(0), measure('right_eye').of(1)]).toEqual([1, 0]);
    // F is the first of the field's values.
    expect([measure('female').of(1), measure('female').of(2), measure('female').of(Number.NaN)]).toEqual([
      1,
      0,
      Number.NaN,
    ]);
  });
});

describe('profiles', () => {
  // ../shared/spec/7-model.md §11 and 6-settled.md: bins of 0.25 D centred on 0; shares at these limits.
  it('are the limits of the shares and the edges of the histogram', () => {
    expect(errorLimits).toEqual([0.25, 0.5, 0.75, 1, 1.5, 2]);
    expect([errorBins[0], errorBins[8], errorBins[9], errorBins.at(-1), errorBins.length]).toEqual([
      -2.125, -0.125, 0.125, 2.125, 18,
    ]);
  });
});
