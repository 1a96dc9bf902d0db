// What lies in the tarball, file by file.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import Ajv from 'ajv';
import { describe, expect, inject, test } from 'vitest';

const consumer = inject('consumer');
const installed = join(consumer, 'node_modules', 'settline');
const read = (...path: readonly string[]) => readFileSync(join(installed, ...path), 'utf8');
const filesUnder = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8', withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(installed, join(entry.parentPath, entry.name)));
const files = filesUnder(installed);
const ending = (end: string) => files.filter((name) => name.endsWith(end));

describe('the tarball', () => {
  test('holds what users need and nothing else', () => {
    expect(readdirSync(installed).sort()).toEqual([
      'CHANGELOG.md',
      'DEVELOPERS.md',
      'LICENSE',
      'README.md',
      'THIRD-PARTY-NOTICES.md',
      'dist',
      'docs',
      'examples',
      'job.schema.json',
      'package.json',
      'src',
    ]);
    const odd = /\.test\b|(?:^|\/)\.|metafile|\.js\.map$|\.cjs\.map$/;
    expect(files.filter((name) => odd.test(name))).toEqual([]);
    const isPage = (name: string) =>
      name.endsWith('.md') || /^docs\/pictures\/[a-z]+\.svg$/.test(name);
    expect(files.filter((name) => name.startsWith('docs') && !isPage(name))).toEqual([]);
  });

  test('leads from every declaration to its source', () => {
    expect(ending('.ts').filter(isSource).length).toBeGreaterThan(350);
    for (const end of ['.d.ts', '.d.cts']) {
      const declarations = ending(end).filter((name) => name.startsWith('dist'));
      expect(declarations).toHaveLength(ending('.ts').filter(isSource).length);
      for (const name of declarations) {
        const [, map = ''] = /sourceMappingURL=(\S+)\s*$/.exec(read(name)) ?? [];
        const at = join(dirname(name), map);
        const { sources } = JSON.parse(read(at)) as { sources: readonly string[] };
        expect(sources, at).toHaveLength(1);
        const source = join(dirname(at), sources[0] ?? '');
        expect(isSource(source) && files.includes(source), `${at}: ${source}`).toBe(true);
        const subject = name.slice(0, -end.length).replace(/^dist\/(?:cjs\/)?/, 'src/');
        expect(source).toBe(`${subject}.ts`);
      }
    }
  });

  test('names every package that is built in, with its licence', () => {
    const built = [...ending('.js'), ...ending('.cjs')].filter((name) => name.startsWith('dist'));
    const named = built.flatMap((name) =>
      [...read(name).matchAll(/^\/\/ .*node_modules\/((?:@[^/\s]+\/)?[^/\s]+)\//gm)].map(
        ([, found]) => found ?? '',
      ),
    );
    const notices = read('THIRD-PARTY-NOTICES.md');
    const titles = [...notices.matchAll(/^## (\S+) \d\S* \(.+\)$/gm)].map(([, name]) => name);
    expect(titles).toEqual([...new Set(named)].sort());
    expect(titles).toContain('clipper2-ts');
    const texts = notices.split(/^## /m).slice(1);
    for (const text of texts) expect(text).toMatch(/```text\n[\s\S]{400,}\n```/);
    expect(notices).toContain('Boost Software License');
  });

  test('installs no package that is built in and asked for by no declaration', () => {
    const { dependencies } = JSON.parse(read('package.json')) as {
      dependencies: Readonly<Record<string, string>>;
    };
    const wanted = [...ending('.js'), ...ending('.d.ts')]
      .filter((name) => name.startsWith('dist'))
      .flatMap((name) =>
        importsOf(read(name))
          .filter((from) => !from.startsWith('.'))
          .map((from) => from.split('/')[0]),
      );
    expect(Object.keys(dependencies).sort()).toEqual([...new Set(wanted)].sort());
  });

  test('has pages whose links end in the tarball', () => {
    const pages = ending('.md');
    const dead: string[] = [];
    let links = 0;
    for (const page of pages) {
      const text = read(page).replace(/```[\s\S]*?```/g, '');
      for (const [, to = ''] of text.matchAll(/\]\(([^)\s]+)\)/g)) {
        links += 1;
        // pages that the site writes from the sources
        if (/^(?:\.\.\/)?api\//.test(to)) continue;
        const [path = ''] = to.split('#');
        const isHere = path === '' || existsSync(join(installed, dirname(page), path));
        if (/^[a-z]+:/.test(to) || path.startsWith('/') || !isHere) dead.push(`${page}: ${to}`);
      }
    }
    expect(dead).toEqual([]);
    expect(links).toBeGreaterThan(25);
  });

  test('describes job files for editors', () => {
    const { $schema, ...schema } = JSON.parse(read('job.schema.json')) as Record<string, unknown>;
    expect($schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema['$id']).toBe('job.schema.json');
    const validate = new Ajv({ allErrors: true }).compile(schema);
    const sites = ending('.json').filter((name) => name.startsWith('examples'));
    expect(sites).toHaveLength(4);
    for (const site of sites) {
      const job = JSON.parse(read(site)) as { $schema: string };
      expect(validate(job), JSON.stringify(validate.errors)).toBe(true);
      expect(files).toContain(join(dirname(site), job.$schema));
    }
  });

  test('has an example that runs where it lies', () => {
    const script = join(installed, 'examples', 'job-sheet.mjs');
    const sheet = execFileSync('node', [script], { encoding: 'utf8' });
    expect(sheet).toContain('SUBGRADE');
  });
});

describe('an import loads few files', () => {
  /** Every file that a file of the build imports, and every package. */
  function loaded(name: string, seen = new Set<string>()): Set<string> {
    if (seen.has(name)) return seen;
    seen.add(name);
    for (const to of importsOf(read('dist', name))) {
      if (to.startsWith('.')) loaded(join(dirname(name), to), seen);
      else seen.add(to);
    }
    return seen;
  }

  test.each([
    ['units', 8, ['convert-units', 'decimal.js']],
    ['geometry', 9, []],
    ['build-up', 13, ['convert-units', 'decimal.js']],
    ['job', 48, ['convert-units', 'decimal.js']],
    ['sheet', 18, ['convert-units', 'decimal.js']],
    ['tables', 14, ['convert-units', 'decimal.js', 'papaparse']],
  ] as const)('settline/%s: no more than %i', (folder, most, packages) => {
    const names = [...loaded(`${folder}/index.js`)];
    const own = names.filter((name) => name.endsWith('.js') && name !== 'decimal.js');
    expect(own.length).toBeGreaterThan(3);
    expect(own.length).toBeLessThanOrEqual(most);
    expect(names.filter((name) => !own.includes(name)).sort()).toEqual([...packages]);
  });
});

function isSource(name: string): boolean {
  return name.startsWith('src/') && name.endsWith('.ts');
}

/** What a file imports and passes on: each statement, or the last line of one, ends in its name. */
function importsOf(text: string): string[] {
  const ends = /^(?:(?:import|export|\})[^'"\n]* from |import )['"]([^'"\n]+)['"];$/gm;
  return [...text.matchAll(ends)].map(([, from = '']) => from);
}
