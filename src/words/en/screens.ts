/** English words: screens. */
export const screens = {} as const;
