import { type Finding, type Findings, type Severity, severities } from '../records/finding.js';
import { findingAt } from './builder.js';

/** All findings of one rule and severity. */
export interface FindingGroup {
  rule: string;
  severity: Severity;
  /** How many there are. */
  count: number;
  /** How many eyes they are about; 0 where they are about rows or files. */
  eyes: number;
  first: Finding;
}

/** Findings of one severity by rule, in the order in which the rules first spoke. */
export function groupFindings(findings: Findings, severity: Severity): readonly FindingGroup[] {
  const code = severities.indexOf(severity);
  const groups = new Map<string, { count: number; eyes: Set<number>; first: number }>();
  for (let i = 0; i < findings.length; i++) {
    if (findings.severity[i] !== code) continue;
    const rule = findings.rule.at(i) as string;
    const group = groups.get(rule) ?? { count: 0, eyes: new Set(), first: i };
    group.count++;
    if ((findings.eye[i] as number) >= 0) group.eyes.add(findings.eye[i] as number);
    groups.set(rule, group);
  }
  return [...groups].map(([rule, { count, eyes, first }]) => {
    return { rule, severity, count, eyes: eyes.size, first: findingAt(findings, first) };
  });
}
