/** English words: what `propose` writes into audit.yaml, asks, and says. */

const listed = (all: readonly string[], most = 6): string =>
  all.length > most ? `${all.slice(0, most).join(', ')} …` : all.join(', ');
const rowsText = (rows: readonly number[]): string => `row${rows.length === 1 ? '' : 's'} ${rows.join(', ')}`;
const percentOf = (n: number, of: number): string => `${Math.floor((100 * n) / of)} %`;

const delimiters = { comma: 'commas', semicolon: 'semicolons', tab: 'tabs', pipe: 'pipes' } as const;
const decimals = { point: 'decimal points', comma: 'decimal commas', none: '' } as const;
const dateOrders = {
  'day-first': 'day first',
  'month-first': 'month first',
  'year-first': 'year first',
  none: '',
} as const;

const how = (
  delimiter: keyof typeof delimiters,
  decimal: keyof typeof decimals,
  dateOrder: keyof typeof dateOrders,
): string => [delimiters[delimiter], decimals[decimal], dateOrders[dateOrder]].filter((part) => part !== '').join(', ');

/** Names of fields as sentences use them. */
const named = (term: string): string => term.replaceAll('_', ' ');

/** What a choice that was taken means, by its value. */
const meanings: Readonly<Record<string, string>> = {
  right: 'the first code is the right eye',
  left: 'the first code is the left eye',
  outcome: 'every eye counts as operated, and its measurements as those after surgery',
  before: 'every eye counts as operated, and its measurements as those before surgery',
  '0': 'blank counts as zero',
  none: 'blank counts as none',
  missing: 'blank stays missing',
};

/** What a file is without. */
const lackTexts = {
  patient: 'no column of this file says which patient a row is of',
  eye: 'no column of this file says which eye a row is of',
  anything: 'no column of this file beside patient and eye can be used',
} as const;

/** What to do about a choice that is open. */
const openAdvice = {
  'date-order': 'take one of these lines; until then a run stops here',
  'eye-code': 'take one of these lines; until then a run stops here',
  notation: 'take one of these lines; until then a run stops here',
  'acuity-scale': 'add numbers: decimal, or numbers: logmar; until then a run stops here',
  'blank-sphere': 'take away the # if a blank cell means zero',
  'blank-complication': 'take away the # if a blank cell means that there was none',
  'clock-view': 'take one of these lines, or leave it out',
  'residual-form': 'take one of these lines, and the axis, or leave both out',
  'primary-formula': 'take one of these lines; until then a run stops here',
  operated: 'add the list of operations; without it no eye is counted',
} as const;

