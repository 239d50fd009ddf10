import { categoriesOf, hasColumn, integersOf, numbersOf } from '../src/columns/table.js';
import type { Derived } from '../src/records/derived.js';
import { families } from '../src/records/measure.js';
import type { TraceText } from '../src/screens/trace.js';
import { examCells, surgeryCells } from '../src/trace/cells.js';
import { contributions } from '../src/trace/contributions.js';
import { familyStanding, familySteps } from '../src/trace/steps.js';
import type { Traced } from '../src/trace/traced.js';

/** The eye of a patient; undefined where the audit has no such eye. */
export function findEye({ tables }: Derived, patient: string, side: 'right' | 'left'): number | undefined {
  const code = tables.patients.indexOf(patient.trim());
  const patients = integersOf(tables.eyes, 'patient');
  const laterality = integersOf(tables.eyes, 'laterality');
  const wanted = side === 'right' ? 0 : 1;
  const eye = patients.findIndex((one, i) => one === code && laterality[i] === wanted);
  return eye < 0 ? undefined : eye;
}

/** One eye from its raw cells to every number it enters: the registry, walked, then the tables. */
export function traceEye(traced: Traced, patient: string, side: 'right' | 'left'): TraceText {
  const { derived, eye, plan, words } = traced;
  const visit = plan.follow_up.visits[(derived.assembly.outcomeVisit[eye] as number) - 1];
  const outcome = visit ? [examCells(traced, words.trace.outcome(visit.name), derived.assembly.outcome)] : [];
  return {
    title: [`${patient} ${side}`, ...operationWords(traced)].join(', '),
    blocks: [
      surgeryCells(traced),
      examCells(traced, words.trace.before, derived.assembly.before),
      ...outcome,
      ...families.map((family) => familySteps(family, traced)),
      familyStanding(traced),
      ...contributions(traced),
    ].filter(({ lines }) => lines.length > 0),
  };
}

function operationWords({ derived, eye, words }: Traced): readonly string[] {
  const { eyes } = derived.tables;
  const year = numbersOf(eyes, 'year')[eye] as number;
  const named = ['technique', 'lens_model'].flatMap((field) =>
    hasColumn(eyes, field) ? (categoriesOf(eyes, field).at(eye) ?? []) : [],
  );
  return [Number.isNaN(year) ? words.trace.operatedUndated : words.trace.operated(String(year)), ...named];
}
