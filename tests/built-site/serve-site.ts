import { readFile, stat } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';

/** The folder that `npm run docs` writes. */
export const SITE = join(import.meta.dirname, '..', '..', 'site');

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.md': 'text/markdown; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.woff2': 'font/woff2',
};

/** A site that is served from a folder of a server, as a plain static server would. */
export interface ServedSite {
  readonly address: string;
  readonly close: () => Promise<void>;
}

async function fileAt(path: string): Promise<string> {
  return (await stat(path)).isDirectory() ? join(path, 'index.html') : path;
}

/** Serves the built site from a sub-path, which it was not told when it was built. */
export async function serveSite(under: string): Promise<ServedSite> {
  const server: Server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://here');
    const name = normalize(decodeURIComponent(pathname));
    const send = async () => {
      if (!name.startsWith(under)) throw new Error('outside the site');
      const path = await fileAt(join(SITE, name.slice(under.length)));
      const body = await readFile(path);
      const type = TYPES[extname(path)] ?? 'application/octet-stream';
      response.writeHead(200, { 'content-type': type }).end(body);
    };
    const refuse = async () => {
      const body = await readFile(join(SITE, '404.html'));
      response.writeHead(404, { 'content-type': TYPES['.html'] }).end(body);
    };
    send()
      .catch(refuse)
      .catch(() => response.writeHead(404).end('not found'));
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const found = server.address();
  if (found === null || typeof found === 'string') throw new Error('the server has no port');
  return {
    address: `http://127.0.0.1:${found.port}${under}`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => {
          resolve();
        });
      }),
  };
}
