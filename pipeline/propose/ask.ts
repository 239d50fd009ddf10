import { createInterface } from 'node:readline/promises';
import { type QuestionText, questionScreen } from '../../src/screens/propose.js';
import type { Words } from '../../src/words/index.js';
import { Interrupted } from '../commands/interrupt.js';

/** Where questions are asked, and by what they are stopped. */
export interface Terminal {
  input: NodeJS.ReadableStream;
  output: NodeJS.WritableStream;
  signal: AbortSignal;
}

/** The value that was typed: whole, or so much of it that only one begins like it; undefined for anything else. */
export function valueTyped(typed: string, values: readonly string[]): string | undefined {
  const text = typed.trim().toLowerCase();
  const exact = values.find((value) => value.toLowerCase() === text);
  const begun = values.filter((value) => value.toLowerCase().startsWith(text));
  return exact ?? (text !== '' && begun.length === 1 ? begun[0] : undefined);
}

/** Puts questions one after the other; an empty line takes what stands in brackets. */
interface Asker {
  /** @returns undefined for an empty line, or where nobody answers any more */
  ask(question: QuestionText): Promise<string | undefined>;
  show(text: string): void;
  close(): void;
}

export function askerOn({ input, output, signal }: Terminal, words: Words): Asker {
  // Without terminal mode Ctrl-C reaches the process, where the command waits for it.
  const lines = createInterface({ input, terminal: false });
  const typed = lines[Symbol.asyncIterator]();
  const aborted = new Promise<never>((_, reject) => {
    signal.addEventListener('abort', () => reject(new Interrupted()), { once: true });
  });
  aborted.catch(() => {});
  return {
    async ask(question) {
      const values = question.options.map(({ value }) => value);
      output.write(questionScreen(question, words));
      for (;;) {
        const { value: line, done } = await Promise.race([typed.next(), aborted]);
        if (done || line.trim() === '') return undefined;
        const value = valueTyped(line, values);
        if (value !== undefined) return value;
        output.write(`${words.proposeScreens.again} `);
      }
    },
    show: (text) => output.write(text),
    close: () => lines.close(),
  };
}