export const propose = {
  basis: {
    header: 'by its header',
    'part of header': 'by a part of its header',
    neighbours: 'by its neighbours',
    cells: 'by its cells alone',
  },
  behind: (samples: string, basis: string) => `${samples} · ${basis}`,
  samples: {
    empty: 'no values',
    codes: (n: number) => `${n} different codes`,
    years: (years: readonly number[]) =>
      years.length === 0
        ? 'dates'
        : years.length === 1
          ? `dates of ${years[0]}`
          : `dates from ${years[0]} to ${years.at(-1)}`,
    range: (low: string, high: string) => (low === high ? `always ${low}` : `${low} to ${high}`),
    words: (first: readonly string[], all: number) =>
      `${first.join(', ')}${all > first.length ? ` … ${all} different` : ''}`,
  },

  readAs: (
    rows: number,
    delimiter: keyof typeof delimiters,
    decimal: keyof typeof decimals,
    dateOrder: keyof typeof dateOrders,
    encoding: string,
  ) => `${rows} rows, ${how(delimiter, decimal, dateOrder)}, ${encoding}`,
  how,
  columnNumber: (n: number) => `column ${n}`,
  headerRow: (above: number) => `${above} row${above === 1 ? '' : 's'} above the headers`,
  missingWords: 'words of this file for "no value"',
  leftLine: (header: string, reason: string) => `left: "${header}": ${reason}`,
  emptied: 'take the {} away with the first # below',
  carriedAlong: 'not used; take the # away to carry them along',
  lacks: (what: 'patient' | 'eye' | 'anything', headers: readonly string[]) =>
    `Not used: ${lackTexts[what]}. Its headers: ${listed(headers, 20)}`,
  noKey: (what: 'patient' | 'eye' | 'anything') => lackTexts[what],
  afterSurgery: 'after surgery',
  title: (years: readonly number[]) => {
    const [first, last] = [years[0], years.at(-1)];
    if (first === undefined) return 'Cataract outcomes';
    if (first === last) return `Cataract outcomes ${first}`;
    return `Cataract outcomes ${first} ${last === first + 1 ? 'and' : 'to'} ${last}`;
  },
  visitExams: (n: number) => (n === 0 ? 'named by a header or label' : `${n} examinations`),

  outside: 'files lie outside this folder',
  noOperations: 'No file lists operations: add one, or the audit has no eyes.',

  like: {
    asBefore: 'as before',
    carried: 'mapped as in the former audit',
    anew: 'not in the former audit; looked at anew',
    fresh: 'new; the former audit does not use it',
    columnGone: 'this column of the former audit is gone',
    columnFresh: (header: string, term: string | undefined) =>
      `new: "${header}"${term === undefined ? '' : `, which looks like ${term}`}`,
    wordsFresh: (about: string, all: readonly string[]) => `new in ${named(about)}, and in no list: ${listed(all, 12)}`,
    wordsGone: (about: string, all: readonly string[]) =>
      `listed for ${named(about)}, and in no file any more: ${listed(all, 12)}`,
    filesGone: (all: readonly string[]) => `Of the former audit no file came for ${listed(all)}.`,
    periodMoved: (years: number) => `moved on by ${years} year${years === 1 ? '' : 's'}, to the last operation found`,
    periodKept: 'kept as it was: no operation was found behind its end',
    dataUntil: "of the former audit, moved on; write the new export's date",
    head: (files: number) => [
      `Carried over from a former audit for ${files} file${files === 1 ? '' : 's'}. Look at the lines marked "doubt:".`,
    ],
  },

  left: {
    unknown: () => 'neither its header nor its cells say what it is',
    'free text': () => 'free text is not read',
    unlike: (term: string) => `headed like ${named(term)}, but its cells do not look like it`,
    second: (term: string) => `another column gives ${named(term)} already`,
    'not needed': (term: string) => `${named(term)} is not needed`,
    'which acuity': () => 'an acuity; map it to cdva if it is corrected, to udva if it is not',
    'which axis': () => 'an axis; nothing says of what',
    alone: (term: string) => `${named(term)} says nothing without the columns that belong to it`,
    'other form': (term: string) => `${named(term)} is another form of what is mapped already`,
    repeated: () => 'the same predictions as in the list of operations',
    'no operation': (term: string) => `${named(term)} belongs to an operation, and rows of this file are none`,
  } satisfies Readonly<Record<string, (term: string) => string>>,

  doubts: {
    byCells: 'its header says nothing; taken by its cells alone',
    against: (header: string, cells: string) =>
      `headed like ${named(header)}, but its cells look like ${named(cells)}; the cells were believed`,
    partOfHeader: (term: string) => `only a part of the header says ${named(term)}`,
    someUnlike: (cells: number, all: number) => `${cells} of ${all} cells do not look like it`,
    unknownWords: (all: readonly string[]) =>
      `not understood: ${listed(all)}; rows with such a cell are not used for it`,
    rareWords: (all: readonly string[]) =>
      `not listed, because so few rows have it: ${listed(all)}; it will be asked about`,
    noScale: 'no scale (decimal, logMAR, letters) holds these numbers; the run will stop and ask',
    sexOpen: (a: string, b: string) =>
      `nothing says which of ${a} and ${b} is F; take one of these lines, or leave it out`,
    mixedSigns: (sign: string, n: number, of: number, rows: readonly number[]) =>
      `${n} of ${of} cylinders are ${sign} and the others are not (${rowsText(rows)}${n > rows.length ? ' …' : ''}); each is read with its own sign`,
    shifted: (rows: readonly number[]) =>
      `${rowsText(rows)}: sphere, cylinder and axis look moved by one column; mend the export, or the row is misread`,
    blankLensCylinder: (n: number) =>
      `${n} blank cells, always without an axis too: taken for lenses that are not toric`,
    assumedVisit: (visit: string) =>
      `nothing says when this was measured; taken as ${visit === 'before' ? 'before' : 'after'} surgery`,
    openVisit: 'nothing says whether before or after surgery; take one of these lines; until then a run stops here',
    openEye:
      'the date is of both eyes, and nothing says which was operated; take these lines for each eye that was; until then a run stops here',
    otherCodes: (codes: readonly string[]) => `not known, and counted as "other": ${listed(codes)}`,
    unknownLabels: (labels: readonly string[]) =>
      `visit words that say no time: ${listed(labels)}; rows with them belong to no visit unless their date does`,
    rareYear: (year: number, n: number, of: number) =>
      `only ${n} of ${of} operations lie in ${year}; if that is a slip of a date, narrow the period`,
    outcome: 'which visit is the outcome is yours to say; of a list the first that an eye has',
    decimalOpen: (examples: string) => `‘${examples}’ may be thousands or decimals: take one of these lines`,
    decimalMixed: (examples: string) =>
      `both decimal marks occur (‘${examples}’): take one of these lines; the run stops as long as it is open`,
  },

  found: {
    dateOrder: 'every date can be read day first or month first',
    eyeCode: (a: string, b: string) => `the eyes are called ${a} and ${b}`,
    notation: (n: number) => `${n} cylinders carry no sign`,
    acuityScale: (n: number, low: number, high: number) =>
      `${n} bare numbers from ${low} to ${high} can be decimal acuity or logMAR`,
    blankSphere: (n: number, of: number) => `${n} of ${of} rows have a cylinder and no sphere`,
    blankCylinder: (n: number, of: number) => `${n} of ${of} rows have a sphere and no cylinder`,
    blankComplication: (n: number, of: number) => `${n} of ${of} rows have no complication written down`,
    clock: 'positions are hours of a clock, and nothing says from where it was read',
    residual: 'nothing says in which plane, and with which sign, this cylinder was predicted',
    primaryFormula: (formulas: readonly string[]) =>
      `${formulas.length} formulas predict (${listed(formulas)}), and nothing says which counts`,
    operated: 'no file says which eyes were operated, or when',
  },

  evidence: {
    cornea: (n: number, of: number) => `fits the keratometer's axis in ${percentOf(n, of)} of ${of} eyes`,
    equivalent: (n: number, of: number) =>
      `gives the spherical equivalent beside it in ${percentOf(n, of)} of ${of} rows`,
    aim: (n: number, of: number) => `comes nearer to the refraction aimed at in ${percentOf(n, of)} of ${of} rows`,
    weekends: (n: number, of: number) => `puts ${n} of ${of} dates on a weekend`,
    otherFiles: 'the other files are written so',
    correction: (scale: 'decimal' | 'logmar', n: number, of: number) =>
      `corrected is the ${scale === 'decimal' ? 'larger' : 'smaller'} number in ${percentOf(n, of)} of ${of} rows`,
    median: 'half of the corrected eyes then see well',
    eyeCode: (n: number, of: number) => `fits ${n} of ${of} patients of whom other files know one eye`,
    zeros: (zeros: number, neighbours: number) =>
      `zero is written ${zeros} times, its neighbours ±0.25 ${neighbours} times`,
    withoutAxis: (n: number, of: number) => `${n} of the ${of} have no axis either`,
    neverNone: 'no cell says that there was none',
    onePerEye: (n: number) => `each of the ${n} rows is another eye`,
  },

  taken: (found: string, value: string, evidence: string) =>
    `${found}; taken: ${meanings[value] ?? value}${evidence === '' ? '' : ` (${evidence})`}`,
  open: (kind: keyof typeof openAdvice, found: string) => `${found}; ${openAdvice[kind]}`,
  wordInRows: (word: string, rows: number) => `${word} (${rows === 1 ? '1 row' : `${rows} rows`})`,

  sections: {
    head: (files: number) => [
      `Proposed from ${files} file${files === 1 ? '' : 's'}. Left of a colon stands our name, right of it your header.`,
      'A line that begins with # says nothing until you take the # away. Look at the lines marked "doubt:".',
    ],
    period: 'years of the operations found; both included',
    values: 'Our value, and the spellings that mean it. Two lines with one meaning are joined by hand.',
    complications: 'Named outcome, and the codes that count as it.',
    visits: 'Days after surgery, as found in the exports.',
    noVisits: 'No days after surgery were found: one visit, days 28 to 120, is the outcome.',
    rest: 'What no export can tell. Each line shows the default, or an example where there is none.',
  },

  unknown: {
    title: 'stands on the report',
    name: 'folder of the report; from the title where left out',
    dataUntil: "the export's date; the latest date in any file where left out",
    vertex: 'mm; 12 where left out',
    lane: 'm; as recorded where left out',
    device: 'a code of yours; the file itself where left out',
    dayOfSurgery: 'or before, or after: what an examination on that day is',
    eyesPerPatient: 'or first, right, left, random',
    exclude: 'none where left out',
    cohorts: 'groups to compare; one group where left out',
    policyVertex: 'vertex distance where none is recorded, mm',
    tables: 'also docx, tex',
    smallCells: 'counts below this are hidden; 5 for what is shared',
  },
};
