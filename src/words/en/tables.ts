/** English words: tables. */
export const tables = {} as const;
