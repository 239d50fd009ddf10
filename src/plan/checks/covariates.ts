import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { type DocumentNode, entriesOf, entryAt, valueAt } from '../document.js';
import { fault } from '../faults.js';
import { fieldNamed } from '../fields.js';
import type { SourceView } from '../survey.js';

/** Names that a table of eyes uses itself. */
const reserved = ['year', 'order', 'laterality', 'surgeryDay', 'source', 'block', 'row', 'cohort', 'all'];

/** Group keys of results are built from names, so that signs in them would be read as parts of the key. */
const nameForm = /^\p{L}[\p{L}\p{N} _-]*$/u;

function nameFaults(node: DocumentNode): readonly Fault[] {
  return entriesOf(valueAt(node, 'covariates')).flatMap(({ key, place }) => {
    if (fieldNamed(key) || reserved.includes(key)) return [fault(place, words.covariateIsField(key))];
    return nameForm.test(key) ? [] : [fault(place, words.covariateName(key))];
  });
}

/** Covariates are facts of an eye: rows of one day, or of one formula, cannot carry them. */
export function covariateFaults({ node, hasBlocks, blocks }: SourceView): readonly Fault[] {
  const holders = hasBlocks ? [...blocks.map((block) => block.node), node] : [node];
  const perEye = (holds: string | undefined): boolean => holds === undefined || holds === 'surgery' || holds === 'eye';
  const misplaced = blocks.flatMap((block) => (perEye(block.holds) ? [] : (entryAt(block.node, 'covariates') ?? [])));
  const shared = hasBlocks && !blocks.some(({ holds }) => perEye(holds)) ? entryAt(node, 'covariates') : undefined;
  const unfit = shared ? [...misplaced, shared] : misplaced;
  return [...holders.flatMap(nameFaults), ...unfit.map(({ place }) => fault(place, words.covariateRows()))];
}
