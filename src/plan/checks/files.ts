import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { type DocumentNode, itemsOf, type TextNode, textAt, textsOf, valueAt } from '../document.js';
import { fault } from '../faults.js';
import { nearest } from '../nearest.js';
import type { Survey } from '../survey.js';

/**
 * Whether a path leaves the folder that it is written in.
 *
 * @example leavesFolder('exports/../../a.csv') // true
 */
function leavesFolder(path: string): boolean {
  if (path.startsWith('/') || /^[a-z]:/i.test(path)) return true;
  let depth = 0;
  for (const part of path.split('/')) {
    if (part === '..') depth--;
    else if (part !== '' && part !== '.') depth++;
    if (depth < 0) return true;
  }
  return false;
}

const sourceFiles = ({ sources }: Survey): readonly TextNode[] =>
  sources.flatMap(({ node }) => textsOf(valueAt(node, 'file')));

/** Every path that audit.yaml names. */
function paths(about: Survey): readonly TextNode[] {
  const { root } = about;
  const under = (...keys: string[]): readonly TextNode[] => textsOf(valueAt(root, ...keys));
  return [
    ...sourceFiles(about),
    ...under('quality', 'answers'),
    ...under('benchmarks', 'former_report'),
    ...under('outputs', 'folder'),
  ];
}

function pathFault({ text, place }: TextNode, mayLeave: boolean): readonly Fault[] {
  if (text.includes('\\')) return [fault(place, words.backslash(text.replaceAll('\\', '/')))];
  return leavesFolder(text) && !mayLeave ? [fault(place, words.outside(text))] : [];
}

/** Files named elsewhere must be those of the sources; what a path with * stands for is not known here. */
function unknownFiles(named: readonly TextNode[], about: Survey): readonly Fault[] {
  const files = sourceFiles(about).map(({ text }) => text);
  if (files.some((file) => file.includes('*'))) return [];
  const unknown = named.filter(({ text }) => !files.includes(text));
  return unknown.map(({ text, place }) => fault(place, words.unknownFile(text, nearest(text, files), files)));
}

/** Whether paths are written with / and stay in the folder, and files named twice are the same. */
export function checkFiles(about: Survey): readonly Fault[] {
  const { root } = about;
  const mayLeave = ['yes', 'true'].includes(textAt(root, 'allow_outside') ?? 'no');
  const reviewed = itemsOf(valueAt(root, 'identifiers_reviewed')).map((one): DocumentNode | undefined =>
    valueAt(one, 'file'),
  );
  const named = [...textsOf(valueAt(root, 'prefer')), ...reviewed.flatMap(textsOf)];
  return [...paths(about).flatMap((path) => pathFault(path, mayLeave)), ...unknownFiles(named, about)];
}
