import { fixed, numberStyles } from './number.js';

/** A limit as statistics are named by it: two decimals, point. */
export const limitText = (limit: number): string => fixed(limit, 2, numberStyles.filePoint);
