// Rules for sources and for the checks against what others published.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import ts from 'typescript';
import * as tables from 'settline/sources';
import { PUBLICATIONS } from '../published/publications.js';

const { SOURCES } = tables;
const root = join(import.meta.dirname, '..', '..');
const read = (...path: readonly string[]): string => readFileSync(join(root, ...path), 'utf8');

function textsUnder(folder: string): { path: string; text: string }[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return textsUnder(path);
    return entry.name.endsWith('.ts') ? [{ path, text: read(path) }] : [];
  });
}

const checks = textsUnder('tests/published').filter(({ path }) => path.endsWith('.test.ts'));
const quoted = (text: string, id: string): boolean =>
  new RegExp(`(?:'${id}'|@source ${id}\\b|\`${id}\`)`).test(text);

/** Calls of a file by the name that is called, those of `name(...)(...)` too. */
function callsOf(text: string, names: readonly string[]): ts.CallExpression[] {
  const found: ts.CallExpression[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && names.includes(node.expression.getText(file))) {
      found.push(node);
    }
    ts.forEachChild(node, visit);
  };
  const file = ts.createSourceFile('check.ts', text, ts.ScriptTarget.Latest, true);
  visit(file);
  return found;
}

describe.each(checks)('$path', ({ text }) => {
  test('holds published checks and no others', () => {
    expect(text).not.toMatch(/\b(?:test|it)\b[^\n]*from 'vitest'/);
    expect(callsOf(text, ['test', 'it', 'test.each', 'it.each'])).toEqual([]);
    expect(callsOf(text, ['published', 'publishedEach']).length).toBeGreaterThan(0);
  });

  test('gives source, section and kind with every check', () => {
    for (const call of callsOf(text, ['published', 'publishedEach'])) {
      const [citation] = call.arguments;
      if (citation === undefined || !ts.isObjectLiteralExpression(citation)) continue;
      const names = citation.properties.map((one) => one.name?.getText() ?? '').sort();
      expect(names, call.getText().slice(0, 80)).toEqual(['kind', 'section', 'source']);
    }
  });

  test('holds nothing without a publication', () => {
    expect(text).not.toMatch(/formula map|job map|invented|survey case/i);
    expect(text).not.toMatch(/source: '(?:derived|common-practice|memory)'/);
  });
});

describe('a source', () => {
  const cited = checks.map(({ text }) => text).join('\n');
  const library = textsUnder('src')
    .filter(({ path }) => !path.startsWith(join('src', 'sources', 'catalogue')))
    .map(({ text }) => text)
    .join('\n');

  test('of the library is cited there or in a published check', () => {
    const idle = Object.keys(SOURCES).filter((id) => !quoted(library, id) && !quoted(cited, id));
    expect(idle).toEqual([]);
  });

  test('of the checks is cited in one', () => {
    expect(Object.keys(PUBLICATIONS).filter((id) => !quoted(cited, id))).toEqual([]);
  });

  test('has its status in one place', () => {
    const twice = Object.keys(PUBLICATIONS).filter((id) => id in SOURCES);
    expect(twice).toEqual([]);
    const titles = new Set(Object.values(SOURCES).map(({ title }): string => title));
    const known = Object.values(PUBLICATIONS).filter(({ title }) => titles.has(title));
    expect(known).toEqual([]);
  });

  test('is looked up for its status, which no figure repeats', () => {
    expect(figuresWith('status', tables)).toEqual([]);
    expect(figuresWith('value', tables).length).toBeGreaterThan(200);
    for (const { path, text } of textsUnder('src/sources')) {
      const isFigures = !/(?:catalogue|source)[\w-]*\.ts$/.test(path);
      if (isFigures) expect(text, path).not.toMatch(/\bstatus:/);
    }
  });
});

/** Every figure of the tables (what names a source) that has a field. */
function figuresWith(field: string, value: unknown): unknown[] {
  if (typeof value !== 'object' || value === null) return [];
  const inner = Object.values(value).flatMap((one) => figuresWith(field, one));
  return 'source' in value && field in value ? [value, ...inner] : inner;
}
