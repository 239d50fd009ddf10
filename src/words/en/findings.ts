/** English words: findings. */
export const findings = {} as const;
