import { describe, expect, it } from 'vitest';
import { checkScreen } from '../../src/screens/check.js';
import { failureScreen } from '../../src/screens/failure.js';
import { screenWidth } from '../../src/screens/layout.js';
import {
  editedScreen,
  faultsScreen,
  lockedScreen,
  noAuditScreen,
  unwritableScreen,
} from '../../src/screens/not-started.js';
import { runScreen } from '../../src/screens/run.js';
import { stoppedScreen } from '../../src/screens/stopped.js';
import { noEyeScreen, traceScreen } from '../../src/screens/trace.js';
import { en } from '../../src/words/index.js';

// What the screens have to tell is settled in the project; the numbers here are invented.
const words = en.screens;

const runSummary = {
  title: 'Cataract outcomes 2025',
  basis: 'by predicted refraction',
  headlines: [
    { label: 'Operated', fraction: '', value: '421 eyes, 268 patients', interval: '', part: false },
    { label: 'Within ±0.50 D', fraction: '287 of 371', value: '77.4 %', interval: '(72.3 to 81.7)', part: false },
    { label: 'Mean error', fraction: '', value: '−0.06 D', interval: '(−0.10 to −0.01)', part: false },
    {
      label: 'Corrected 20/40 or better',
      fraction: '366 of 372',
      value: '98.4 %',
      interval: '(96.4 to 99.3)',
      part: false,
    },
    { label: 'Uncorrected, distance', fraction: '318 of 339', value: '93.8 %', interval: '(90.5 to 96.0)', part: true },
    {
      label: 'Complication during surgery',
      fraction: '4 of 421',
      value: '1.0 %',
      interval: '(0.3 to 2.4, exact)',
      part: false,
    },
  ],
  warnings: ['Follow-up is 88 % in one cohort and 99 % in the other: a difference may be one of who returned.'],
  former: {
    settings: ['quality.limits.axial_length'],
    moved: [{ label: 'Within ±0.50 D', from: '77.2', to: '77.4' }],
  },
  made: { tables: '9', figures: '8', review: '24', queries: '64' },
  seconds: '3.1',
  publication: 'reports/cataract-2025/publication/index.html',
  internal: 'reports/cataract-2025/internal/index.html',
  queries: 'reports/cataract-2025/internal/queries.csv',
} as const;

const checkSummary = {
  title: 'Cataract outcomes 2025',
  audit: 'audit.yaml',
  read: [{ file: 'lane.csv', rows: '1,233 rows', how: 'semicolons, decimal commas, day first, windows-1252' }],
  rows: { files: '4', rows: '2,911', used: '2,896', setAside: '15' },
  columns: { placed: '37', all: '39' },
  eyes: { eyes: '421', patients: '268', both: '153' },
  visit: { known: '386', due: '407', notYetDue: '12' },
  values: { setAside: '31', queries: '64', notes: '112' },
  setAside: Array.from({ length: 11 }, (_, at) => ({
    sentence: `rule number ${at} with a title that is longer than its column`,
    count: String(20 - at),
    places: [
      ['lane.csv row 88 "Axis of the cylinder" ‘195’', 'lane.csv row 88', 'lane.csv'],
      ['keratometer.csv rows 17, 1024', 'keratometer.csv row 17, …'],
    ],
  })),
  queries: [],
  list: 'reports/cataract-2025.check/queries.csv',
} as const;

const stopReason = {
  place: 'lane.csv, column "V c.c."',
  sentence: '0,8 can be decimal acuity or logMAR',
  expected: 'one scale for the bare numbers of a column',
  do: 'audit.yaml line 31, write one of',
  lines: ['cdva: { column: V c.c., numbers: decimal }', 'cdva: { column: V c.c., numbers: logmar }'],
  rule: 'acuity-scale-open',
} as const;
const stopped = {
  audit: 'audit.yaml',
  command: 'run',
  former: true,
  reasons: [stopReason],
  list: 'r.check/findings.csv',
} as const;

const fault = {
  line: 14,
  column: 5,
  message: '"colums" is not known here',
  advice: ['Nearest   columns', `Known     ${Array(20).fill('blank_means').join(', ')}`],
} as const;

const edited = Array.from(
  { length: 20 },
  (_, at) => ({ file: `publication/tables/${at}.md`, how: 'changed' }) as const,
);

const trace = {
  title: 'P0042 left, operated 2025, laser-assisted, lens A1',
  blocks: [
    {
      title: 'refraction at 3 months (day 92)',
      lines: [
        { label: 'lane.csv row 318', value: '', notes: ['"Sph" ‘-0,25’  "Cyl" ‘-0,75’'] },
        { label: 'at the cornea', value: '−0.99 +0.74 × 80', notes: ['F / (1 − 0.012 F), each meridian'] },
        {
          label: 'prediction error',
          value: '−0.215 D',
          notes: ['achieved − predicted; negative is more myopic than predicted', '= −0.625 − (−0.41)'],
        },
      ],
    },
  ],
} as const;

