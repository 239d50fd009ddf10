import type { Words } from '../words/index.js';
import { labelled, screen, wrapped } from './layout.js';

/** The screen of a figure that was drawn again. */
export function drawScreen(title: string, files: readonly string[], { draw, screens }: Words): string {
  return screen([
    [...wrapped(draw.drawn(title)), ...files.map((file) => `  ${file}`)],
    labelled(screens.next, draw.next, { indent: 0, at: 7 }),
  ]);
}

/** The screen of a name that the audit does not have: what was meant, perhaps, and what there is. */
export function notDrawnScreen(
  reason: string,
  { near, known }: { near: string | undefined; known: readonly string[] },
  { draw }: Words,
): string {
  const nearest = near === undefined ? [] : labelled(draw.nearest, near);
  return screen([
    [...wrapped(reason), ...nearest, ...(known.length > 0 ? labelled(draw.known, known.join(', ')) : [])],
  ]);
}
