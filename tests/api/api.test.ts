// What the entry points export, against the report that is kept in tests/api.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { API_FOLDER, apiReports, namesIn } from '../../.config/api-report.mjs';

const root = join(import.meta.dirname, '..', '..');
execFileSync('node', [join(root, '.config', 'build.mjs'), 'declarations']);
const reports = apiReports();

function kept(folder: string): ReadonlyMap<string, string> {
  const names = readdirSync(folder).filter((name) => name.endsWith('.txt'));
  return new Map(
    names.map((name) => [name.replace(/\.txt$/, ''), readFileSync(join(folder, name), 'utf8')]),
  );
}

/** Names that were added, removed or declared in another way, and that a text does not mention. */
function untold(
  before: ReadonlyMap<string, string>,
  after: ReadonlyMap<string, string>,
  told: string,
): string[] {
  const words = new Set(told.match(/\w+/g));
  const names = [...new Set([...before.keys(), ...after.keys()])];
  return names.filter((name) => before.get(name) !== after.get(name) && !words.has(name));
}

describe('the report of public names and types', () => {
  test('is that of the declarations: npm run api writes it anew', () => {
    expect(Object.fromEntries(kept(API_FOLDER))).toEqual(Object.fromEntries(reports));
  });

  test('a change since the last release stands in the changelog', () => {
    const released = join(API_FOLDER, 'released');
    const changelog = readFileSync(join(root, 'CHANGELOG.md'), 'utf8');
    const [, unreleased = ''] = /## \[Unreleased\]([\s\S]*?)(?=\n## \[|$)/.exec(changelog) ?? [];
    // before the first release everything is new
    const before = existsSync(released) ? namesIn(kept(released)) : namesIn(reports);
    expect(untold(before, namesIn(reports), unreleased)).toEqual([]);
  });

  test('a name that nobody told is found', () => {
    const before = new Map([
      ['lifts', 'function lifts(): A'],
      ['gone', 'function gone(): A'],
    ]);
    const after = new Map([
      ['lifts', 'function lifts(): B'],
      ['fresh', 'function fresh(): A'],
    ]);
    expect(untold(before, after, '`fresh` is new')).toEqual(['lifts', 'gone']);
    expect(untold(before, after, '`fresh`, `lifts`; `gone` is removed')).toEqual([]);
    expect(
      namesIn(new Map([['a', '// lifts\nfunction lifts(): A\n\n// b\nconst b: 1\n']])),
    ).toEqual(
      new Map([
        ['lifts', 'function lifts(): A'],
        ['b', 'const b: 1'],
      ]),
    );
  });
});

describe('fields keep to the table of names in DEVELOPERS.md', () => {
  const fields = [...reports.values()].flatMap((report) =>
    [...report.matchAll(/readonly (\w+)(\??): (.+);$/gm)].map(
      ([line, name = '', mark, type = '']) => ({
        line,
        name,
        isOptional: mark === '?',
        type,
      }),
    ),
  );
  const typesOf = (pattern: RegExp) =>
    [...new Set(fields.filter(({ name }) => pattern.test(name)).map(({ type }) => type))].sort();

  test('there are many', () => {
    expect(fields.length).toBeGreaterThan(1000);
  });

  test('a verdict is one of three words', () => {
    const words = typesOf(/^verdict$/).filter((type) => !/^Verdict(?: \| null)?$/.test(type));
    for (const type of words) expect(type).toMatch(/^(?:'(?:pass|unclear|fail)'|null| \| )+$/);
  });

  test('a note is a sentence, notes are several, cautions what to have checked', () => {
    expect(typesOf(/^notes$/)).toEqual(['readonly string[]']);
    expect(typesOf(/^cautions$/)).toEqual(['readonly Caution[]']);
    expect(typesOf(/^note$/)).toEqual(['SystemText', 'string', 'string | null']);
  });

  test('limits are minimum and maximum; short forms stay out', () => {
    const short = fields.filter(({ name }) => /^(?:min|lower|upper)(?:[A-Z]|$)/.test(name));
    expect(short.map(({ line }) => line)).toEqual([]);
  });

  test('what is left of an order is a surplus', () => {
    const other = fields.filter(({ name }) => /^(?:leftover|spare|rest)(?:[A-Z]|$)/.test(name));
    expect(other.map(({ line }) => line)).toEqual([]);
    expect(typesOf(/^surplusShare$/)).toEqual(['number']);
  });

  test('the table names words that fields use', () => {
    const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
    const [, table = ''] = /## Names of fields([\s\S]*?)\n## /.exec(page) ?? [];
    const named = [...table.matchAll(/`([a-z]\w+)`/g)].map(([, word = '']) => word);
    const used = new Set([...reports.values()].join('\n').match(/\w+/g));
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter((word) => !used.has(word) && word !== 'null')).toEqual([]);
  });
});
