// Makes a built site independent of the folder that it is served from: the stand-in for that folder
// becomes a relative address in pages and styles, and is worked out by each page for its scripts.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { BASE, SITE } from './paths.mjs';

const GLOBAL = 'window.__settlineBase';

/** A text of a script that begins with the stand-in, to its end. */
const LITERAL = new RegExp(`(["'\`])${BASE}((?:\\\\.|(?!\\1)[^\\\\])*)\\1`, 'g');

/** The index of the search is one long text, with addresses in it. */
const inSearchIndex = (text) =>
  text.replace(
    /export\s*\{\s*([\w$]+) as default\s*\}/,
    (_, name) =>
      `const settlineIndex=${name}.replaceAll("${BASE}",${GLOBAL});export{settlineIndex as default}`,
  );

/**
 * Strings of a script that begin with the stand-in become sums; others are refused.
 *
 * @param {string} text
 * @param {string} name
 * @returns {string}
 */
export function inScript(text, name) {
  if (name.includes('@localSearchIndexroot')) return inSearchIndex(text);
  const isSiteData = /__VP_SITE_DATA__=(?:deserializeFunctions\()?JSON\.parse/.test(text);
  let script = text;
  if (isSiteData) {
    script = script.replace(`\\"base\\":\\"${BASE}\\"`, '\\"base\\":\\"/\\"');
    script += `\n;window.__VP_SITE_DATA__.base=${GLOBAL};`;
  }
  const whole = script.replaceAll(
    LITERAL,
    (_, quote, rest) => `(${GLOBAL}+${quote}${rest}${quote})`,
  );
  const at = whole.indexOf(BASE);
  if (at < 0) return whole;
  throw new Error(`${name}: a base within a text: ${whole.slice(Math.max(0, at - 60), at + 40)}`);
}

/** A page: addresses relative to it, and the script that tells where the site lies. */
function inPage(text, depth) {
  const up = depth === 0 ? './' : '../'.repeat(depth);
  const [head, ...scripts] = text.split(/(?=<script\b)/);
  const parts = scripts.map((part) => {
    const end = part.indexOf('</script>');
    const isInline = !/^<script\b[^>]*\bsrc=/.test(part);
    const script = isInline
      ? inScript(part.slice(0, end), 'page')
      : part.slice(0, end).replaceAll(BASE, up);
    return script + part.slice(end).replaceAll(BASE, up);
  });
  const tell = `<script>${GLOBAL}=new URL("${up}",location.href).pathname</script>`;
  return [head.replaceAll(BASE, up), ...parts].join('').replace('<head>', `<head>${tell}`);
}

/** Rewrites all files of the site. */
export function makeBaseRelative() {
  const names = readdirSync(SITE, { recursive: true, encoding: 'utf8' });
  for (const name of names.filter((one) => /\.(?:html|js|css)$/.test(one))) {
    const path = join(SITE, name);
    const text = readFileSync(path, 'utf8');
    const depth = name.split(/[\\/]/).length - 1;
    if (name.endsWith('.html')) writeFileSync(path, inPage(text, depth));
    else if (!text.includes(BASE)) continue;
    else if (name.endsWith('.css')) writeFileSync(path, text.replaceAll(BASE, '../'.repeat(depth)));
    else writeFileSync(path, inScript(text, name));
  }
}