const screens: Readonly<Record<string, string>> = {
  run: runScreen(runSummary, words),
  'run without former report, queries or time': runScreen(
    { ...runSummary, former: undefined, queries: undefined, seconds: undefined, warnings: [] },
    words,
  ),
  check: checkScreen(checkSummary, words),
  stopped: stoppedScreen(stopped, words),
  'stopped by many': stoppedScreen({ ...stopped, reasons: Array(30).fill(stopReason) }, words),
  faults: faultsScreen('audit.yaml', words.toRun('audit.yaml'), [fault, fault], words),
  'one fault': faultsScreen('audit.yaml', words.toRun('audit.yaml'), [fault], words),
  edited: editedScreen('reports/cataract-2025', edited, 'audit.yaml', words),
  unwritable: unwritableScreen('reports', 'EROFS', words.toRun('audit.yaml'), words),
  locked: lockedScreen('reports/x', 'reports/.x.lock', words.toRun('audit.yaml'), words),
  'no audit': noAuditScreen('audit.yaml', 'missing', words),
  'a folder': noAuditScreen('exports', 'folder', words),
  unreadable: noAuditScreen('audit.yaml', 'unreadable', words),
  trace: traceScreen(trace, 'audit.yaml', words),
  'no such eye': noEyeScreen({ patient: 'P1', eye: 'left' }, 'audit.yaml', words),
  'our fault': failureScreen(['halfdiopter 0.1.0, Node 20', 'RangeError', 'at share wilson.js:12:3'], words),
};

describe.each(Object.entries(screens))('the screen "%s"', (_, text) => {
  it('fits a terminal of 78 columns, colourless and without trailing blanks', () => {
    for (const line of text.split('\n')) {
      expect(line.length, line).toBeLessThanOrEqual(screenWidth);
      expect(line).toBe(line.trimEnd());
    }
    expect(text).not.toContain('\u001b');
  });

  it('ends with one line that says what comes next', () => {
    expect(text.match(/^Next {3}/gm)).toHaveLength(1);
    expect(text).toMatch(/\n\nNext {3}[^\n]+(\n {7}[^\n]+)*\n$/);
  });
});

describe('the screen of a run', () => {
  it('sets each share beside its count and interval, in columns', () => {
    expect(screens.run).toContain(
      [
        '  Operated                     421 eyes, 268 patients',
        '  Within ±0.50 D               287 of 371  77.4 %   (72.3 to 81.7)',
        '  Mean error                               −0.06 D  (−0.10 to −0.01)',
      ].join('\n'),
    );
  });

  it('tells what moved since the former run, or that nothing did', () => {
    expect(screens.run).toContain('quality.limits.axial_length changed\n    Within ±0.50 D  77.2 → 77.4');
    const unmoved = runScreen({ ...runSummary, former: { settings: [], moved: [] } }, words);
    expect(unmoved).toContain(words.run.sameResults);
    expect(screens['run without former report, queries or time']).not.toContain(words.run.former);
  });
});

describe('the screen of a check', () => {
  it('lists the most frequent kinds and says how many more there are', () => {
    expect(screens.check).toContain('rule number 7');
    expect(screens.check).not.toContain('rule number 8');
    expect(screens.check).toContain('… 3 more kinds');
  });

  it('shows as much of a place as fits', () => {
    expect(screens.check).toMatch(/20 {2}lane\.csv row 88\n/);
  });
});

describe('the screen of a stop', () => {
  it('has one block a reason: where, what, what was expected, what to write, which rule', () => {
    expect(screens.stopped).toContain(
      [
        'lane.csv, column "V c.c.": 0,8 can be decimal acuity or logMAR',
        '  Expected   one scale for the bare numbers of a column',
        '  Do         audit.yaml line 31, write one of',
        '               cdva: { column: V c.c., numbers: decimal }',
        '               cdva: { column: V c.c., numbers: logmar }',
        'rule acuity-scale-open'.padStart(screenWidth),
      ].join('\n'),
    );
    expect(screens.stopped).toContain('1 reason to stop.');
    expect(screens['stopped by many']).toContain('30 reasons to stop.');
  });
});

describe('the screens of a start that failed', () => {
  it('name line, column, what is nearest and what is known', () => {
    expect(screens['one fault']).toContain(
      'audit.yaml line 14, column 5: "colums" is not known here\n  Nearest   columns\n',
    );
  });

  it('name changed files, and how many more', () => {
    expect(screens.edited).toContain('20 files in reports/cataract-2025 were changed by hand:');
    expect(screens.edited).toContain('… and 8 more');
    expect(screens.edited).toContain('halfdiopter run audit.yaml --replace');
  });

  it('say why a folder cannot be written, by the code of the file system where there are no words', () => {
    expect(screens.unwritable).toContain('the disk can only be read');
    expect(unwritableScreen('reports', 'EQUEER', 'x', words)).toContain('EQUEER');
  });
});

describe('the screen of a trace', () => {
  it('sets values beside their labels, and each note below', () => {
    expect(screens.trace).toContain(
      [
        '    lane.csv row 318',
        '      "Sph" ‘-0,25’ "Cyl" ‘-0,75’',
        '    at the cornea                     −0.99 +0.74 × 80',
        '      F / (1 − 0.012 F), each meridian',
        '    prediction error                  −0.215 D',
        '      achieved − predicted; negative is more myopic than predicted',
        '      = −0.625 − (−0.41)',
      ].join('\n'),
    );
  });
});
