import { plainSigns } from './signs.js';

/** Words that head a line which sums up rows, in lower case. English, German, French. */
const heads = [
  'grand total|sub-?totals?|totals?|sums?|counts?|n|mean|means|average|averages|avg|median|minimum|min|maximum|max|range',
  's\\.?d\\.?|std|std\\.? ?dev\\.?|stdev|standard deviation|standard error|variance',
  'gesamt|gesamtzahl|summe|anzahl|mittelwert|mittel|mw|durchschnitt|standardabweichung|stabw|spannweite|varianz',
  'somme|total général|moyenne|nombre|effectif|médiane|écart[- ]type|étendue',
].join('|');

/** What is counted, where the line says so. */
const counted =
  'eyes?|rows?|records?|patients?|cases?|operations?|augen|zeilen|patienten|fälle|yeux|lignes|cas|opérations';

const label = new RegExp(
  String.raw`^(?:${heads})(?: (?:of |number of )?(?:${counted}))?\s*[:=]?\s*(?:[\d.,]+ ?%?(?: (?:${counted}))?)?$`,
  'i',
);

/**
 * Whether a cell heads a line that sums up the rows above it: `Total`, `Mean`, `n = 120`, `Anzahl: 34 Augen`.
 *
 * A patient may be coded `Max` or `N`: only a row that names no eye is to be taken for such a line.
 *
 * @param cell  the first filled cell of a row, as written
 * @source words in common practice, no source
 * @example isSummaryLabel('n = 120') // true
 */
export function isSummaryLabel(cell: string): boolean {
  return cell.length <= 60 && label.test(plainSigns(cell));
}
