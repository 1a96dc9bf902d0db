import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { livePages } from '../../.config/site/live-pages.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const out = join(root, 'node_modules/.cache/settline/elements-page');

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
};

/** Builds the page of the elements and returns where it lies. */
export async function buildPage(outDir = out): Promise<string> {
  await build({
    ...livePages,
    configFile: false,
    root: join(root, 'tests/live/page'),
    base: './',
    logLevel: 'warn',
    build: { ...livePages.build, outDir, emptyOutDir: true },
  });
  return outDir;
}

/** Serves a folder under a sub-path, as a site beside others is. */
export async function serve(
  folder: string,
  base = '/some/where/',
): Promise<{ url: string; server: Server }> {
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://host').pathname);
    const name = path.startsWith(base) ? normalize(path.slice(base.length)) : undefined;
    try {
      if (name === undefined || name.startsWith('..')) throw new Error('not in the folder');
      const file =
        name === '' || name === '.' || name.endsWith('/') ? join(name, 'index.html') : name;
      const body = readFileSync(join(folder, file));
      response.writeHead(200, {
        'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
      });
      response.end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return { url: `http://127.0.0.1:${port}${base}`, server };
}
