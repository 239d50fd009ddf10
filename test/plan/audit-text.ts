import { readFileSync } from 'node:fs';
import { plan } from '../../pipeline/plan.js';
import type { Fault, Plan } from '../../src/records/plan.js';

/** A fixture beside the tests. */
export function fixture(name: string): string {
  return readFileSync(new URL(name, import.meta.url), 'utf8');
}

/** Lines 1 to 9 of every small audit here: one operation a row, nothing else. */
export const operations = `format: 1
title: My audit 2025
sources:
  - file: a.csv
    holds: surgery
    columns:
      patient: ID
      eye: Side
      surgery_date: Date
`;

/** A second source, lines 10 to 15. */
export const examinations = `  - file: b.csv
    holds: exam
    columns:
      patient: ID
      eye: Side
      exam_date: Date
`;

/** The plan of a text that has no faults. @throws where it has */
export function planOf(text: string): Plan {
  const made = plan(text);
  if ('faults' in made) throw new Error(made.faults.map(oneLine).join('\n'));
  return made.plan;
}

/** The faults of a text; none where it makes a plan. */
export function faultsOf(text: string): readonly Fault[] {
  const made = plan(text);
  return 'faults' in made ? made.faults : [];
}

const oneLine = ({ line, column, message }: Fault): string => `${line}:${column} ${message}`;

/** Faults as `line:column message`. */
export function toldOf(text: string): readonly string[] {
  return faultsOf(text).map(oneLine);
}

/** Advice of the only fault of a text. @throws where there is none, or another */
export function adviceOf(text: string): readonly string[] {
  const [only, ...others] = faultsOf(text);
  if (!only || others.length > 0) throw new Error(`expected one fault, found ${toldOf(text).join('\n')}`);
  return only.advice;
}
