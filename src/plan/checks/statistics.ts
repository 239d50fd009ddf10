import { comparedBy, isRatio, namesOf } from '../../comparison/compared.js';
import { fixed, numberStyles } from '../../format/number.js';
import { measureRegistry } from '../../measures/index.js';
import type { Measure } from '../../records/measure.js';
import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { entriesOf, entryAt, type MapEntry, type TextNode, textAt, textsOf, valueAt } from '../document.js';
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

type Named = Pick<TextNode, 'text' | 'place'>;

/** The measure of a name such as `cdva/mean` and its statistic, or the fault that there is no such measure. */
function namedFaults({ text, place }: Named, judge: (measure: Measure, statistic: string) => readonly Fault[]) {
  if (!text.includes('/')) return [];
  const [name, statistic] = parted(text);
  const measure = measureOf(name);
  if (!measure) return [fault(place, words.unknownMeasure(name, nearest(name, measureNames), measureNames))];
  return judge(measure, statistic);
}

function watchedFaults(named: Named): readonly Fault[] {
  return namedFaults(named, (measure, statistic) => {
    const shares = sharesOf(measure);
    const unknown = /^share_(within|at_or_better)_/.test(statistic) && !shares.includes(statistic);
    return unknown ? [fault(named.place, words.unknownShare(statistic, nearest(statistic, shares), shares))] : [];
  });
}

const outcomes = measures.filter((measure) => comparedBy(measure).length > 0);

/** Whether cohorts are compared by a statistic that is declared as primary, or with a margin. */
function comparedFaults(named: Named): readonly Fault[] {
  return namedFaults(named, (measure, statistic) => {
    const known = comparedBy(measure).flatMap(namesOf);
    if (known.includes(statistic)) return [];
    if (known.length === 0) return [fault(named.place, words.notCompared(nameOf(measure), outcomes.map(nameOf)))];
    return [fault(named.place, words.unknownShare(statistic, nearest(statistic, known), known))];
  });
}

/** A margin of a ratio is a ratio too: 1.2 for an SD that is a fifth larger. */
function ratioFaults({ key, place, value }: MapEntry): readonly Fault[] {
  const [name, statistic] = parted(key);
  const measure = measureOf(name);
  const found = measure && comparedBy(measure).find((one) => namesOf(one).includes(statistic));
  const declared = writtenNumber(value.kind === 'text' ? value.text : '');
  const isFault = found && isRatio(found) && declared !== undefined && declared <= 1;
  return isFault ? [fault(place, words.ratioMargin(statistic))] : [];
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
  const primaries = textsOf(valueAt(root, 'statistics', 'primary'));
  const keyed = ['margins', 'differences'].flatMap((key) => entriesOf(valueAt(root, 'statistics', key)));
  const keys = keyed.map(({ key, place }) => ({ text: key, place }));
  return [
    ...[...primaries, ...keys].flatMap(comparedFaults),
    ...keyed.flatMap(ratioFaults),
    ...textsOf(valueAt(root, 'monitoring', 'outcome')).flatMap(watchedFaults),
    ...equalRates(about),
  ];
}
