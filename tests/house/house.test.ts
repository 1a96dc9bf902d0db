// Rules of the house that a reader would otherwise have to watch over.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, dirname } from 'node:path';
import { describe, expect, test } from 'vitest';
import ts from 'typescript';
import { ERROR_CODES, SOURCES } from 'settline';
import * as publicTables from 'settline/sources';
import { READING_REASONS } from 'settline/units';
import { filesUnder, src } from './source-files.js';

const root = join(import.meta.dirname, '..', '..');

const files = filesUnder(src, '.ts').map((path) => ({
  path: relative(src, path),
  text: readFileSync(path, 'utf8'),
}));
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  exports: Record<string, unknown>;
  sideEffects: boolean;
  dependencies: Record<string, string>;
  engines: { node: string };
};

/** Folders by floor; the files beside them stand on the first floor. */
const FLOORS: Readonly<Record<string, number>> = {
  errors: 0.6,
  units: 1,
  input: 1.5,
  sources: 2,
  geometry: 2,
  'build-up': 3,
  'string-line': 3,
  stakes: 3,
  grading: 3,
  levelling: 3,
  outline: 3,
  volumes: 3,
  materials: 3,
  site: 3,
  haul: 3,
  checks: 3,
  structure: 3,
  ground: 3,
  formulas: 2.7,
  job: 4,
  sheet: 4.5,
  tables: 4.5,
  'many-jobs': 4.5,
  'node-threads': 4.7,
  drawing: 5,
};
/** Files beside the folders, by floor. */
const BESIDE: Readonly<Record<string, number>> = {
  'errors.ts': 0,
  'attempt.ts': 0.5,
  'nearest-name.ts': 0.5,
  'shown-text.ts': -1,
  'once.ts': -1,
  'capital.ts': -1,
  'invariant.ts': -1,
  'verdict.ts': 1.6,
  'working.ts': 2.5,
  'reference-quantity.ts': 2.5,
  'library-version.ts': 0,
  'index.ts': 9,
};
/** Folders that import another one of their floor, and why. */
const ALLOWED: ReadonlyMap<string, string> = new Map([
  ['string-line build-up', 'depths are those of a build-up'],
  ['string-line grading', 'a string runs along a grade line'],
  ['levelling build-up', 'rods are read on the surfaces of a build-up'],
  ['volumes outline', 'a dig is a volume over an outline'],
  ['site volumes', 'spoil and old paving have the states of soil'],
  ['site outline', 'zones and roots lie in the outline of a dig'],
  ['ground site', 'a storm fills an open dig'],
  ['haul volumes', 'loads are those of a volume'],
  ['materials outline', 'borders and fabric follow an outline'],
  ['materials volumes', 'orders are those of a volume'],
]);

function floorOf(path: string): number {
  const folder = path.includes('/') ? path.slice(0, path.indexOf('/')) : undefined;
  const floor = folder === undefined ? BESIDE[path] : FLOORS[folder];
  expect(floor, `${path} has no floor`).toBeDefined();
  return floor ?? Number.NaN;
}

function importsOf(path: string, text: string): string[] {
  return [...text.matchAll(/from '(\.[^']+)'/g)].map(([, to]) =>
    relative(src, join(src, dirname(path), to ?? '')).replace(/\.js$/, '.ts'),
  );
}

/** Every file that a file imports, directly or through others. */
function filesReachedFrom(path: string, reached = new Set<string>()): string[] {
  const text = files.find((file) => file.path === path)?.text ?? '';
  for (const target of importsOf(path, text)) {
    if (reached.has(target)) continue;
    reached.add(target);
    filesReachedFrom(target, reached);
  }
  return [...reached];
}

describe('imports run down the floors', () => {
  test('no folder may import another one of its floor and does not', () => {
    const pairs = files.flatMap(({ path, text }) =>
      importsOf(path, text).map((to) => `${path.split('/')[0]} ${to.split('/')[0]}`),
    );
    expect([...ALLOWED.keys()].filter((pair) => !pairs.includes(pair))).toEqual([]);
  });

  test.each(files)('$path', ({ path, text }) => {
    const folder = path.split('/')[0];
    for (const target of importsOf(path, text)) {
      const targetFolder = target.split('/')[0];
      if (path.includes('/') && folder === targetFolder) continue;
      if (ALLOWED.has(`${folder} ${targetFolder}`)) continue;
      expect(floorOf(target), `${path} imports ${target}`).toBeLessThan(floorOf(path));
    }
  });
});

