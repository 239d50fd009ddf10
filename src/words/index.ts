import { charts } from './en/charts.js';
import { findings } from './en/findings.js';
import { page } from './en/page.js';
import { plan } from './en/plan.js';
import { screens } from './en/screens.js';
import { tables } from './en/tables.js';
import { trace } from './en/trace.js';

/** Every sentence and label that a reader may see, one section a place where it is seen. */
export const en = { charts, findings, page, plan, screens, tables, trace };

export type Words = typeof en;
