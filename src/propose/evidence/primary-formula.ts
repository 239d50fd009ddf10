import { propose as words } from '../../words/en/propose.js';
import type { ArrangedFile } from '../arrange.js';
import type { Choice } from '../choices.js';

/** Formulas of prediction rows, where operations have no prediction of their own and there are several. */
export function primaryFormulaChoice(files: readonly ArrangedFile[]): Choice | undefined {
  const blocks = files.flatMap((one) => one.blocks);
  const planned = blocks.some(
    ({ holds, columns }) => holds === 'surgery' && columns.some(({ term }) => term === 'predicted_se'),
  );
  const rowwise = files.flatMap(({ of, blocks: own }) => {
    const column = own.flatMap(({ holds, columns }) =>
      holds === 'prediction' ? columns.filter(({ term }) => term === 'formula') : [],
    );
    return column.flatMap(({ index }) => (of.profiles[index]?.words ?? []).map(({ word }) => word.trim()));
  });
  const named = blocks.flatMap(({ holds, formula }) =>
    holds === 'prediction' && formula !== undefined ? [formula] : [],
  );
  const formulas = [...new Set([...named, ...rowwise])];
  if (planned || formulas.length < 2) return undefined;
  return {
    id: 'primary-formula',
    kind: 'primary-formula',
    label: '',
    header: '',
    found: words.found.primaryFormula(formulas),
    options: formulas.map((value) => ({ value, evidence: '' })),
    likelier: undefined,
  };
}
