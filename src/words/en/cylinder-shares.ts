/** English words: bands of cylinder before and after surgery. */
export const cylinderShares = {
  title: 'Bands of cylinder before surgery (corneal plane) and after it (spectacle plane)',
  bars: { before: 'Corneal, before surgery (corneal plane)', after: 'Refractive, after surgery (spectacle plane)' },
  /** The same within a sentence. */
  names: { before: 'corneal, before surgery', after: 'refractive, after surgery' },
  limits: 'Cylinder, D',
  rows: { before: 'before, %', after: 'after, %' },
  head: (bar: string, sample: string) => `${bar}: ${sample}`,
  upTo: (limit: string) => `≤ ${limit}`,
  above: (limit: string) => `> ${limit}`,
  legend:
    'Each bar is all eyes of a state, parted at the share of eyes up to each limit, dioptres; lines join equal limits. ' +
    'The numbers are cumulative percent of eyes. Before surgery: keratometry, corneal plane. After surgery: magnitude of ' +
    'the refractive cylinder as recorded, spectacle plane. The two are different quantities and need not have the same ' +
    'eyes.',
  altLead: 'Cumulative bands of cylinder before and after surgery. ',
  altShare: (limit: string, percent: string) => `${percent} % up to ${limit} dioptres`,
} as const;
