/** English words: plan. */
export const plan = {} as const;
