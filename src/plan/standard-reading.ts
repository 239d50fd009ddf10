import type { Reading } from '../records/plan.js';

/** How a file is read of which audit.yaml says nothing. */
export const standardReading: Reading = {
  delimiter: 'auto',
  decimal: 'auto',
  date_order: 'auto',
  encoding: 'auto',
  header_row: 1,
  units_row: 'auto',
  missing: [],
};
