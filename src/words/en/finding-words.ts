import type { Leftover } from '../../intake/leftover.js';
import type { Severity } from '../../records/finding.js';
import type { ThresholdName } from '../../rules/thresholds.js';

/** What the words of a finding may speak of; texts are '' and numbers NaN where there is nothing to say. */
export interface Telling {
  severity: Severity;
  /** Header as written. */
  column: string;
  /** Our field. */
  field: string;
  /** The value as written, or what the rule put in its place. */
  value: string;
  detail: number;
  /** A second number, where the rule compares. */
  other: number;
  /** The limits that were passed, with their unit. */
  limits: string;
  /** A limit of a comparison as it holds in this audit, without its unit. */
  threshold(name: ThresholdName): string;
  /** The name of the audit file, as it was typed. */
  audit: string;
  /** Line of audit.yaml that the finding is about; 0 where there is none. */
  line: number;
  /** Headers of the file; '' where none of them is known, since the first row of data may stand in their place. */
  headers: string;
  /** Which kind of person's detail, of file, or of leftover it is. */
  kind: string;
  /** What a spreadsheet has made of the cell; undefined for other rules. */
  leftover: Leftover | undefined;
  /** Whether there are lines of audit.yaml that settle it. */
  settles: boolean;
}

/** Words of one rule. `title` stands for all findings of one severity. */
export interface RuleWords {
  title(t: Telling): string;
  /** What is wrong here. */
  sentence(t: Telling): string;
  expected(t: Telling): string;
  /** What to do: tentative where the value may be right. */
  act(t: Telling): string;
}

/** Where in audit.yaml something is to be written. */
export const inAudit = (t: Telling): string => (t.line > 0 ? `${t.audit} line ${t.line}, ` : `in ${t.audit} `);

/** Before the lines of which one is to be written. */
export const writeOne = (t: Telling): string => `${inAudit(t)}write one of`;

/** A value as it was written. */
export const quoted = (value: string): string => `‘${value}’`;

/** A rule whose words are the same wherever it is met. */
export function plain(title: string, sentence: string, expected: string, act: string): RuleWords {
  return { title: () => title, sentence: () => sentence, expected: () => expected, act: () => act };
}
