/** English words: the written record beside de-identified copies. */
export const deidentifyRecord = {
  title: 'De-identification record',
  madeBy: (version: string) =>
    `Made by halfdiopter ${version}. This record names columns and counts; it holds no cell of any file.`,
  duty: {
    title: 'What remains to be done by people',
    lines: [
      'De-identification is the duty of whoever holds the data, under the law of the place. What is recorded here is a net, not a guarantee: read through the copies before they leave the clinic.',
      'The code book leads back to every patient. It is no part of these copies and stays in the clinic, apart from them.',
      'The list followed also asks that nobody who hands the copies on knows of a way to name a person in them, alone or together with other information.',
    ],
    order:
      'The copies give each operation its rank in the year of surgery (surgery_order). A rank is finer than a year: whether it may be given is a decision for your data protection officer. Without it: `--no-order`. Operations of one day stand in a random order.',
    noOrder: 'The rank of the operations in their year was left out (`--no-order`).',
  },
  list: {
    title: 'The list followed',
    source:
      'Safe Harbor, 45 CFR 164.514(b)(2)(i), identifiers of the individual and of relatives, employers and household.',
    head: ['item', 'identifier', 'what was done here'],
    columns: (n: number) => (n === 0 ? 'none recognised' : `${n} ${n === 1 ? 'column' : 'columns'} left out`),
    items: {
      A: 'names',
      B: 'places smaller than a state: street, town, county, post code',
      C: 'dates but for the year; ages over 89',
      'D, E, F, N, O': 'telephone and fax numbers, e-mail addresses, web and network addresses',
      'G to M':
        'numbers: social security, record, health plan, account, certificate and licence, vehicle, device and serial',
      P: 'fingerprints, voice prints',
      Q: 'photographs of the face and the like',
      R: 'any other number, characteristic or code of one person',
    },
    dates: (births: number, dates: number, parts: number) =>
      [
        `${dates} ${dates === 1 ? 'column' : 'columns'} of dates turned into days from surgery or the year of surgery`,
        `${births} of births turned into age at surgery, or left out`,
        ...(parts > 0 ? [`${parts} of months or days left out`] : []),
        'ages from 90 are 90+',
      ].join('; '),
    codes: (patients: number) =>
      `${patients} patients by random codes, not derived from anything about them (45 CFR 164.514(c))`,
    numbers: (n: number) =>
      n === 0
        ? 'no column but the patient’s own number'
        : `${n} ${n === 1 ? 'column' : 'columns'} left out beside the patient’s own number`,
    biometric: 'an export of numbers holds none; columns headed so are left out',
    other: (n: number, cells: number, word: string) =>
      `${n === 0 ? 'no column' : `${n} ${n === 1 ? 'column' : 'columns'}`} of free text, unknown words or running numbers left out; ${cells} single cells replaced by “${word}”`,
  },
  files: {
    title: 'Files',
    renamed: (place: number) => `The name of the file, number ${place} of those given, looked like a person’s.`,
    rows: (rows: number, ragged: number, passedOver: number) =>
      `${rows} rows copied; ${ragged} with too few or too many cells not copied; ${passedOver} rows of headers, titles, blanks or sums not copied. Rows are sorted by code: the order of an export tells who came first.`,
    nobody: (rows: number) => `${rows} rows name no patient.`,
    unreadable: (cells: number) => `${cells} cells hold a character that the encoding does not know.`,
    withoutSurgery: (dates: number) =>
      `${dates} dates belong to an eye without an operation in these files: they have no days, and a year only where no eye of the patient was operated.`,
    head: ['column', 'became', 'how', 'cells', 'replaced'],
    leftOut: (why: string) => `left out: ${why}`,
    nothing: '(nothing)',
    same: '(as it stood)',
    merged: '(used for the age)',
  },
  kept: {
    title: 'Words that were kept',
    lines: [
      'Codes and labels stand as they were where they are short codes, words of the trade, or stand with three patients or more. Look at them: a name that several patients share (of a place, or of a member of staff) is one that no program can tell from a label.',
    ],
    none: 'No column holds words.',
    reviewed: 'Free text that was declared as read through',
    labels: 'Codes and labels',
  },
};
