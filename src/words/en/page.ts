/** English words: page. */
export const page = {} as const;
