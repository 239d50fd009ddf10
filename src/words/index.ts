import { charts } from './en/charts.js';
import { checklist } from './en/checklist.js';
import { deidentify } from './en/deidentify.js';
import { draw } from './en/draw.js';
import { findings } from './en/findings.js';
import { page } from './en/page.js';
import { plan } from './en/plan.js';
import { propose } from './en/propose.js';
import { proposeScreens } from './en/propose-screens.js';
import { provenance } from './en/provenance.js';
import { resultsSection } from './en/results-section.js';
import { screens } from './en/screens.js';
import { size } from './en/size.js';
import { tables } from './en/tables.js';
import { trace } from './en/trace.js';

/** Every sentence and label that a reader may see, one section a place where it is seen. */
export const en = {
  charts,
  checklist,
  deidentify,
  draw,
  findings,
  page,
  plan,
  propose,
  proposeScreens,
  screens,
  size,
  tables,
  trace,
  provenance,
  resultsSection,
};

export type Words = typeof en;
