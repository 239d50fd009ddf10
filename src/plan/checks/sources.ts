import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { described } from '../described.js';
import { entriesOf, entryAt, type MapEntry, valueAt } from '../document.js';
import { fault, isAbsent } from '../faults.js';
import type { BlockView, SourceView, Survey } from '../survey.js';
import { columnFaults } from './columns.js';
import { constantFaults } from './constants.js';
import { covariateFaults } from './covariates.js';

const sourceKeys = () => described(['sources', 0]).known;

/** Keys that mean something for one kind of row only. */
const onlyOn: readonly (readonly [key: string, holds: string])[] = [
  ['visit', 'exam'],
  ['formula', 'prediction'],
];

function rowKindFaults({ node, hasBlocks }: SourceView): readonly Fault[] {
  if (hasBlocks) {
    const beside = entriesOf(node).filter(({ key }) => ['holds', 'visit', 'formula'].includes(key));
    return beside.map(({ key, place }) => fault(place, words.besideBlocks(key)));
  }
  const missing = isAbsent(node, 'holds', sourceKeys()) && isAbsent(node, 'blocks', sourceKeys());
  return missing ? [fault(node.place, words.holdsOrBlocks())] : [];
}

function noColumns({ node, hasBlocks }: SourceView): readonly Fault[] {
  const missing = !hasBlocks && isAbsent(node, 'columns', sourceKeys());
  return missing ? [fault(node.place, words.columnsMissing())] : [];
}

function misplacedKeys({ node, holds }: BlockView): readonly Fault[] {
  const misplaced = (entry: MapEntry) => onlyOn.find(([key, rows]) => key === entry.key && holds && rows !== holds);
  return entriesOf(node).flatMap((entry) => {
    const found = misplaced(entry);
    return found ? [fault(entry.place, words.onlyOn(...found))] : [];
  });
}

/** Whether columns are written at all; where they are not, that alone is told. */
const hasColumns = ({ node }: BlockView, source: SourceView): boolean =>
  entryAt(node, 'columns') !== undefined || (source.hasBlocks && valueAt(source.node, 'columns') !== undefined);

function sourceFaults(source: SourceView): readonly Fault[] {
  return [
    ...rowKindFaults(source),
    ...noColumns(source),
    ...covariateFaults(source),
    ...source.blocks.flatMap(misplacedKeys),
    ...columnFaults(
      source,
      source.blocks.filter((block) => hasColumns(block, source)),
    ),
    ...constantFaults(source),
  ];
}

/** What the keys of one source have to do with one another and with its rows. */
export function checkSources({ sources }: Survey): readonly Fault[] {
  return sources.filter(({ node }) => node.kind === 'map').flatMap(sourceFaults);
}
