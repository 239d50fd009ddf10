import { nearest } from '../../src/plan/nearest.js';
import { drawScreen, notDrawnScreen } from '../../src/screens/draw.js';
import { en } from '../../src/words/index.js';
import type { DrawRequest } from '../draw-again.js';
import type { Say } from '../io.js';
import { drawAgain } from '../run.js';
import { openAudit } from './audit-file.js';
import { haltedReply } from './halted.js';
import type { Reply } from './reply.js';

/** As typed. */
export interface DrawOptions {
  artwork?: string;
  width?: number;
  format?: NonNullable<DrawRequest['formats']>;
  cohort: readonly string[];
  palette?: NonNullable<DrawRequest['colours']>;
}

/** `draw AUDIT FIGURE`: one figure again, in another way, into a folder beside the report. */
export async function draw(
  typed: string,
  figure: string,
  { format, cohort, palette, artwork, width }: DrawOptions,
  say: Say,
  signal: AbortSignal,
): Promise<Reply> {
  const audit = await openAudit(typed, signal);
  if ('code' in audit) return audit;
  const request: DrawRequest = {
    figure,
    cohorts: cohort,
    ...(artwork === undefined ? {} : { artwork }),
    ...(width === undefined ? {} : { width }),
    ...(format === undefined ? {} : { formats: format }),
    ...(palette === undefined ? {} : { colours: palette }),
  };
  const outcome = await drawAgain(audit.text, audit.io, request, say);
  switch (outcome.kind) {
    case 'no figure':
      return notDrawn(en.draw.noFigure(figure), figure, outcome.known);
    case 'no artwork':
      return notDrawn(en.draw.noArtwork(artwork ?? ''), artwork ?? '', outcome.known);
    case 'no room':
      return notDrawn(en.draw.noRoom(outcome.least), '', []);
    case 'no cohort':
      return notDrawn(en.draw.noCohort(cohort.join(', ')), cohort[0] ?? '', outcome.known);
    case 'drawn': {
      const files = outcome.files.map(audit.shown);
      const { title, legend, alt } = outcome.figure;
      return { code: 0, screen: drawScreen(title, files, en), data: { outcome: 'drawn', files, title, legend, alt } };
    }
    default:
      return haltedReply(outcome, audit, 'draw');
  }
}

function notDrawn(reason: string, name: string, known: readonly string[]): Reply {
  const near = nearest(name, known);
  const data = { outcome: 'not started', reason, known };
  return { code: 2, screen: notDrawnScreen(reason, { near, known }, en), data };
}
