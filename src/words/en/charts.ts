/** English words: charts. */
export const charts = {} as const;
