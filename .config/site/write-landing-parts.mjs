// Writes what the landing page shows of a site: its sheet, and a section, wide and narrow.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { escapeHtml } from './escape-html.mjs';
import { lighterDrawing } from './lighter-drawing.mjs';
import { PARTS, ROOT } from './paths.mjs';

const built = (name) => import(pathToFileURL(join(ROOT, 'dist', name, 'index.js')).href);

/** So many lines show how a sheet reads; the whole one is long. */
const SHOWN_LINES = 70;

/** As a template of a page holds it. */
const escaped = (text) => escapeHtml(text).replaceAll('{', '&#123;');

/** The site that the landing page shows. */
const SITE_FILE = join(ROOT, 'examples', 'heron-yard.json');

export async function writeLandingParts() {
  const [{ planJob, renderJobSheet }, { drawSection }] = await Promise.all([
    built('job'),
    built('drawing'),
  ]);
  const plan = planJob(JSON.parse(readFileSync(SITE_FILE, 'utf8')));
  mkdirSync(PARTS, { recursive: true });
  const write = (name, text) => writeFileSync(join(PARTS, name), text);
  const draw = (name, svg) => write(`${name}.svg`, lighterDrawing(svg));
  const system = 'metric';
  const sheet = renderJobSheet(plan, { system }).split('\n');
  const shown = sheet.slice(0, SHOWN_LINES).join('\n').trim();
  // parts with a class are kept as text: the script of the page need not hold them once more
  const parts = shown.split('\n\n').map((part) => `<span class="part">${escaped(part)}</span>`);
  write('sheet.md', `<pre>${parts.join('\n\n')}</pre>\n`);
  // its colours follow the page that it stands in
  const look = { system, pavement: 'drive', theme: 'screen' };
  draw('section-wide', drawSection(plan, look));
  draw('section-narrow', drawSection(plan, { ...look, narrow: true }));
}
