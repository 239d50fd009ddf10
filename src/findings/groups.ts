import { type Finding, type Findings, type Severity, severities } from '../records/finding.js';
import { findingAt } from './builder.js';

/** Places that stand for all of a group: a file with ten thousand bad cells stays readable. */
const mostPlaces = 3;

/** All findings of one rule and severity. */
export interface FindingGroup {
  rule: string;
  severity: Severity;
  /** How many there are. */
  count: number;
  /** How many eyes they are about; 0 where they are about rows or files. */
  eyes: number;
  /** The first three, one at least. */
  first: readonly [Finding, ...Finding[]];
}

interface Gathering {
  count: number;
  eyes: Set<number>;
  first: number[];
}

/** Findings of one severity by rule, in the order in which the rules first spoke. */
export function groupFindings(findings: Findings, severity: Severity): readonly FindingGroup[] {
  const code = severities.indexOf(severity);
  const groups = new Map<string, Gathering>();
  for (let i = 0; i < findings.length; i++) {
    if (findings.severity[i] !== code) continue;
    const rule = findings.rule.at(i) as string;
    const group = groups.get(rule) ?? { count: 0, eyes: new Set(), first: [] };
    group.count++;
    if (group.first.length < mostPlaces) group.first.push(i);
    if ((findings.eye[i] as number) >= 0) group.eyes.add(findings.eye[i] as number);
    groups.set(rule, group);
  }
  return [...groups].map(([rule, { count, eyes, first }]) => {
    const places = first.map((i) => findingAt(findings, i)) as [Finding, ...Finding[]];
    return { rule, severity, count, eyes: eyes.size, first: places };
  });
}
