import { charts } from './en/charts.js';
import { deidentify } from './en/deidentify.js';
import { findings } from './en/findings.js';
import { page } from './en/page.js';
import { plan } from './en/plan.js';
import { propose } from './en/propose.js';
import { proposeScreens } from './en/propose-screens.js';
import { screens } from './en/screens.js';
import { size } from './en/size.js';
import { tables } from './en/tables.js';
import { trace } from './en/trace.js';

/** Every sentence and label that a reader may see, one section a place where it is seen. */
export const en = { charts, deidentify, findings, page, plan, propose, proposeScreens, screens, size, tables, trace };

export type Words = typeof en;
