// Where the sources of the documentation site lie, and where its parts are written.
import { join } from 'node:path';

export const ROOT = join(import.meta.dirname, '..', '..');
export const DOCS = join(ROOT, 'docs');
/** Pages that are generated: git, lint, the collector of examples and the tarball leave them out. */
export const API = join(DOCS, 'api');
export const SITE = join(ROOT, 'site');
export const CACHE = join(ROOT, 'node_modules', '.cache', 'settline');
/** What pages take in that is generated: the sheet and the drawings of a site, the font of formulas. */
export const PARTS = join(API, 'parts');
export const MATH_FONT = join(PARTS, 'stix-two-math.woff2');
/** Every public name with the page that describes it. */
export const NAMES = join(API, 'names.json');
/** What the run of the published checks wrote. */
export const CHECKS = join(CACHE, 'published-checks.json');
/** Stands for the folder that the site is served from, until the build is done. */
export const BASE = '/settline-base/';
