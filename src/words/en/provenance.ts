/** English words: the way from an exhibit back to its rows. */
export const provenance = {
  note: (id: string) => `Rows of results.csv behind the numbers: ${id} in provenance.csv.`,
  head: ['id', 'exhibit', 'name', 'measure', 'group', 'statistic'],
} as const;
