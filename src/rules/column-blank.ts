import { locateColumn } from '../findings/header.js';
import { missingWords } from '../intake/missing.js';
import { keptColumn } from '../records/raw-table.js';
import type { Rule, RuleContext } from './rule.js';

/** Tells of each mapped column of one file that says nothing in any row. */
function judgeFile({ raw, plan, report }: RuleContext, source: number): void {
  const table = raw[source];
  const of = table && plan.sources[table.source];
  if (!table || !of || table.rows === 0) return;
  const isMissing = missingWords(of.reading.missing);
  const told = new Set<number>();
  for (const { columns, covariates } of of.blocks) {
    for (const column of [...columns, ...covariates]) {
      const { index } = locateColumn(table.header, column);
      if (index === undefined || told.has(index) || !keptColumn(table, index).words.every(isMissing)) continue;
      told.add(index);
      report({
        rule: 'column-blank',
        severity: 'query',
        source,
        column: table.header[index],
        field: column.field,
        effect: 'value left out',
        detail: table.rows,
      });
    }
  }
}

/** A mapped column that is blank in every row: another column may have been meant, and no rate is given from it. */
export const columnBlank: Rule = {
  id: 'column-blank',
  judge(context) {
    context.raw.forEach((_, source) => {
      judgeFile(context, source);
    });
  },
};
