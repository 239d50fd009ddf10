import { type CategoryColumnBuilder, categoryColumnBuilder } from '../columns/category-column.js';
import { noDay } from '../records/canonical.js';
import { type Effect, type Finding, type Findings, type Severity, severities } from '../records/finding.js';

/** A finding as a rule states it; what is left out stands for "none". */
export type FindingParts = Partial<Finding> & Pick<Finding, 'rule' | 'severity' | 'effect'>;

/** Findings while a stage gathers them. */
export interface FindingsBuilder {
  readonly length: number;
  add(finding: FindingParts): void;
  build(): Findings;
}

/** What stands where a finding says nothing of it. */
const nothing = {
  source: -1,
  row: 0,
  column: undefined,
  field: undefined,
  written: undefined,
  eye: -1,
  day: noDay,
  detail: Number.NaN,
  other: Number.NaN,
} as const;

/** Most distinct names that a category column holds. */
const mostNames = 0xffff;

/**
 * A category column of any number of texts. Past its limit further texts are left out: such a finding still names
 * its file, row and column, and a wrongly mapped column of a large file must not end in a failure of ours.
 */
function boundedTexts(): Pick<CategoryColumnBuilder, 'push' | 'finish'> {
  const builder = categoryColumnBuilder();
  const known = new Set<string>();
  return {
    push(text) {
      if (text !== undefined && known.size < mostNames) known.add(text);
      builder.push(text !== undefined && known.has(text) ? text : undefined);
    },
    finish: () => builder.finish(),
  };
}

/**
 * Gathers findings, column by column.
 *
 * @example const found = findingsBuilder(); found.add({ rule: 'axis-missing', severity: 'query', effect: 'vector left out' });
 */
export function findingsBuilder(): FindingsBuilder {
  const severity: number[] = [];
  const numbers = { source: [] as number[], row: [] as number[], eye: [] as number[], day: [] as number[] };
  const further = { detail: [] as number[], other: [] as number[] };
  const texts = { rule: boundedTexts(), column: boundedTexts(), field: boundedTexts(), effect: boundedTexts() };
  const written = boundedTexts();
  return {
    get length() {
      return severity.length;
    },
    add(parts) {
      const finding = { ...nothing, ...parts };
      severity.push(severities.indexOf(finding.severity));
      for (const name of ['source', 'row', 'eye', 'day'] as const) numbers[name].push(finding[name]);
      for (const name of ['rule', 'column', 'field', 'effect'] as const) texts[name].push(finding[name]);
      written.push(finding.written);
      for (const name of ['detail', 'other'] as const) further[name].push(finding[name]);
    },
    build: () => ({
      length: severity.length,
      rule: texts.rule.finish(),
      severity: Uint8Array.from(severity),
      source: Int16Array.from(numbers.source),
      row: Uint32Array.from(numbers.row),
      column: texts.column.finish(),
      field: texts.field.finish(),
      written: written.finish(),
      eye: Int32Array.from(numbers.eye),
      day: Int32Array.from(numbers.day),
      effect: texts.effect.finish(),
      detail: Float64Array.from(further.detail),
      other: Float64Array.from(further.other),
    }),
  };
}

/** One finding of the list, as an object. @throws {RangeError} when there is no such finding */
export function findingAt(findings: Findings, i: number): Finding {
  const rule = findings.rule.at(i);
  const severity = severities[findings.severity[i] ?? -1];
  if (rule === undefined || severity === undefined) {
    throw new RangeError(`findingAt: ${i}; expected 0 to ${findings.length - 1}`);
  }
  return {
    rule,
    severity,
    source: findings.source[i] as number,
    row: findings.row[i] as number,
    column: findings.column.at(i),
    field: findings.field.at(i),
    written: findings.written.at(i),
    eye: findings.eye[i] as number,
    day: findings.day[i] as number,
    effect: findings.effect.at(i) as Effect,
    detail: findings.detail[i] as number,
    other: findings.other[i] as number,
  };
}

/** All findings of several lists, in their order. */
export function concatFindings(lists: readonly Findings[]): Findings {
  const all = findingsBuilder();
  for (const list of lists) {
    for (let i = 0; i < list.length; i++) all.add(findingAt(list, i));
  }
  return all.build();
}

/** How many findings there are of one severity. */
export function countOfSeverity(findings: Findings, severity: Severity): number {
  const code = severities.indexOf(severity);
  return findings.severity.reduce((count, one) => count + (one === code ? 1 : 0), 0);
}
