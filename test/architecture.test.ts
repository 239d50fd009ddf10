import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path/posix';
import { describe, expect, it } from 'vitest';
import { parseAst } from 'vitest/node';

interface Import {
  /** A package, or a path from the root of the project. */
  to: string;
  /** `import()` at run time, which loads nothing before it is needed. */
  lazy: boolean;
  /** Types alone: gone at run time. */
  type: boolean;
}

interface Module {
  path: string;
  imports: readonly Import[];
  /** Names that are read as they stand, and the members read of them: `Math`, `Math.random`, `name.localeCompare`. */
  names: readonly string[];
}

type Node = { type?: string } & Readonly<Record<string, unknown>>;

const root = new URL('../', import.meta.url);

function filesBelow(folder: string): string[] {
  const names = readdirSync(new URL(folder, root), { recursive: true, encoding: 'utf8' });
  return names.filter((name) => name.endsWith('.ts')).map((name) => `${folder}${name}`);
}

const sources = new Map(
  ['src/', 'pipeline/', 'sample-exports/generator/'].flatMap(filesBelow).map((path) => {
    return [path, moduleOf(path, readFileSync(new URL(path, root), 'utf8'))];
  }),
);
const modules = [...sources.values()];
const inside = (folder: string): readonly Module[] => modules.filter(({ path }) => path.startsWith(folder));

function moduleOf(path: string, text: string): Module {
  const imports: Import[] = [];
  const names: string[] = [];
  const options = { lang: 'ts' } as Parameters<typeof parseAst>[1];
  visit(parseAst(text, options) as unknown as Node);
  return { path, imports, names };

  function visit(node: Node): void {
    const source = (node.source as Node | undefined)?.value;
    if (typeof source === 'string') imports.push(importOf(path, source, node));
    if (node.type === 'Identifier') names.push(node.name as string);
    if (node.type === 'MemberExpression') {
      const member = node.property as Node;
      names.push(`${(node.object as Node).name ?? ''}.${member.name ?? member.value ?? ''}`);
    }
    for (const [key, value] of Object.entries(node)) if (!isLabel(node, key)) visitAll(value);
  }

  function visitAll(value: unknown): void {
    if (Array.isArray(value)) value.forEach(visitAll);
    else if (typeof value === 'object' && value !== null) visit(value as Node);
  }
}

/** The name behind a dot, or before a colon, is not read as it stands. */
function isLabel(node: Node, key: string): boolean {
  return (key === 'property' || key === 'key') && node.computed !== true;
}

function importOf(from: string, source: string, node: Node): Import {
  const to = source.startsWith('.') ? normalize(join(dirname(from), source)).replace(/\.js$/, '.ts') : source;
  const type = node.importKind === 'type' || node.exportKind === 'type' || node.type === 'TSImportType';
  return { to, lazy: node.type === 'ImportExpression', type };
}

/** 'file → what it imports', for every import that the test does not allow. */
function found(of: readonly Module[], isFault: (one: Import, path: string) => boolean): readonly string[] {
  return of.flatMap(({ path, imports }) =>
    imports.filter((one) => isFault(one, path)).map(({ to }) => `${path} → ${to}`),
  );
}

const goesTo = (...folders: readonly string[]) => {
  return ({ to }: Import): boolean => folders.some((folder) => to.startsWith(folder));
};

describe('reading a file', () => {
  const text = `import { a } from './b.js'; import type { C } from '../c.js'; export * from 'd';
    // import 'no'
    let when: Date = 'fetch'; const e = { console: names.localeCompare(Math.random()) };
    const f = () => import('g'); type H = import('./h.js').H;`;
  const { imports, names } = moduleOf('src/x/a.ts', text);

  it('finds every form of import', () => {
    expect(imports).toEqual([
      { to: 'src/x/b.ts', lazy: false, type: false },
      { to: 'src/c.ts', lazy: false, type: true },
      { to: 'd', lazy: false, type: false },
      { to: 'g', lazy: true, type: false },
      { to: 'src/x/h.ts', lazy: false, type: true },
    ]);
  });

  it('finds names and members that are read, not labels and not words', () => {
    expect(names).toEqual(expect.arrayContaining(['Date', 'names.localeCompare', 'Math.random']));
    expect(names).not.toContain('console');
    expect(names).not.toContain('fetch');
  });
});

