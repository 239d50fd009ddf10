/** Titles of the two tables on eyes without an outcome. */
export const followUpTitles = {
  'follow-up': () => 'Completeness of follow-up, and what missing outcomes could change (eligible eyes that are due)',
  'missing-outcomes': (visit: string) =>
    `Eyes with and without an outcome at ${visit}, before surgery (eligible eyes that are due)`,
} as const;

/** English words: completeness of follow-up. */
export const followUp = {
  known: 'Outcome known, n/N due, %',
  visit: (visit: string) => `Seen at ${visit}, n/N due, %`,
  notYetDue: 'Eligible, not yet due',
  bounds: (outcome: string) => `${outcome}, n/N, %`,
  observed: 'Of eyes with the value',
  failed: 'All missing eyes failed',
  succeeded: 'All missing eyes succeeded',
  withOutcome: 'With outcome',
  withoutOutcome: 'Without outcome',
  due: 'Due: the window of the visit had closed when the data were exported. Seen: any examination that can be used.',
  boundsNote:
    'Bounds: every due eye without the value counted as failed, then every one as succeeded; of all due eyes. The share of all due eyes lies between them, whatever the reason that a value is missing.',
  methodVisits:
    'Completeness of follow-up is counted for each visit by itself, of the eligible eyes whose window had closed when the data were exported',
  methodBounds:
    'Headline shares have bounds for missing outcomes: every due eye without the value counted as failed, then every one as succeeded',
  methodCompared: 'Due eyes with and without an outcome are compared by what they were before surgery',
  compared:
    'Standardised difference: eyes without an outcome less those with one; where it lies beyond 0.1, eyes that were seen may not stand for all; with few missing eyes chance alone brings such differences about.',
} as const;
