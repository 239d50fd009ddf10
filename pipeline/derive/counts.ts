import { fitNumbersOf, integersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { vectorAbsence } from '../../src/eligibility/standing.js';
import { type CanonicalTables, type Kind, kinds } from '../../src/records/canonical.js';
import type { Derived, Membership } from '../../src/records/derived.js';
import type { Assembly } from '../../src/visits/assemble.js';
import { firstRepositions } from './lens-axes.js';

/** What footnotes have to say about how the eyes' values were come by. */
export function countsOf(
  tables: CanonicalTables,
  assembly: Assembly,
  membership: Membership,
  target: Float64Array,
): Derived['counts'] {
  const analysed = analysedIn(membership.refraction);
  const vertex = fitNumbersOf(tables.measurements.refractions, 'vertex');
  const refraction = assembly.outcome.refractions;
  const count = (holds: (eye: number) => boolean): number =>
    analysed.reduce((n, is, eye) => (is && holds(eye) ? n + 1 : n), 0);
  return {
    vertexAssumed: count((eye) => Number.isNaN(vertex[refraction[eye] as number] as number)),
    withoutTarget: target.reduce((n, value) => (Number.isNaN(value) ? n + 1 : n), 0),
    repositioned: repositionedEyes(tables, membership),
    axisMissing: refractionsWithoutAxis(tables, assembly, membership),
    otherDay: count((eye) => isFromOtherDay(tables, assembly, eye)),
  };
}

/** Eyes that only the lack of a usable axis keeps out of the analysis of vectors. */
function refractionsWithoutAxis(tables: CanonicalTables, assembly: Assembly, { astigmatism }: Membership): number {
  const { steps, code } = astigmatism;
  const lost = vectorAbsence(tables, assembly);
  return code.reduce((n, step, eye) => (steps[step] === lost(eye) ? n + 1 : n), 0);
}

/** Toric eyes analysed whose lens was turned again after the day of surgery. */
function repositionedEyes(tables: CanonicalTables, membership: Membership): number {
  const turned = firstRepositions(tables);
  return analysedIn(membership.toric).reduce(
    (n, is, eye) => (is && (turned[eye] as number) < 2 ** 31 - 1 ? n + 1 : n),
    0,
  );
}

/** Whether any other value of the outcome was measured on another day than its refraction. */
function isFromOtherDay(tables: CanonicalTables, assembly: Assembly, eye: number): boolean {
  const dayOf = (kind: Kind): number | undefined => {
    const row = assembly.outcome[kind][eye] as number;
    return row < 0 ? undefined : integersOf(tables.measurements[kind], 'day')[row];
  };
  const day = dayOf('refractions');
  return (Object.keys(kinds) as Kind[]).some((kind) => {
    const other = dayOf(kind);
    return other !== undefined && other !== day;
  });
}
