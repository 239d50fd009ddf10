import { de } from './de.js';
import { en } from './en.js';
import { fr } from './fr.js';
import type { Vocabulary } from './vocabulary.js';

/** Every language that headers are understood in; where two disagree and nothing else tells, the earlier one holds. */
export const vocabularies: readonly Vocabulary[] = [en, de, fr];
