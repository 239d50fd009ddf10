/** 0 done · 1 stopped by the data · 2 could not start · 3 our fault · 130 interrupted. */
export type ExitCode = 0 | 1 | 2 | 3 | 130;

/** What a command has to say, as text and as data; how it is shown is the terminal's. */
export interface Reply {
  code: ExitCode;
  screen: string;
  /** For `--json`: the same in machine-readable form. */
  data: Readonly<Record<string, unknown>>;
}

/** Options that all commands share. */
export interface Options {
  quiet: boolean;
  json: boolean;
}
