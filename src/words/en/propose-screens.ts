const plural = (n: number, one: string, many: string): string => (n === 1 ? one : many);

/** What an answer means, where the word typed does not say it. */
const meanings: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  operated: {
    outcome: 'every eye was operated, and measured after surgery',
    before: 'every eye was operated, and measured before surgery',
    none: 'the list of operations is another file',
  },
  'blank-sphere': { '0': 'a blank cell is zero', missing: 'a blank cell was not recorded' },
  'blank-complication': { none: 'a blank cell means that there was none', missing: 'a blank cell was not recorded' },
};

/** English words: the screens and questions of `propose`. */
export const proposeScreens = {
  help: {
    propose: 'looks into exports and writes a commented audit.yaml for them',
    files: 'the CSV files, or a pattern with *',
    yes: 'ask nothing: take the likelier, mark it, leave open what nothing tells',
    like: 'carry the mapping of this former audit over',
    out: 'folder, or name of the file, to write (default: audit.yaml here)',
  },
  looked: (files: number, filesText: string, rows: string) =>
    `Looked into ${filesText} ${plural(files, 'file', 'files')}, ${rows} rows. Your files were not changed.`,
  rows: (rows: string) => `${rows} rows`,
  placed: (placed: number, columns: number) =>
    `${placed === columns ? 'all' : String(placed)} ${placed === columns ? '' : 'of '}${columns} columns placed`,
  unsure: 'unsure',
  left: 'left',
  more: (n: number) => `… ${n} more, see the file`,
  about: (header: string) => (header === '' ? '' : `"${header}"`),

  questions: (n: number) => (n === 1 ? 'One answer changes numbers.' : `${n} answers change numbers.`),
  question: (number: number, of: number) => `${number} of ${of}`,
  place: (label: string, header: string) =>
    [label, header === '' ? '' : `"${header}"`].filter((part) => part !== '').join(', '),
  meaning: (kind: string, value: string) => meanings[kind]?.[value] ?? '',
  eyeCode: (side: string) => `the first of them is the ${side} eye`,
  prompt: (values: readonly string[], likelier: string | undefined) =>
    `${values.join(' or ')} [${likelier ?? 'leave it open'}]: `,
  again: 'Please type one of these words, or nothing.',

  wrote: (audit: string, lines: string, schema: string) => `Wrote ${audit} (${lines} lines) and ${schema}.`,
  doubts: (n: string) => `${n} lines are marked "doubt:".`,
  oneDoubt: 'One line is marked "doubt:".',
  open: (n: number) => (n === 1 ? 'One choice is left open as a comment:' : `${n} choices are left open as comments:`),
  ahead: (place: string, sentence: string) => `A run will stop at ${place}: ${sentence}`,
  next: (audit: string) => `halfdiopter check ${audit}`,

  exists: (audit: string) => `Not started. ${audit} is there already and is not overwritten.`,
  nextExists: (files: string, out: string) => `halfdiopter propose ${files} --out ${out}`,
  noFiles: 'Not started. A file is not there.',
  unfit: (n: number) => (n === 1 ? 'Stopped. Nothing was written.' : `Stopped for ${n} reasons. Nothing was written.`),
  headerMissing: 'no row of headers was found',
  headerMissingDo: 'put a row of headers above the data, and export again',
  column: (label: string, header: string) => `${label}, column "${header}"`,
  nextIdentifiers: (files: string) => `halfdiopter deidentify ${files} --codebook ../codes.csv --out clean`,
  nextUnfit: 'mend the export, then halfdiopter propose again',
  nothing: 'Stopped. No file says whom and which eye its rows are of. Nothing was written.',
  nextNothing: 'give the columns headers such as "patient" and "eye", then halfdiopter propose again',
};
