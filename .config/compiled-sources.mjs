// The sources as plain JavaScript, so that Node itself imports them in tests: one pass of the
// compiler over all of them, where Vitest would transform and hand over each module by itself.
import { createHash } from 'node:crypto';
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const src = join(root, 'src');

/** A folder for this checkout, since `node_modules` may be shared. */
const key = createHash('sha256').update(root).digest('hex').slice(0, 8);
const compiled = join(root, 'node_modules', '.cache', 'settline', `sources-${key}`);

async function compile() {
  rmSync(compiled, { recursive: true, force: true });
  await build({
    entryPoints: readdirSync(src, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => join(src, name)),
    outdir: compiled,
    outbase: src,
    format: 'esm',
    target: 'node20',
    sourcemap: 'inline',
    logLevel: 'warning',
  });
  writeFileSync(join(compiled, 'package.json'), '{ "type": "module" }');
}

/** Takes what a test imports from `src` out of the compiled sources. */
export async function compiledSources() {
  await compile();
  return {
    name: 'compiled-sources',
    enforce: 'pre',
    resolveId(id, importer) {
      const path =
        id.startsWith('.') && importer !== undefined ? resolve(dirname(importer), id) : id;
      if (!path.startsWith(src + sep)) return null;
      return join(compiled, path.slice(src.length).replace(/\.ts$/, '.js'));
    },
  };
}
