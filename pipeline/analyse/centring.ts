import { categoriesOf, integersOf, numbersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { groupByCategory, missingGroup } from '../../src/groups/grouping.js';
import { fewestForCentring, manyForCentring } from '../../src/measures/centring.js';
import { lensField } from '../../src/predictions/recomputed.js';
import type { Derived } from '../../src/records/derived.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';
import { plainRow } from './plain-row.js';

/** What the number of eyes behind a centring mean makes of it. */
function noteOf(eyes: number): string {
  if (eyes < fewestForCentring) return 'centring:none';
  return eyes < manyForCentring ? 'centring:provisional' : '';
}

/** How many prediction errors each lens model is centred by: too few are not centred, few are provisional. */
export function centringRows({ eyes, membership, tables }: Derived): readonly ResultRow[] {
  const field = lensField(tables);
  if (!field) return [];
  const { code, names } = groupByCategory(field, categoriesOf(tables.eyes, field));
  const analysed = analysedIn(membership.refraction);
  const errors = numbersOf(eyes, 'prediction_error');
  const patient = integersOf(eyes, 'patient');
  return names.flatMap((name, index) => {
    const own = [...errors.keys()].filter((eye) => code[eye] === index + 1 && analysed[eye] === 1);
    const known = own.filter((eye) => !Number.isNaN(errors[eye]));
    if (known.length === 0) return [];
    const value = known.length;
    const note = name === missingGroup ? 'centring:none' : noteOf(value);
    const patients = new Set(known.map((eye) => patient[eye])).size;
    return [
      plainRow({ measure: 'centring', statistic: 'count', value, patients, note }, groupPair(field, name), own.length),
    ];
  });
}
