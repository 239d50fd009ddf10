import { fieldWords, keys } from './plan-keys.js';
import { ofConditions, references } from './plan-references.js';
import {
  all,
  atLine,
  doThis,
  exampleIs,
  expected,
  expectedIs,
  knownAre,
  nearestIs,
  oneOf,
  type Told,
  told,
  write,
} from './plan-told.js';

const slipMessages = {
  tabs: 'a tab stands where lines are indented',
  colon: 'a colon followed by a blank, or at the end, needs quotation marks around the value',
  sign: 'the value starts with a sign that has a meaning of its own',
  'no-blank': 'a blank is missing behind the colon',
} as const;

const syntaxWords: Readonly<Record<string, readonly [message: string, advice: string]>> = {
  TAB_AS_INDENT: [slipMessages.tabs, 'use blanks, two for each level'],
  OPEN_QUOTE: ['a quotation mark is opened here and not closed', 'close it at the end of the value'],
  OPEN_BRACKET: ['a bracket or brace opened above this line is not closed', 'close it at the end of its line'],
  MISSING_CHAR: ['a bracket, brace or colon is missing', 'close what was opened on this line or before'],
  BAD_INDENT: ['this line does not stand under the lines it belongs to', 'indent it like its neighbours, with blanks'],
  MULTILINE_IMPLICIT_KEY: ['this line is not of the form key: value', 'write a key, a colon, a blank and a value'],
  BLOCK_AS_IMPLICIT_KEY: [
    'a value stands here, and keys below it',
    'indent the next line like this one, or remove the value',
  ],
  BLOCK_IN_FLOW: [
    'lines in braces cannot be mixed with indented ones',
    'write it all in braces, or all below one another',
  ],
  BAD_SCALAR_START: [slipMessages.sign, 'put quotation marks around the value'],
  BAD_DQ_ESCAPE: [
    'a backslash in double quotation marks has a meaning of its own',
    "use single quotation marks: 'a\\b'",
  ],
  MULTIPLE_DOCS: ['a second document starts here', 'keep one audit in one file; remove the line ---'],
  BAD_ALIAS: [slipMessages.sign, 'put quotation marks around the value'],
};

/** Faults of the writing, before anything is known of its meaning. */
const writing = {
  syntax: (code: string): Told => {
    const [message, advice] = syntaxWords[code] ?? [
      'this line cannot be read',
      'write a key, a colon, a blank and a value',
    ];
    return told(message, doThis(advice));
  },
  slip: (slip: keyof typeof slipMessages, mended: string, lines: readonly number[]): Told => {
    const others =
      lines.length > 1
        ? `, on ${lines.length} lines: ${lines.slice(0, 8).join(', ')}${lines.length > 8 ? ' …' : ''}`
        : '';
    const instead = slip === 'tabs' ? doThis('blanks instead of tabs, two for each level') : undefined;
    return told(slipMessages[slip] + others, instead, write(slip === 'tabs' ? mended : mended.trimStart()));
  },
  signAtStart: (mended: string | undefined): Told =>
    told(
      'the value starts with a sign that has a meaning of its own (&, * or !)',
      doThis('put quotation marks around the value; references and tags are not read here'),
      write(mended?.trimStart()),
    ),
  keyNotText: (): Told =>
    told('a list or mapping stands where a key is expected', expectedIs('a word, a colon, a blank and a value')),
  keyTwice: (key: string): Told => told(`"${key}" stands here twice`, doThis('keep one of them')),
} as const;

/** Faults of single keys and values. */
const single = {
  unknownKey: (key: string, near: string | undefined, known: readonly string[], sections: readonly string[]): Told =>
    told(
      `"${key}" is not known here`,
      nearestIs(near),
      sections.length > 0 ? doThis(`write it under ${oneOf(sections)}`) : undefined,
      knownAre(known),
    ),
  keyDoesNotFit: (key: string, field: string, known: readonly string[]): Told =>
    told(`"${key}" does not fit the field ${field}`, knownAre(known)),
  missingKey: (key: string, meaning: string | undefined, example: string | undefined): Told =>
    told(`"${key}" is missing`, expectedIs(meaning), exampleIs(example)),
  nothingHere: (key: string, form: string, example: string | undefined): Told =>
    told(`nothing stands behind "${key}"`, expectedIs(form), exampleIs(example)),
  wrongValue: (written: string, form: string, near: string | undefined, example: string | undefined): Told =>
    told(`‘${written}’ is not what is expected here`, nearestIs(near), expectedIs(form), exampleIs(example)),
  wrongKind: (kind: 'map' | 'list', form: string, example: string | undefined): Told =>
    told(
      `${kind === 'map' ? 'keys are' : 'a list is'} not what is expected here`,
      expectedIs(form),
      exampleIs(example),
    ),
  unfit: (form: string): Told => told('this does not fit together', expectedIs(form)),
  decimalComma: (digits: string): Told =>
    told(`"${digits}" is not known here`, doThis('write decimals with a point: a comma in braces begins the next key')),
  notAMapping: (): Told =>
    told(
      'this file holds no keys',
      expectedIs('format: 1, title and sources'),
      exampleIs('title: Cataract outcomes 2025'),
    ),
} as const;

