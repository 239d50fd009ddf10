import type { UnfitReason } from '../../src/screens/propose.js';
import type { Words } from '../../src/words/index.js';
import type { Unfit } from './open-file.js';
import type { Obstacle, Reason } from './request.js';

type Said = Omit<UnfitReason, 'place'>;

function unfitText(unfit: Unfit, { deidentify }: Words): Said {
  if (unfit.why === 'not-csv') return { sentence: deidentify.notCsv(unfit.kind), do: deidentify.notCsvDo };
  const { sentence, do: act } = deidentify.unfit[unfit.why];
  return { sentence: 'row' in unfit ? deidentify.row(sentence, unfit.row) : sentence, do: act };
}

const quoted = (headers: readonly string[]): string => headers.map((header) => `"${header}"`).join(', ');

function said(reason: Reason, words: Words): Said {
  const text = words.deidentify.reasons;
  switch (reason.why) {
    case 'unfit':
      return unfitText(reason.unfit, words);
    case 'patient-none':
      return { sentence: text.patientNone, do: text.patientNoneDo };
    case 'patient-open':
      return { sentence: text.patientOpen(quoted(reason.headers)), do: text.patientOpenDo };
    case 'date-order-open':
      return { sentence: text.dateOpen, do: text.dateOpenDo };
    case 'date-order-mixed':
      return { sentence: text.dateMixed, do: text.dateMixedDo };
    case 'no-surgery-date':
      return { sentence: text.noSurgery(quoted(reason.headers)), do: text.noSurgeryDo };
  }
}

/** Why the files stop the work, in words. */
export function reasonText(reason: Reason, words: Words): UnfitReason {
  return { place: reason.file || words.deidentify.all, ...said(reason, words) };
}

/** Why nothing was begun, and what to do about it. */
export function obstacleText(obstacle: Obstacle, { deidentify: text }: Words): { title: string; mend: string } {
  switch (obstacle.kind) {
    case 'book-locked':
      return { title: text.locked, mend: text.mendLocked(obstacle.lock) };
    case 'book-fault':
      return { title: text.bookFault(obstacle.fault.row, obstacle.fault.fault), mend: text.mendBook };
    case 'no-column':
      return { title: text.noColumn(obstacle.option, obstacle.column, obstacle.nearest), mend: text.mendColumn };
    case 'keep-identifier':
      return { title: text.keepIdentifier(obstacle.column), mend: text.mendKeep };
    default:
      return { title: text.notStarted[obstacle.kind], mend: text.mend[obstacle.kind] };
  }
}