describe('every public function has a whole doc comment', () => {
  const functions = publicFunctions();

  test('there are some', () => {
    expect(functions.length).toBeGreaterThan(35);
  });

  test.each(functions)('$name', ({ name, comment, file }) => {
    expect(comment, `${name} in ${file} has no comment`).not.toBe('');
    expect(comment, `${name} has no example`).toContain('@example');
    const example = comment.slice(comment.indexOf('@example'));
    expect(example, `the example of ${name} asserts nothing`).toContain('//=>');
    for (const [, source] of comment.matchAll(/@source ([\w-]+)/g)) {
      expect(SOURCES).toHaveProperty(source ?? '');
    }
    for (const [, code] of comment.matchAll(/`([A-Z][A-Z_]+[A-Z])`/g)) {
      if (/^(?:JSON)$/.test(code ?? '') || (code ?? '') in publicTables) continue;
      const known = { ...ERROR_CODES, ...READING_REASONS };
      expect(known, `${name} names a code that does not exist`).toHaveProperty(code ?? '');
    }
  });
});

test('every error code is thrown somewhere; the compiler takes no other', () => {
  const thrown = new Set<string>();
  for (const { path, text } of files) {
    if (path === 'errors.ts') continue;
    for (const [, code] of text.matchAll(/'([A-Z][A-Z_]+[A-Z])'/g)) thrown.add(code ?? '');
    for (const [, code] of text.matchAll(/^ {2}([A-Z][A-Z_]+): '/gm)) thrown.add(code ?? '');
  }
  const unused = Object.keys(ERROR_CODES).filter((code) => !thrown.has(code));
  expect(unused).toEqual([]);
});

test('every reason why text cannot be read is given somewhere', () => {
  const readers = files.filter(({ path }) => path !== 'units/reading-reasons.ts');
  const text = readers.map((file) => file.text).join('\n');
  expect(Object.keys(READING_REASONS).filter((reason) => !text.includes(`'${reason}'`))).toEqual(
    [],
  );
});

test('every error code is documented', () => {
  const page = readFileSync(join(root, 'docs', 'reference', 'error-codes.md'), 'utf8');
  for (const [code, meaning] of Object.entries({ ...ERROR_CODES, ...READING_REASONS })) {
    expect(page.replace(/ +/g, ' ')).toContain(`| \`${code}\` | ${meaning} |`);
  }
});

test('reference values are data in sources, not literals in formulas', () => {
  for (const { path, text } of files) {
    if (path.startsWith('sources/')) continue;
    expect(text, path).not.toMatch(/\b(?:printed\()/);
  }
});

/** The one subpath that the root leaves out: nothing of it may come into a browser. */
const ONLY_IN_NODE = './node-threads';

describe('the package', () => {
  const folders = readdirSync(src, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(src, entry.name, 'index.ts')))
    .map(({ name }) => `./${name}`)
    .sort();

  test('exports each concept folder, the root, the schema of job files and its manifest', () => {
    expect(Object.keys(manifest.exports).sort()).toEqual(
      ['.', './job.schema.json', './package.json', ...folders].sort(),
    );
  });

  test('exports everything from its root too', async () => {
    const root = new Set(Object.keys(await import('settline')));
    for (const folder of folders) {
      if (folder === ONLY_IN_NODE) continue;
      const own = Object.keys((await import(join(src, folder, 'index.ts'))) as object);
      expect(own.filter((name) => !root.has(name))).toEqual([]);
    }
  });

  test('keeps what only Node has out of its root and of every other folder', () => {
    for (const { path, text } of files) {
      if (path.startsWith('node-threads/')) continue;
      const code = text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
      expect(code, path).not.toMatch(/node-threads\/|import\(|import\.meta|'node:/);
    }
    expect(filesReachedFrom('index.ts').filter((file) => file.startsWith('node-'))).toEqual([]);
  });

  test('is free of side effects and pins the engine', () => {
    expect(manifest.sideEffects).toBe(false);
    expect(manifest.engines.node).toBe('>=20.19');
    expect(manifest.dependencies['convert-units']).toBe('3.0.0-beta.8');
  });

  test('has no clock, no randomness, no globals, no escape from the compiler', () => {
    for (const { path, text } of files) {
      const code = text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
      expect(code, path).not.toMatch(
        /\bas any\b|@ts-ignore|@ts-nocheck|Math\.random|Date\.now|new Date|\bIntl\b|localeCompare|toLocale|globalThis|export default|export \*/,
      );
    }
  });

  test('properties say their number of cases by runs(), so that a deep run takes more', () => {
    const tests = filesUnder(join(root, 'tests'), '.ts');
    const bare = tests.filter((path) => /\b[n]umRuns\b/.test(readFileSync(path, 'utf8')));
    expect(bare.map((path) => relative(root, path))).toEqual([join('tests', 'runs.ts')]);
  });

  /** All that kernels may import from outside: text and codes. */
  const WITHOUT_DECIMALS = new Set(['errors.ts', 'nearest-name.ts', 'shown-text.ts']);

  test('geometry is floats alone: no decimals, no quantities, no readers of the ledger', () => {
    const kernels = files.filter(({ path }) => path.startsWith('geometry/'));
    expect(kernels.length).toBeGreaterThan(30);
    expect(filesReachedFrom('geometry/index.ts')).toContain('errors.ts');
    for (const { path, text } of kernels) {
      expect(text, path).not.toMatch(/'(?:decimal\.js|convert-units|zod)'/);
      const others = filesReachedFrom(path).filter((file) => !file.startsWith('geometry/'));
      expect(
        others.filter((file) => !WITHOUT_DECIMALS.has(file)),
        path,
      ).toEqual([]);
    }
  });

  test('a bulk kernel is exported by geometry alone', () => {
    for (const { path, text } of files) {
      if (!/^[^/]+\/index\.ts$/.test(path) || path === 'geometry/index.ts') continue;
      expect(text, path).not.toContain("'../geometry/");
    }
  });

  test('only the job pulls in the schema package', () => {
    for (const { path, text } of files) {
      if (!path.startsWith('job/')) expect(text, path).not.toContain("'zod'");
    }
  });
});

test('no test is switched off or left alone', () => {
  for (const path of filesUnder(join(root, 'tests'), '.test.ts')) {
    const text = readFileSync(path, 'utf8');
    expect(text, path).not.toMatch(new RegExp(`\\b(?:test|it|describe)\\.(?:skip|only|todo)\\b`));
  }
});

interface PublicFunction {
  readonly name: string;
  readonly file: string;
  readonly comment: string;
}

function publicFunctions(): PublicFunction[] {
  const found: PublicFunction[] = [];
  for (const { path, text } of files.filter((file) => /^[^/]+\/index\.ts$/.test(file.path))) {
    const index = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
    for (const statement of index.statements) {
      if (!ts.isExportDeclaration(statement) || statement.isTypeOnly) continue;
      const clause = statement.exportClause;
      if (clause === undefined || !ts.isNamedExports(clause)) continue;
      const module = (statement.moduleSpecifier as ts.StringLiteral).text;
      const target = join(dirname(path), module).replace(/\.js$/, '.ts');
      for (const element of clause.elements) {
        if (element.isTypeOnly) continue;
        const comment = functionComment(target, element.name.text);
        if (comment !== undefined) found.push({ name: element.name.text, file: target, comment });
      }
    }
  }
  return found;
}

/** The doc comment of a function; undefined for what is no function. */
function functionComment(path: string, name: string): string | undefined {
  const text = files.find((file) => file.path === path)?.text ?? '';
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const declared = source.statements.filter(
    (statement) => ts.isFunctionDeclaration(statement) && statement.name?.text === name,
  );
  const [first] = declared;
  if (first === undefined) return undefined;
  return text.slice(first.getFullStart(), first.getStart()).trim();
}
