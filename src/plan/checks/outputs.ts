import { panelWidthOf } from '../../charts/panels.js';
import { artworks, leastWidth, points } from '../../charts/theme.js';
import { fixed } from '../../format/number.js';
import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { type DocumentNode, entriesOf, entryAt, itemsOf, type Place, textAt, textsOf, valueAt } from '../document.js';
import { fault } from '../faults.js';
import { writtenNumber } from '../leaves.js';
import { nearest } from '../nearest.js';
import { artworkNames, publishedNames } from '../published.js';
import type { Survey } from '../survey.js';

/** Whether figures are drawn for a profile that is there, and each stands in one place. */
export function checkOutputs({ root }: Survey): readonly Fault[] {
  const outputs = valueAt(root, 'outputs');
  const panels = itemsOf(valueAt(outputs, 'panels'));
  const known = [...artworkNames, ...entriesOf(valueAt(outputs, 'profiles')).map(({ key }) => key)];
  return [
    ...[outputs, ...panels].flatMap((node) => artworkFaults(node, known)),
    ...panelFaults(panels),
    ...roomFaults(outputs, panels),
  ];
}

function artworkFaults(node: DocumentNode | undefined, known: readonly string[]): readonly Fault[] {
  const name = textAt(node, 'artwork');
  const entry = entryAt(node, 'artwork');
  if (!entry || name === undefined || known.includes(name)) return [];
  return [fault(entry.value.place, words.unknownArtwork(name, nearest(name, known), known))];
}

function panelFaults(panels: readonly DocumentNode[]): readonly Fault[] {
  const met = new Set<string>(publishedNames);
  const named = panels.flatMap((panel) => {
    const name = textAt(panel, 'name');
    const place = entryAt(panel, 'name')?.value.place ?? panel.place;
    const taken = name !== undefined && met.has(name);
    if (name !== undefined) met.add(name);
    return taken ? [fault(place, words.panelNameTaken(name))] : [];
  });
  const placed = new Set<string>();
  const twice = panels
    .flatMap((panel) => textsOf(valueAt(panel, 'figures')))
    .flatMap(({ text, place }) => {
      const before = placed.has(text);
      placed.add(text);
      return before ? [fault(place, words.figureTwice(text))] : [];
    });
  return [...named, ...twice];
}

/** Whether letters have room: no chart can be read below a width of so many times its size of type. */
function roomFaults(outputs: DocumentNode | undefined, panels: readonly DocumentNode[]): readonly Fault[] {
  const number = (node: DocumentNode | undefined, key: string, otherwise: number): number =>
    writtenNumber(textAt(node, key) ?? '') ?? otherwise;
  const declared = entriesOf(valueAt(outputs, 'profiles')).map(({ key, place, value }) => {
    const width = points(number(value, 'width_mm', 1000));
    return { key, place, width, type: number(value, 'type_pt', 7.5) };
  });
  const known = new Map<string, { width: number; type: number }>([
    ...Object.entries(artworks),
    ...declared.map((one) => [one.key, one] as const),
  ]);
  const narrow = (place: Place, width: number, type: number): readonly Fault[] =>
    width / type < leastWidth
      ? [fault(place, words.tooNarrow(String(type), fixed((leastWidth * type * 25.4) / 72, 0)))]
      : [];
  return [
    ...declared.flatMap(({ place, width, type }) => narrow(place, width, type)),
    ...panels.flatMap((panel) => {
      const whole = known.get(textAt(panel, 'artwork') ?? 'journal-double');
      const one = whole && panelWidthOf(whole.width, number(panel, 'columns', 2));
      return whole && one !== undefined ? narrow(panel.place, one, whole.type) : [];
    }),
  ];
}
