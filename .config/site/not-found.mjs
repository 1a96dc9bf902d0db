// The page of a server for addresses that lead nowhere. It may be shown in any folder, so it asks for no
// other file; where it lies below a folder of the site, its link leads up to the site.
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { SITE } from './paths.mjs';

const STYLES = `:root{color-scheme:light dark}
body{background:light-dark(#fdfcf9,#1a1a17);color:light-dark(#24221d,#ece8de);font:17px/1.6 system-ui,sans-serif;margin:0 auto;max-width:40em;padding:10vh 24px}
h1{border-bottom:2px solid light-dark(#b3401a,#e98a5c);font-family:Georgia,serif;padding-bottom:12px}
a{color:light-dark(#93350f,#f0a37c)}`;

/** The folder of the site that an address lies in: what stands before the first folder of its own. */
const script = (folders) => `
const [before] = location.pathname.split(/\\/(?:${folders.join('|')})(?=\\/|$)/);
const home = before === location.pathname ? before.replace(/[^/]*$/, '') : before + '/';
document.querySelector('a').href = home + 'index.html';`;

/** Writes the page in place of the generator's. */
export function writeNotFound() {
  const folders = readdirSync(SITE, { withFileTypes: true })
    .filter((one) => one.isDirectory())
    .map(({ name }) => name);
  const text = `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta name="description" content="No page of the settline documentation has this address.">
<title>No such page | settline</title>
<style>${STYLES}</style>
</head>
<body>
<main>
<h1>No such page</h1>
<p>No page of this site has this address. <a href="./index.html">Start from the first page</a>, and search from there.</p>
</main>
<script>${script(folders)}
</script>
</body>
</html>
`;
  writeFileSync(join(SITE, '404.html'), text);
}
