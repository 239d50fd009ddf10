import { count } from '../../src/format/number.js';
import type { Choice } from '../../src/propose/choices.js';
import type { Proposal } from '../../src/propose/proposal.js';
import type { FileSummary } from '../../src/propose/sources.js';
import type { LookedFile, LookedSummary, ProposedSummary, QuestionText } from '../../src/screens/propose.js';
import type { Words } from '../../src/words/index.js';
import type { ProposeOutcome } from './propose.js';
import { unfitReasons } from './reasons.js';

function lookedFile({ file, placed, unsure, left, note }: FileSummary, words: Words): LookedFile {
  const { label, rows, delimiter, decimal, dateOrder, header } = file;
  return {
    file: label,
    rows: count(rows),
    how: words.propose.how(delimiter, decimal, dateOrder ?? 'none'),
    placed,
    columns: header.length,
    unsure: unsure.map(({ header: of, text }) => ({ header: of, text })),
    left: left.map(({ header: of, reason }) => ({ header: of, text: reason })),
    note,
  };
}

/** What the screen tells of the files, every number typeset. */
export function lookedSummary({ files }: Proposal, words: Words): LookedSummary {
  return {
    files: files.length,
    filesText: count(files.length),
    rows: count(files.reduce((sum, { file }) => sum + file.rows, 0)),
    each: files.map((one) => lookedFile(one, words)),
  };
}

/** What the screen tells of what was written. */
export function proposedSummary(
  { proposal, open, ahead }: Extract<ProposeOutcome, { kind: 'proposed' }>,
  audit: string,
  schema: string,
  words: Words,
): ProposedSummary {
  const text = words.proposeScreens;
  const stops = unfitReasons(ahead, words).map(({ place, sentence }) => text.ahead(place, sentence));
  return {
    audit,
    schema,
    lines: count(proposal.text.split('\n').length - 1),
    doubts: proposal.doubts.length,
    doubtsText: count(proposal.doubts.length),
    open: open.map(({ label, header, found }) => ({ place: text.place(label, header), found })),
    notes: [...proposal.notes, ...stops],
  };
}

/** A choice as it is asked: each answer with its meaning and the evidence for it. */
export function questionText(choice: Choice, number: number, of: number, words: Words): QuestionText {
  const text = words.proposeScreens;
  const { kind, label, header, found, likelier } = choice;
  return {
    number,
    of,
    place: text.place(label, header),
    found,
    options: choice.options.map(({ value, evidence }) => {
      const meaning = kind === 'eye-code' ? text.eyeCode(value) : text.meaning(kind, value);
      return { value, text: [meaning, evidence].filter((part) => part !== '').join(': ') };
    }),
    likelier,
  };
}