/** Faults of sources, their columns and what stands beside them. */
const ofSources = {
  unknownField: (name: string, near: string | undefined, known: readonly string[]): Told =>
    told(`"${name}" is not one of our fields`, nearestIs(near), knownAre(known)),
  unfitField: (name: string, holds: string, fits: readonly string[], known: readonly string[]): Told =>
    told(
      `"${name}" does not stand on ${holds} rows`,
      doThis(`move it to rows that hold ${oneOf(fits)}`),
      knownAre(known),
    ),
  noBlockFor: (name: string, fits: readonly string[]): Told =>
    told(`no block of this source can hold "${name}"`, expectedIs(`a block that holds ${oneOf(fits)}`)),
  keyMissing: (name: string): Told => ({
    ...told(
      `the column of "${name}" is missing`,
      doThis('add it to columns, here or beside blocks'),
      exampleIs(`${name}: ${name === 'eye' ? 'Side' : 'Case'}`),
    ),
    lacks: name,
  }),
  keyCommented: (name: string, lines: readonly { line: number; text: string }[]): Told =>
    told(
      `"${name}" is open: ${lines.length === 1 ? 'its line is' : 'its lines are'} still a comment`,
      doThis(`take the # away from ${lines.length === 1 ? 'this line' : 'the one of these lines that holds'}`),
      ...lines.map(({ line, text }) => atLine(line, text)),
    ),
  noTime: (): Told => ({
    ...told(
      'nothing says when these examinations were',
      expectedIs('a column exam_date, days or visit; or visit: NAME beside holds'),
      exampleIs('exam_date: Date'),
    ),
    lacks: 'visit',
  }),
  needs: (name: string, wanted: readonly string[]): Told =>
    told(`"${name}" says nothing without ${all(wanted)}`, doThis(`map ${all(wanted)} as well, or leave ${name} out`)),
  alternatives: (name: string, other: string): Told =>
    told(
      `"${name}" and "${other}" are two forms of one measurement`,
      doThis('map one form, or put the other in a block of its own with its device'),
    ),
  holdsOrBlocks: (): Told =>
    told('a source needs holds, or blocks', expectedIs('surgery, eye, exam or prediction'), exampleIs('holds: exam')),
  besideBlocks: (key: string): Told =>
    told(`"${key}" cannot stand beside blocks`, doThis('write it inside the block it is meant for')),
  columnsMissing: (): Told =>
    told('"columns" is missing', expectedIs(expected.columns), exampleIs('columns: { patient: Case, eye: Side }')),
  onlyOn: (key: string, holds: string): Told =>
    told(`"${key}" has a meaning on ${holds} rows only`, doThis('remove it here')),
  covariateIsField: (name: string): Told =>
    told(`"${name}" is a name of ours and cannot name a covariate`, doThis('choose another name')),
  covariateName: (name: string): Told =>
    told(`"${name}" cannot name a covariate`, expectedIs('a letter first, then letters, digits, blanks, - and _')),
  covariateRows: (): Told =>
    told('covariates belong to eyes', expectedIs('covariates on rows that hold surgery or eye')),
  notConstant: (name: string): Told => told(`"${name}" cannot be the same for every row`, doThis('map a column')),
  notBlank: (name: string): Told => told(`a blank "${name}" can only be missing`, doThis('remove it from blank_means')),
  notMappedHere: (name: string): Told =>
    told(`"${name}" is not mapped here`, doThis('map its column, or remove this line')),
  valueOfField: (written: string, name: string, form: string): Told =>
    told(`‘${written}’ is no value of ${name}`, expectedIs(form)),
  outside: (path: string): Told =>
    told(
      `‘${path}’ leaves the folder of audit.yaml`,
      doThis('move the file beside audit.yaml, or write allow_outside: yes'),
    ),
  backslash: (mended: string): Told => told('paths are written with /', write(mended)),
  unknownFile: (path: string, near: string | undefined, known: readonly string[]): Told =>
    told(`‘${path}’ is not a file of sources`, nearestIs(near), knownAre(known)),
} as const;

/** English words: everything that is said of audit.yaml. */
export const plan = {
  schemaTitle: 'audit.yaml',
  schemaDescription: 'One outcomes audit: which files, what their columns are, and what is reported.',
  keys,
  expected,
  field: ({ name, unit }: { name: string; unit: string }): string =>
    (fieldWords[name] ?? name) + (unit ? `, ${unit}.` : '.'),
  ...writing,
  ...single,
  ...ofSources,
  ...references,
  ...ofConditions,
} as const;
