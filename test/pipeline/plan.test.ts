import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plan } from '../../pipeline/plan.js';
import { fixture, operations, planOf, toldOf } from '../plan/audit-text.js';

describe('stage 0, plan', () => {
  it('makes a plan of the least audit that runs', () => {
    expect(toldOf(fixture('least.yaml'))).toEqual([]);
  });

  it("refuses a clinic's year as printed, for one path, and takes it with allow_outside", () => {
    const text = fixture('clinic-year.yaml');
    expect(toldOf(text)).toEqual(['97:46 ‘../2024/reports/cataract-2024’ leaves the folder of audit.yaml']);
    expect(planOf(`${text}allow_outside: true\n`).benchmarks.former_report).toBe('../2024/reports/cataract-2024');
  });

  it('tells three faults at once, whichever layer finds them', () => {
    const text = operations
      .replace('surgery_date: Date', 'surgery_date: Op: date')
      .replace('format: 1', 'format: 7')
      .concat('cohorts: { by: technique }\n');
    expect(toldOf(text)).toEqual([
      '1:9 ‘7’ is not what is expected here',
      '9:21 a colon followed by a blank, or at the end, needs quotation marks around the value',
      '10:16 no source maps ‘technique’',
    ]);
  });

  it('gives a plan that is plain data: it survives being written as JSON', () => {
    const made = planOf(fixture('least.yaml'));
    expect(JSON.parse(JSON.stringify(made))).toEqual(made);
  });

  it('makes the same plan whatever the order of keys', () => {
    const lines = operations.split('\n');
    const turned = [...lines.slice(2, 6), lines[8], lines[7], lines[6], lines[1], lines[0], ''].join('\n');
    const unplaced = (text: string) => JSON.stringify(planOf(text)).replace(/"line":\d+/g, '');
    expect(unplaced(turned)).toBe(unplaced(operations));
  });
});

describe('whatever stands in audit.yaml', () => {
  const made = (text: string): boolean => {
    const result = plan(text);
    return 'plan' in result || result.faults.length > 0;
  };

  it('is a plan or a list of faults, when lines are lost, doubled, moved or indented', () => {
    const lines = fixture('clinic-year.yaml').split('\n');
    const edit = fc.record({
      kind: fc.constantFrom('lose', 'double', 'indent', 'outdent', 'swap'),
      at: fc.nat(lines.length - 1),
      to: fc.nat(lines.length - 1),
    });
    const edited = (edits: readonly { kind: string; at: number; to: number }[]): string => {
      const copy = [...lines];
      for (const { kind, at, to } of edits) {
        const line = copy[at] ?? '';
        if (kind === 'lose') copy[at] = '';
        if (kind === 'double') copy[at] = `${line}\n${line}`;
        if (kind === 'indent') copy[at] = `  ${line}`;
        if (kind === 'outdent') copy[at] = line.replace(/^ {2}/, '');
        if (kind === 'swap') [copy[at], copy[to]] = [copy[to] ?? '', line];
      }
      return copy.join('\n');
    };
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
        expect(made(edited(edits))).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  it('is a plan or a list of faults, when words are exchanged', () => {
    const words = fixture('clinic-year.yaml').split(/(\s+|[{}[\],:])/);
    const odd = fc.constantFrom(
      '',
      'x',
      '0',
      '-1',
      '[',
      '}',
      ':',
      '"',
      '*',
      'no',
      '~',
      '1e999',
      '__proto__',
      'constructor',
      '../..',
      '[]',
      '{}',
      'before',
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(words.length - 1), odd), { minLength: 1, maxLength: 3 }), (changes) => {
        const copy = [...words];
        for (const [at, word] of changes) copy[at] = word;
        expect(made(copy.join(''))).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  it('is a plan or a list of faults, when it is a random document', () => {
    const key = fc.constantFrom(
      'format',
      'title',
      'sources',
      'file',
      'holds',
      'columns',
      'patient',
      'eye',
      'follow_up',
      'visits',
      'days',
      'where',
      'and',
      'cohorts',
      'define',
      'k1',
      'x',
    );
    const { document } = fc.letrec((tie) => ({
      document: fc.oneof(
        { maxDepth: 4 },
        fc.string({ maxLength: 6 }),
        fc.integer(),
        fc.constant(null),
        fc.array(tie('document'), { maxLength: 3 }),
        fc.dictionary(key, tie('document'), { maxKeys: 6 }),
      ),
    }));
    fc.assert(
      fc.property(fc.dictionary(key, document, { maxKeys: 8 }), (value) => {
        expect(made(JSON.stringify(value))).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
});
