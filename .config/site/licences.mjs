// licences.txt: the licence of every package of which the site holds code, styles or a font.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { noticeOf } from '../notices.mjs';
import { FONT_PACKAGE } from './math-font.mjs';
import { CACHE, ROOT, SITE } from './paths.mjs';

/** Where a package lies, and its name. */
const PLACE = /^(.*)\/node_modules\/((?:@[^/]+\/)?[^/]+)\//;

/** What the plugin finds; it runs in a copy of this module that the generator makes. */
const FOUND = join(CACHE, 'site-packages.json');

/** The mathematics is set with this when the site is built: the pages hold what it writes. */
const SETTER = 'temml';

/** Notes for Vite's build which packages each script takes in. */
export const noteLicences = () => ({
  name: 'note licences',
  generateBundle(_, bundle) {
    const packages = new Map();
    for (const { modules = {} } of Object.values(bundle)) {
      for (const [id, { renderedLength }] of Object.entries(modules)) {
        const [, root, name] = PLACE.exec(id) ?? [];
        if (name !== undefined && renderedLength > 0) packages.set(name, root);
      }
    }
    // the bundle of the browser holds the framework; that of the server leaves it to Node
    if (packages.has('@vue/runtime-dom')) writeFileSync(FOUND, JSON.stringify([...packages]));
  },
});

const head = `# Licences

The scripts, styles and the font of this site hold parts of the packages below. Each comes under its own licence. The font of formulas is a part of STIX Two Math: the letters and signs that this site sets.
`;

export function writeLicences() {
  const packages = [
    [SETTER, ROOT],
    [FONT_PACKAGE, ROOT],
    ...JSON.parse(readFileSync(FOUND, 'utf8')),
  ];
  const notices = packages.sort().map(([name, root]) => noticeOf(root, name));
  writeFileSync(join(SITE, 'licences.txt'), [head, ...notices].join('\n'));
}
