// Follows every link of the built pages, to files and to places in pages, and refuses dead ones.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { SITE } from './paths.mjs';

const ELSEWHERE = /^(?:[a-z][a-z0-9+.-]*:|\/\/)/i;

const decode = (text) =>
  decodeURIComponent(
    text.replaceAll('&amp;', '&').replaceAll('&quot;', '"').replaceAll('&#39;', "'"),
  );

/** The ids and addresses of a page. */
function readPage(path) {
  const text = readFileSync(path, 'utf8');
  const all = (pattern) => [...text.matchAll(pattern)].map(([, found]) => found);
  return {
    ids: new Set(all(/\sid="([^"]+)"/g).map(decode)),
    links: all(/<(?:a|img|link|script)\b[^>]*?\s(?:href|src)="([^"]*)"/g),
  };
}

/** The file that an address leads to. */
function fileOf(from, address) {
  const path = resolve(dirname(from), address);
  return existsSync(path) && statSync(path).isDirectory() ? join(path, 'index.html') : path;
}

/** Faults of one page. */
function faultsOf(from, page, pages) {
  return page.links.flatMap((link) => {
    if (ELSEWHERE.test(link)) return [];
    const [address, fragment = ''] = link.split('#').map(decode);
    const file = address.split('?')[0] === '' ? from : fileOf(from, address.split('?')[0]);
    if (link.startsWith('/') || !existsSync(file)) return [`${link} leads nowhere`];
    const target = pages.get(file);
    if (fragment === '' || target === undefined || target.ids.has(fragment)) return [];
    return [`${link}: no such place in the page`];
  });
}

/** Throws with every dead link. */
export function checkLinks() {
  const names = readdirSync(SITE, { recursive: true, encoding: 'utf8' });
  const paths = names.filter((name) => name.endsWith('.html')).map((name) => join(SITE, name));
  const pages = new Map(paths.map((path) => [path, readPage(path)]));
  const faults = [...pages]
    .filter(([path]) => path !== join(SITE, '404.html'))
    .flatMap(([path, page]) =>
      faultsOf(path, page, pages).map((fault) => `${relative(SITE, path)}: ${fault}`),
    );
  if (faults.length === 0) return;
  const rest = faults.length > 40 ? `\n... and ${faults.length - 40} more` : '';
  throw new Error(`${faults.length} dead links:\n${faults.slice(0, 40).join('\n')}${rest}`);
}
