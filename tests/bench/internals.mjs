// Modules of the sources, for what only their insides show: bundled as the build does, and loaded.
import { build } from 'esbuild';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = join(root, 'node_modules', '.cache', 'settline', 'bench');

/** Loads what some code exports; `replaced` has modules of the sources with another text. */
export async function loadInternals(name, code, replaced = {}) {
  mkdirSync(folder, { recursive: true });
  const outfile = join(folder, `${name}.mjs`);
  const stand = {
    name: 'stand-ins',
    setup({ onLoad }) {
      for (const [path, contents] of Object.entries(replaced)) {
        onLoad({ filter: new RegExp(`/src/${path}$`) }, () => ({ contents, loader: 'ts' }));
      }
    },
  };
  await build({
    stdin: { contents: code, resolveDir: root, loader: 'ts' },
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'es2022',
    plugins: [stand],
    logLevel: 'silent',
  });
  return import(pathToFileURL(outfile).href);
}
