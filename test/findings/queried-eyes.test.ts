import { expect, it } from 'vitest';
import { findingsBuilder } from '../../src/findings/builder.js';
import { queriedEyes } from '../../src/findings/queried-eyes.js';
import { audited } from './audited.js';
import { planOf } from './plan.js';

const plan = planOf([
  { file: 'theatre.csv', holds: 'surgery', columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' } },
]);
const theatre = 'ID,Eye,Date\nA1,R,2025-03-01\nA2,R,2025-03-01\nA3,R,2025-03-01\n';

it('eyes with a query are marked; what is set aside, noted, or said of a file marks none', async () => {
  const { tables } = await audited({ 'theatre.csv': theatre }, plan);
  const found = findingsBuilder();
  found.add({ rule: 'axis-missing', severity: 'query', effect: 'vector left out', eye: 2 });
  found.add({ rule: 'sphere-range', severity: 'set aside', effect: 'refraction left out', eye: 1 });
  found.add({ rule: 'axial-length-range', severity: 'note', effect: 'kept', eye: 0 });
  found.add({ rule: 'constant-column', severity: 'query', effect: 'kept' });
  expect([...queriedEyes(found.build(), tables)]).toEqual([0, 0, 1]);
});
