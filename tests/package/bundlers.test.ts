// Vite and webpack, with a worker of the app beside it; React; files imported by their address.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { build as viteBuild } from 'vite';
import webpack from 'webpack';

const consumer = inject('consumer');
const installed = join(consumer, 'node_modules', 'settline');
const root = join(import.meta.dirname, '..', '..');
const app = join(consumer, 'app');

const run = (args: readonly string[]): string =>
  execFileSync('node', [...args], { cwd: consumer, encoding: 'utf8' });

beforeAll(() => {
  mkdirSync(app, { recursive: true });
  writeFileSync(
    join(app, 'planner.js'),
    "import { servePlans } from 'settline/many-jobs';\nservePlans(self);\n",
  );
  writeFileSync(
    join(app, 'app.js'),
    `import { planJob, renderJobSheet } from 'settline/job';
import { webWorkers } from 'settline/many-jobs';
import job from '../cedar-court.json';
globalThis.workers = webWorkers(() => new Worker(new URL('./planner.js', import.meta.url), { type: 'module' }));
console.log(renderJobSheet(planJob(job), { system: 'us' }));
`,
  );
});

/** The files of a bundle: the one of the app runs, the one of the worker has the planner and waits. */
function expectBundle(folder: string, isApp: (name: string) => boolean): void {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.m?js$/.test(name),
  );
  const main = files.find(isApp) ?? '';
  const address = pathToFileURL(join(folder, main)).href;
  const page = `globalThis.self = { location: { href: 'https://localhost/' } }; await import('${address}');`;
  expect(run(['--input-type=module', '-e', page])).toContain('SUBGRADE');
  const texts = files.filter((name) => name !== main).map((name) => read(join(folder, name)));
  const worker = texts.filter((text) => text.includes('settline-plan'));
  expect(worker.length).toBeGreaterThan(0);
  for (const text of [read(join(folder, main)), ...texts]) {
    expect(/tinypool|["'`]node:|ZodError/.exec(text)).toBeNull();
  }
}

const read = (file: string) => readFileSync(file, 'utf8');

describe('an app with a worker', () => {
  test('Vite builds it', async () => {
    const outDir = join(consumer, 'vite');
    await viteBuild({
      root: app,
      configFile: false,
      logLevel: 'error',
      worker: { format: 'es' },
      build: {
        outDir,
        emptyOutDir: true,
        rolldownOptions: { input: join(app, 'app.js') },
        modulePreload: false,
      },
    });
    expectBundle(outDir, (name) => name.includes('app-'));
  });

  test('webpack builds it without a warning', async () => {
    const path = join(consumer, 'webpack');
    const stats = await new Promise<webpack.Stats | undefined>((resolve, reject) => {
      webpack(
        {
          mode: 'production',
          context: app,
          entry: './app.js',
          output: { path, publicPath: '', filename: 'app.js' },
          // as it is built, without the half minute of the minifier
          optimization: { minimize: false },
          performance: { hints: false },
        },
        (error, result) => {
          if (error === null) resolve(result);
          else reject(error);
        },
      );
    });
    const { errors, warnings } = stats?.toJson({ all: false, errors: true, warnings: true }) ?? {};
    expect([errors, warnings]).toEqual([[], []]);
    expectBundle(path, (name) => name === 'app.js');
  });
});

test('React renders what the library prints', () => {
  writeFileSync(
    join(consumer, 'react.mjs'),
    `import { createRequire } from 'node:module';
     import { formatLength, length } from 'settline/units';
     const require = createRequire(${JSON.stringify(join(root, 'package.json'))});
     const { createElement } = require('react');
     const { renderToStaticMarkup } = require('react-dom/server');
     const depth = length('7 ft 3 5/8 in');
     const words = formatLength(depth, { as: 'ft-in', nearest: '1/8 in' });
     console.log(renderToStaticMarkup(createElement('td', { title: String(depth) }, words, ' ', depth.to('mm').toString())));`,
  );
  expect(run(['react.mjs']).trim()).toBe(
    '<td title="7&#x27; 3 5/8&quot;">7&#x27; 3 5/8&quot; 2225.675</td>',
  );
});

describe('files imported by their address', () => {
  const modules = readdirSync(join(installed, 'dist'), {
    recursive: true,
    encoding: 'utf8',
  }).filter((name) => name.endsWith('.js') && !name.startsWith('cjs'));

  test('name each file that they import in full, and no package but the dependencies', () => {
    const { dependencies } = createRequire(join(consumer, 'package.json'))(
      'settline/package.json',
    ) as { dependencies: Readonly<Record<string, string>> };
    expect(modules.length).toBeGreaterThan(60);
    let count = 0;
    for (const name of modules) {
      const ends = /^(?:(?:import|export|\})[^'"\n]* from |import )['"]([^'"\n]+)['"];$/gm;
      for (const [, from = ''] of read(join(installed, 'dist', name)).matchAll(ends)) {
        count += 1;
        if (from.startsWith('.')) expect(from, name).toMatch(/\.js$/);
        else expect(Object.keys(dependencies), name).toContain(from);
      }
    }
    expect(count).toBeGreaterThan(200);
  });

  test('run', () => {
    const address = pathToFileURL(join(installed, 'dist', 'units', 'index.js')).href;
    writeFileSync(
      join(consumer, 'address.mjs'),
      `import { length } from '${address}';\nconsole.log(length('1 in').to('mm').toString());\n`,
    );
    expect(run(['address.mjs']).trim()).toBe('25.4');
  });
});
