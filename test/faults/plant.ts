import faults from './faults.json' with { type: 'json' };

/** A likely mistake: in one file, a text that stands there once, and what it would be by the mistake. */
export interface Fault {
  name: string;
  /** From the root of the project. */
  file: string;
  find: string;
  replace: string;
  /** A test file that must fail by it; others may too. */
  seenBy: string;
}

export const allFaults: readonly Fault[] = faults;

/** The source of a file with a fault in it. @throws {RangeError} when what is to be replaced does not stand there once */
export function plantFault(source: string, { name, file, find, replace }: Fault): string {
  const [before, after, ...more] = source.split(find);
  if (before === undefined || after === undefined || more.length > 0) {
    throw new RangeError(
      `fault "${name}": the text it replaces must stand once in ${file}; found ${source.split(find).length - 1} times`,
    );
  }
  return before + replace + after;
}