describe('imports point one way', () => {
  it('reads every file, and every import is a file or a package', () => {
    expect(inside('src/').length).toBeGreaterThan(150);
    expect(inside('pipeline/').length).toBeGreaterThan(50);
    const own = /^(?:src|pipeline|sample-exports|test)\//;
    expect(found(modules, ({ to }) => own.test(to) && !sources.has(to))).toEqual([]);
  });

  it('src/ imports neither a stage nor the sample', () => {
    expect(found(inside('src/'), goesTo('pipeline/', 'sample-exports/', 'test/'))).toEqual([]);
  });

  it('nothing that runs imports a test or the sample', () => {
    expect(found(inside('pipeline/'), goesTo('sample-exports/', 'test/'))).toEqual([]);
  });

  it('the generator of the sample imports its own files and Node alone', () => {
    const folder = 'sample-exports/generator/';
    expect(found(inside(folder), ({ to }) => !to.startsWith(folder) && !to.startsWith('node:'))).toEqual([]);
  });

  it('formulas, tables and charts stand where they may', () => {
    const formulas = ['src/optics/', 'src/acuity/', 'src/statistics/'];
    for (const folder of formulas) {
      const own = ['src/units.ts', folder, 'simple-statistics', 'jstat'];
      expect(
        found(inside(folder), (one) => !goesTo(...own)(one)),
        folder,
      ).toEqual([]);
    }
    const stages = ['src/statistics/', 'src/analysis/', 'src/eligibility/', 'src/visits/', 'src/intake/', 'src/rules/'];
    for (const folder of ['src/tables/', 'src/charts/', 'src/page/', 'src/text/']) {
      expect(found(inside(folder), goesTo(...stages)), folder).toEqual([]);
    }
  });
});

describe('stages', () => {
  const isStage = (path: string): boolean => /^pipeline\/\d-[a-z]+\.ts$/.test(path);
  const stages = modules.filter(({ path }) => isStage(path));
  /** The stage a file belongs to: its own name, or the folder named after it. */
  const stageOf = (path: string): string | undefined => {
    const name = /^pipeline\/(?:\d-)?([a-z]+)[./]/.exec(path)?.[1];
    return stages.some((stage) => stage.path.endsWith(`-${name}.ts`)) ? name : undefined;
  };

  it('are numbered in the order of work', () => {
    const names = stages.map(({ path }) => path.slice('pipeline/'.length, -'.ts'.length)).sort();
    expect(names).toEqual([
      '1-ingest',
      '2-harmonise',
      '3-qualify',
      '4-derive',
      '5-analyse',
      '6-draw',
      '6-tabulate',
      '7-publish',
    ]);
  });

  it('never import one another, nor what belongs to another', () => {
    const foreign = ({ to }: Import, path: string): boolean => {
      const [own, other] = [stageOf(path), stageOf(to)];
      return own !== undefined && other !== undefined && own !== other;
    };
    expect(found(modules, foreign)).toEqual([]);
  });

  it('are put in order by run.ts alone', () => {
    const calls = found(modules, ({ to, type }) => isStage(to) && !type).map((line) => line.split(' → ')[0]);
    expect(new Set(calls)).toEqual(new Set(['pipeline/run.ts']));
    const ofRun = sources.get('pipeline/run.ts')?.imports.filter(({ to }) => isStage(to));
    expect(ofRun?.map(({ to }) => to)).toEqual(stages.map(({ path }) => path).sort());
  });
});

describe('src/ is pure', () => {
  const globals = ['fetch', 'console', 'process', 'Date', 'Intl', 'globalThis', 'performance', 'require'];
  const timers = ['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask'];
  const members = /^Math\.random$|\.(?:localeCompare|toLocale[A-Z]\w*)$/;

  it('touches no file, clock, terminal or network', () => {
    expect(found(inside('src/'), goesTo('node:'))).toEqual([]);
    const touched = inside('src/').flatMap(({ path, names }) =>
      names.filter((name) => [...globals, ...timers].includes(name)).map((name) => `${path}: ${name}`),
    );
    expect(touched).toEqual([]);
  });

  it('gives the same result in every place and at every time, and so do the stages', () => {
    const places = [...inside('src/'), ...inside('pipeline/')].flatMap(({ path, names }) =>
      names.filter((name) => members.test(name) || ['Date', 'Intl'].includes(name)).map((name) => `${path}: ${name}`),
    );
    // Progress on a terminal is the one thing that may look at a clock.
    expect(places.filter((place) => !place.startsWith('pipeline/terminal.ts: '))).toEqual([]);
  });
});

describe('packages', () => {
  const heavy = [
    'vega',
    'vega-lite',
    '@resvg/resvg-js',
    'iconv-lite',
    'fontkit',
    'docx',
    'fflate',
    'pdfkit',
    'svg-to-pdfkit',
    'sharp',
  ];

  it.each(heavy)('%s is imported in one file, when it is needed', (name) => {
    const users = modules.flatMap(({ path, imports }) =>
      imports.filter(({ to, type }) => to === name && !type).map(({ lazy }) => ({ path, lazy })),
    );
    expect(users).toEqual([{ path: expect.stringMatching(/^pipeline\//), lazy: true }]);
  });
});

describe('import cycles', () => {
  /** Files from which the search comes back to one that it has not left, types included. */
  function cycles(): readonly string[] {
    const left = new Set<string>();
    const met: string[] = [];
    const follow = (path: string, way: readonly string[]): void => {
      if (way.includes(path)) met.push([...way.slice(way.indexOf(path)), path].join(' → '));
      if (left.has(path) || way.includes(path)) return;
      for (const { to } of sources.get(path)?.imports ?? []) follow(to, [...way, path]);
      left.add(path);
    };
    for (const { path } of modules) follow(path, []);
    return met;
  }

  it('there are none, types included', () => {
    expect(cycles()).toEqual([]);
  });
});
