import type { ColumnTable } from 'arquero';
import type { CategoryColumn } from '../columns/category-column.js';
import { fieldNamed } from '../plan/fields.js';
import { eyePlace } from './places.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Shorter labels are codes, in which one letter makes another lens or surgeon. */
const shortestWord = 4;

/** More labels than this are free text. */
const mostLabels = 1000;

const folded = (label: string): string =>
  label
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/** Whether one letter was changed, added or left out; a digit makes another code. */
function isOneLetterApart(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (long.length - short.length > 1 || long.length < shortestWord) return false;
  let from = 0;
  while (from < short.length && short[from] === long[from]) from++;
  const added = short.length < long.length;
  const rest = added ? short.slice(from) : short.slice(from + 1);
  const letters = [long[from] ?? '', added ? '' : (short[from] ?? '')].join('');
  return rest === long.slice(from + 1) && /^\p{L}+$/u.test(letters);
}

/** Columns of the eyes whose values are words of the clinic's own: fields that are no code of a person, and covariates. */
function labelColumns(eyes: ColumnTable): readonly (readonly [string, CategoryColumn])[] {
  return eyes.columnNames().flatMap((name) => {
    const column: unknown = eyes.column(name);
    const field = fieldNamed(name);
    const isOwn = field === undefined || field.type === 'code';
    const isNamed = typeof column === 'object' && column !== null && 'names' in column;
    return isNamed && isOwn ? [[name, column as CategoryColumn] as const] : [];
  });
}

interface Label {
  name: string;
  eyes: number;
  first: number;
}

function labelsOf({ names, codes }: CategoryColumn): readonly Label[] {
  const labels = names.map((name): Label => ({ name, eyes: 0, first: -1 }));
  codes.forEach((code, eye) => {
    const label = labels[code] as Label;
    if (label.eyes++ === 0) label.first = eye;
  });
  return labels.slice(1).filter(({ eyes }) => eyes > 0);
}

/** The label that a rarer one is likely meant to be: the commonest of those written almost alike. */
function meantBy(rare: Label, labels: readonly Label[], isRare: boolean): Label | undefined {
  const alike = labels.filter((other) => {
    if (other === rare || other.eyes < rare.eyes || (other.eyes === rare.eyes && other.first > rare.first))
      return false;
    if (folded(other.name) === folded(rare.name)) return true;
    return isRare && isOneLetterApart(folded(other.name), folded(rare.name));
  });
  return alike.toSorted((a, b) => b.eyes - a.eyes || a.first - b.first)[0];
}

/** Two spellings of what is likely one label: each would be a group of its own. They are joined only where declared. */
export const labelSimilar: Rule = {
  id: 'label-similar',
  judge(context) {
    const { tables, plan, report } = context;
    const place = eyePlace(context);
    for (const [field, column] of labelColumns(tables.eyes)) {
      const labels = labelsOf(column);
      if (labels.length > mostLabels) continue;
      const all = labels.reduce((sum, { eyes }) => sum + eyes, 0);
      for (const label of labels) {
        const meant = meantBy(label, labels, label.eyes < all * thresholdOf('rare_label', plan));
        if (!meant) continue;
        const { source, row, column: header } = place(label.first, field);
        const written = `${label.name}’ and ‘${meant.name}`;
        const counts = { detail: label.eyes, other: meant.eyes };
        report({
          rule: 'label-similar',
          severity: 'query',
          source,
          row,
          column: header,
          field,
          written,
          effect: 'kept',
          ...counts,
        });
      }
    }
  },
};
