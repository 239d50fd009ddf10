import type { Say } from './io.js';

type Stream = NodeJS.WriteStream;

/** A line of progress that is redrawn in place, and cleared before anything else is written. */
export interface Progress {
  say: Say;
  clear(): void;
}

/** Milliseconds between two redraws; the eye sees no more. */
const pause = 100;

/**
 * Progress on a terminal; none where the stream is a file, a pipe, or a terminal without a width (a redrawn
 * line would repeat for ever there).
 *
 * @param stream  where the line is drawn; never the stream that carries the summary
 * @param names   what each stage is called to the reader
 */
export function progressOn(stream: Stream, names: Readonly<Record<string, string>>): Progress {
  const width = stream.isTTY ? (stream.columns ?? 0) : 0;
  if (width <= 0) return { say: () => {}, clear: () => {} };
  let drawn = { stage: '', at: -pause };
  return {
    say(stage, done, total) {
      const now = performance.now();
      if (stage === drawn.stage && now - drawn.at < pause && done < total) return;
      drawn = { stage, at: now };
      const name = names[stage] ?? stage;
      const text = total > 1 ? `  ${name}  ${Math.floor((100 * done) / total)} %` : `  ${name}`;
      stream.write(`\r\u001b[K${text.slice(0, width - 1)}`);
    },
    clear() {
      if (drawn.stage !== '') stream.write('\r\u001b[K');
      drawn = { stage: '', at: -pause };
    },
  };
}

/**
 * Title and last line of a screen in bold, where the reader's terminal shows it and NO_COLOR does not forbid it.
 *
 * @param environment  the variables of the process
 */
export function emphasised(
  screen: string,
  stream: Stream,
  { NO_COLOR, TERM }: NodeJS.ProcessEnv = process.env,
): string {
  if (!stream.isTTY || NO_COLOR || TERM === 'dumb') return screen;
  const bold = (text: string): string => `\u001b[1m${text}\u001b[22m`;
  return screen.replace(/^.+$/m, bold).replace(/^Next /gm, bold);
}
