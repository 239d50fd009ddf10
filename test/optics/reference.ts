import { readFileSync } from 'node:fs';

function text(name: string): string {
  return readFileSync(new URL(name, import.meta.url), 'utf8');
}

/** Rows of a file of check values; its first lines tell where they come from. NaN: does not exist. */
function checksOf(name: string): ReadonlyMap<string, number> {
  return new Map(
    text(name)
      .split('\n')
      .filter((line) => /^\d/.test(line))
      .map((line) => line.split(',') as [string, string])
      .map(([id, value]) => [id, value === 'NA' ? Number.NaN : Number(value)]),
  );
}

export const opticsChecks = checksOf('optics-checks.csv');
export const formulaChecks = checksOf('formula-checks.csv');
export const errorChecks = checksOf('error-checks.csv');
export const toricChecks = checksOf('toric-checks.csv');

type Written = { S: number; C: number; A: number | null };
type Vector = { power: number; axis: number | null; x: number; y: number };

/** Worked examples computed in R 4.2.2 by power matrix and by complex numbers; `about` in the file says how. */
export const examples = JSON.parse(text('vector-examples.json')) as {
  representation: {
    sphere: number;
    cyl: number;
    axis: number;
    M: number;
    J0: number;
    J45: number;
    matrix: { f11: number; f12: number; f22: number };
    minus_cyl: Written;
    plus_cyl: Written;
  }[];
  obliquely_crossed: {
    a: [number, number, number];
    b: [number, number, number];
    minus_cyl: Written;
    plus_cyl: Written;
    M: number;
    J0: number;
    J45: number;
  }[];
  vertex_spectacle_to_cornea: {
    sphere: number;
    cyl: number;
    axis: number;
    vertex_mm: number;
    sphere_c: number;
    cyl_c: number;
    M_c: number;
    J0_c: number;
    J45_c: number;
    back_to_spectacle_sphere: number;
  }[];
  keratometry_radius: Record<string, number>[];
  sia_keratometry: {
    pre: Readings;
    post: Readings;
    pre_astig: Astigmatism;
    post_astig: Astigmatism;
    sia: Astigmatism;
    incision_meridian: number;
    polar_value_at_incision: number;
    polar_value_at_incision_plus45: number;
    polar_90: number;
    polar_135: number;
    comment: string;
  }[];
  correction_vectors: {
    pre: [number, number];
    post: [number, number];
    target: [number, number];
    intended_TIA: Vector;
    induced_SIA: Vector;
    difference_DV: Vector;
    magnitude_error: number;
    angle_error_deg: number | null;
    correction_index: number;
    index_of_success: number;
    flattening_effect: number;
    flattening_index: number;
    torque: number;
  }[];
  toric_rotation: {
    rotation_deg: number;
    residual_cyl_per_dioptre: number;
    sphere_plus_cyl_form: number;
    plus_cyl_axis: number;
  }[];
  visual_acuity: {
    numerator: number;
    denominator: number;
    decimal: number;
    logmar: number;
    etdrs_letters_85_minus_50: number;
  }[];
  visual_acuity_mean: { decimals: number[]; mean_logmar: number; geometric_mean_decimal: number };
  series: { power: number[]; steep_or_plus_axis: number[] };
  prediction_error: { pe: number[] };
};

export interface Readings {
  k1: number;
  a1: number;
  k2: number;
  a2: number;
}

interface Astigmatism {
  magnitude: number;
  steep_meridian: number | null;
  x: number;
  y: number;
}

/** Files write null for an axis that does not exist; the project's functions return NaN. */
export function orNaN(axis: number | null): number {
  return axis ?? Number.NaN;
}

/** Difference of two axes as the shorter way round, so that 180 and 1e-12 agree. */
export function axisGap(found: number, expected: number): number {
  if (Number.isNaN(found) && Number.isNaN(expected)) return 0;
  const gap = Math.abs(found - expected) % 180;
  return Math.min(gap, 180 - gap);
}
