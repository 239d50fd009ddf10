import type { Dioptre, Millimetre } from '../../units.js';

/** What is measured of an eye before surgery. */
export interface Biometry {
  /** Axial length as measured, millimetres. */
  axialLength: Millimetre;
  /** Keratometry of the two meridians at index 1.3375, dioptres, in either order. */
  k1: Dioptre;
  k2: Dioptre;
  /** Front of the cornea to the front of the crystalline lens, millimetres; NaN where it was not measured. */
  chamberDepth: Millimetre;
}

/** What a formula makes of an eye before any lens constant: the lens lies at `base` + the constant's share. */
export interface FormulaEye {
  cornea: Dioptre;
  length: Millimetre;
  /** The eye's own part of the effective lens position, millimetres. */
  base: Millimetre;
}

/** A published formula: where it puts the lens, and through which cornea and length it looks. */
export interface Formula {
  name: FormulaName;
  /** What its lens constant is called. */
  constant: 'A' | 'SF' | 'pACD' | 'a0';
  /** Constants that a lens can have: the search for one stays inside. */
  bracket: readonly [low: number, high: number];
  /** Needs the anterior chamber depth. */
  needsChamberDepth: boolean;
  eye(biometry: Biometry): FormulaEye;
  /** The constant's share of the lens position, millimetres. */
  shift(constant: number): Millimetre;
  /** Change of the lens position for a change of 1 in the constant, millimetres. */
  perConstant: number;
}

export const formulaNames = ['SRK/T', 'Holladay 1', 'Hoffer Q', 'Haigis'] as const;
export type FormulaName = (typeof formulaNames)[number];

/** Arithmetic mean of the two powers, as three of the four formulas want it. */
export function meanPower({ k1, k2 }: Biometry): Dioptre {
  return (k1 + k2) / 2;
}
