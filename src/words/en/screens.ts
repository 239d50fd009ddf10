const counted = (count: string, one: string, many: string): string => `${count} ${count === '1' ? one : many}`;

/** English words: what the commands print. */
export const screens = {
  next: 'Next',
  toRun: (audit: string) => `halfdiopter run ${audit}`,
  toCheck: (audit: string) => `halfdiopter check ${audit}`,
  toReplace: (audit: string) => `halfdiopter run ${audit} --replace`,
  rule: (id: string) => `rule ${id}`,
  value: (written: string) => `‘${written}’`,
  row: (row: number) => `row ${row}`,
  rows: (rows: readonly string[], more: boolean) =>
    `${rows.length > 1 ? 'rows' : 'row'} ${rows.join(', ')}${more ? ', …' : ''}`,

  stages: {
    ingest: 'reading',
    harmonise: 'bringing to one form',
    qualify: 'judging values',
    derive: 'working out each eye',
    analyse: 'estimating',
    draw: 'drawing',
    render: 'drawing in pixels',
    list: 'listing eyes',
    publish: 'writing',
  } as Readonly<Record<string, string>>,

  run: {
    warnings: 'Read with care',
    made: (tables: string, figures: string, review: string, queries: string) =>
      [
        counted(tables, 'table', 'tables'),
        counted(figures, 'figure', 'figures'),
        counted(review, 'eye to look at again', 'eyes to look at again'),
        counted(queries, 'query', 'queries'),
      ].join(', '),
    seconds: (seconds: string) => `${seconds} s`,
    publication: 'no single eyes: may be sent',
    internal: 'stays in the clinic',
    former: 'Since the former run',
    sameResults: 'the six numbers are unchanged',
    settings: (keys: string) => `${keys} changed`,
    moved: (label: string, from: string, to: string) => `${label}  ${from} → ${to}`,
    next: (page: string) => `read ${page}`,
    nextQueries: (page: string, queries: string) => `read ${page}; answer ${queries}`,
  },

  check: {
    read: {
      rows: (rows: string) => `${rows} rows`,
      delimiters: { comma: 'commas', semicolon: 'semicolons', tab: 'tabs', pipe: 'pipes' },
      decimals: { point: 'decimal points', comma: 'decimal commas', none: '' },
      dateOrders: { 'day-first': 'day first', 'month-first': 'month first', 'year-first': 'year first', none: '' },
    },
    nothingPublished: (audit: string) => `${audit}, nothing published`,
    files: 'files',
    filesRead: (files: string, rows: string, used: string, setAside: string) =>
      `${files} read, ${rows} rows: ${used} used, ${setAside} set aside`,
    eyes: 'eyes',
    eyesOperated: (eyes: string, patients: string, both: string) =>
      `${eyes} operated, ${patients} patients, ${both} with both eyes`,
    visit: 'visit',
    visits: (known: string, due: string, notYetDue: string) =>
      `${known} of the ${due} that were due have an outcome · ${notYetDue} not yet due`,
    values: 'values',
    valuesJudged: (setAside: string, queries: string, notes: string) =>
      `${setAside} set aside, ${queries} to confirm, ${notes} noted`,
    columns: 'columns',
    columnsPlaced: (placed: string, all: string) => `${placed} of ${all} are used`,
    setAside: 'set aside',
    query: 'to confirm',
    count: 'count',
    firstPlaces: 'first places',
    more: (kinds: string) => `… ${counted(kinds, 'more kind', 'more kinds')}`,
    clear: 'Nothing stops the audit.',
    all: (path: string) => `All of it: ${path} (sorted by patient)`,
  },

  stopped: {
    title: 'Stopped. Nothing was published; the former report is untouched.',
    titleFirst: 'Stopped. Nothing was published.',
    titleCheck: 'Stopped. These would keep the audit from running.',
    expected: 'Expected',
    do: 'Do',
    place: (file: string, row: number, column: string) =>
      [file, row > 0 ? `row ${row}` : '', column === '' ? '' : `column "${column}"`]
        .filter((part) => part !== '')
        .join(', '),
    reasons: (count: string) => `${counted(count, 'reason', 'reasons')} to stop.`,
    others: (path: string) => `Other findings: ${path}`,
    next: (audit: string, command: string) => `mend the export or ${audit}, then ${command}`,
  },

  notStarted: {
    title: 'Not started.',
    unreadable: (audit: string) => `Not started. ${audit} cannot be read by this account.`,
    noFile: (audit: string) => `Not started. There is no file ${audit}.`,
    isFolder: (audit: string) => `Not started. ${audit} is a folder; the command takes the file audit.yaml.`,
    fault: (audit: string, line: number, column: number) => `${audit} line ${line}, column ${column}:`,
    faults: (audit: string, count: string) => `Not started. ${audit} has ${count} faults.`,
    nextFaults: (audit: string, command: string) => `mend ${audit}, then ${command}`,
    edited: (folder: string, count: number) =>
      count === 1
        ? `Not started. One file in ${folder} was changed by hand:`
        : `Not started. ${count} files in ${folder} were changed by hand:`,
    added: '(not written by a run)',
    moreFiles: (count: string) => `… and ${count} more`,
    why: 'Why',
    do: 'Do',
    saveEdited: 'move them elsewhere, or give the report another name in audit.yaml, or let the run replace them',
    unwritable: (folder: string) => `Not started. The folder ${folder} cannot be written.`,
    reasons: {
      EACCES: 'this account has no permission to write there',
      EPERM: 'this account has no permission to write there, or a program holds the folder open',
      EBUSY: 'a program holds the folder open',
      EROFS: 'the disk can only be read',
      ENOSPC: 'the disk is full',
      ENOTDIR: 'there is a file where the folder should be',
      ENOENT: 'the folder above it does not exist',
    } as Readonly<Record<string, string>>,
    otherReason: (code: string) => `the file system answers ${code}`,
    mendFolder: 'close what holds it, or name another folder under outputs in audit.yaml',
    system: (reason: string) => `Not done: ${reason}. A former report is untouched.`,
    locked: (folder: string) => `Not started. Another run is writing ${folder} at this moment.`,
    mendLock: (lock: string) => `wait for it to end. If none is running, remove ${lock}`,
  },

  trace: {
    noEye: (patient: string, eye: string) => `Patient ${patient} has no operated ${eye} eye in this audit.`,
    nextNoEye: (audit: string) => `halfdiopter check ${audit} lists the patients with something to confirm`,
    next: (audit: string) => `compare with the chart; halfdiopter check ${audit} lists what to confirm`,
  },

  interrupted: 'Interrupted. Nothing was published; a former report is untouched.',

  ourFault: {
    title: 'This is a mistake in halfdiopter, not in your data. Nothing was published.',
    report: 'Please report these lines. They hold no value and no name from your files:',
    next: 'send the lines above to whoever maintains your copy of halfdiopter',
  },

  help: {
    description: 'Outcomes audit of cataract surgery: de-identified CSV exports in, tables, charts and a report out.',
    flow: 'check, mend, check again; then run, read, answer the queries, run again.',
    audit: 'the audit.yaml that describes the audit',
    run: 'the whole audit, into one report folder',
    check: 'reads and judges the data, writes the query list and no outcome',
    trace: 'one eye from its raw cells to every number it enters',
    replace: 'replace a report although files of it were changed by hand',
    patient: 'patient code, as in the exports',
    eye: 'right or left',
    sides: 'It is right or left.',
    quiet: 'no progress and no summary',
    json: 'the summary on stdout as JSON, for programs',
    version: 'the version',
    help: 'this help',
  },

  usage: 'halfdiopter --help',
};
