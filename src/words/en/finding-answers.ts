import { plain, quoted, type RuleWords, type Telling } from './finding-words.js';

const inList = 'correct the line in the list of answers, or leave it blank';

const confirmedText = (t: Telling): string => `answers: ${t.detail} confirm what was asked, ${t.other} cannot tell`;

/** English words: what became of the answers to queries. */
export const answers = {
  'answers-read': {
    title: confirmedText,
    sentence: confirmedText,
    expected: () => 'nothing: this is for your books',
    act: () => 'nothing',
  },
  'answer-corrected': {
    title: () => 'value corrected by the clinic',
    sentence: (t) => (t.value === '' ? 'a date was corrected' : quoted(t.value)),
    expected: () => 'the same correction in the export, some day',
    act: () => 'correct the record itself too, so that the next export needs no answer',
  },
  'answer-impossible': plain(
    'confirmed, and still outside what is possible',
    'the clinic confirms a value that the limits take for impossible: it stays left out',
    'a value inside the limits, or a wider limit',
    'widen the limit of this field under quality.limits, with the reason',
  ),
  'answer-not-applied': plain(
    'answer to a query that is about no single cell',
    'the query is about a row, a column or a file: no cell takes the new value',
    'confirmed, or cannot tell',
    'correct the export itself',
  ),
  'answer-contradicted': {
    title: () => 'two answers for one cell',
    sentence: (t) => `${quoted(t.value)}, and another query of the same cell is answered with another value`,
    expected: () => 'one value for the cell',
    act: () => inList,
  },
  'answer-without-query': {
    title: () => 'answer to a query that is not asked any more',
    sentence: (t) => `no query is called ${t.value}: the export may have been corrected since`,
    expected: () => 'the name of a query of this audit',
    act: () => 'nothing, if the export was corrected',
  },
  'answer-unreadable': {
    title: () => 'answer that cannot be read',
    sentence: (t) => `${quoted(t.value)} is no answer`,
    expected: () => 'confirmed, corrected or cannot tell',
    act: () => inList,
  },
  'answer-incomplete': plain(
    'corrected, without the new value',
    'the answer says corrected, and corrected_value is blank',
    'the new value, as the file writes it',
    inList,
  ),
} satisfies Record<string, RuleWords>;
