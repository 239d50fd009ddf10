import { fixed, numberStyles } from '../../format/number.js';
import { measureRegistry } from '../../measures/index.js';
import type { Measure } from '../../records/measure.js';
import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { entriesOf, entryAt, type TextNode, textAt, textsOf, valueAt } from '../document.js';
import { fault } from '../faults.js';
import { writtenNumber } from '../leaves.js';
import { nearest } from '../nearest.js';
import type { Survey } from '../survey.js';

const measures = measureRegistry([]).filter(({ step }) => !step);
const nameOf = ({ name, vector }: Measure): string => vector?.name ?? name;
const measureNames = [...new Set(measures.map(nameOf))];

/** `prediction_error:SRK/T` is the prediction error of one formula. */
const measureOf = (name: string): Measure | undefined =>
  measures.find((one) => nameOf(one) === name.replace(/:.*$/, ''));

/** Shares that a measure has; other statistics are not listed here. */
function sharesOf({ within, lines }: Measure): readonly string[] {
  const ofLimits = (within ?? []).map((limit) => `share_within_${fixed(limit, 2, numberStyles.filePoint)}`);
  return [...ofLimits, ...(lines ?? []).map((line) => `share_at_or_better_${line}`)];
}

/** Where the measure's name ends: behind a formula's own strokes, before the statistic. */
function parted(text: string): readonly [measure: string, statistic: string] {
  const [, measure = text, statistic = ''] = /^(.*?)\/([a-z][a-z_]*(?:[_:].*)?)$/.exec(text) ?? [];
  return [measure, statistic];
}

function nameFault({ text, place }: Pick<TextNode, 'text' | 'place'>): readonly Fault[] {
  const [name, statistic] = parted(text);
  if (!text.includes('/')) return [];
  const measure = measureOf(name);
  if (!measure) return [fault(place, words.unknownMeasure(name, nearest(name, measureNames), measureNames))];
  const shares = sharesOf(measure);
  const unknown = /^share_(within|at_or_better)_/.test(statistic) && !shares.includes(statistic);
  return unknown ? [fault(place, words.unknownShare(statistic, nearest(statistic, shares), shares))] : [];
}

function equalRates({ root }: Survey): readonly Fault[] {
  const rate = (key: string) => writtenNumber(textAt(root, 'monitoring', key) ?? '');
  const entry = entryAt(valueAt(root, 'monitoring'), 'unacceptable');
  const equal = entry && rate('acceptable') !== undefined && rate('acceptable') === rate('unacceptable');
  return equal ? [fault(entry.place, words.ratesEqual())] : [];
}

/** Whether statistics that audit.yaml names are statistics of ours. */
export function checkStatistics(about: Survey): readonly Fault[] {
  const { root } = about;
  const named = [
    ['statistics', 'primary'],
    ['monitoring', 'outcome'],
  ].flatMap((path) => textsOf(valueAt(root, ...path)));
  const keyed = ['margins', 'differences'].flatMap((key) => entriesOf(valueAt(root, 'statistics', key)));
  const keys = keyed.map(({ key, place }) => ({ text: key, place }));
  return [...[...named, ...keys].flatMap(nameFault), ...equalRates(about)];
}
