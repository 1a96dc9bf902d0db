// Writes what the landing page shows of a site: its sheet, and its drawings, wide and narrow.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { API, ROOT } from './paths.mjs';

const built = (name) => import(pathToFileURL(join(ROOT, 'dist', name, 'index.js')).href);

/** So many lines show how a sheet reads; the whole one is long. */
const SHOWN_LINES = 118;

/** The site that the landing page shows. */
const SITE_FILE = join(ROOT, 'examples', 'heron-yard.json');

export async function writeLandingParts() {
  const [{ planJob, renderJobSheet }, { drawPlan, drawSection }] = await Promise.all([
    built('job'),
    built('drawing'),
  ]);
  const plan = planJob(JSON.parse(readFileSync(SITE_FILE, 'utf8')));
  const folder = join(API, 'parts');
  mkdirSync(folder, { recursive: true });
  const write = (name, text) => writeFileSync(join(folder, name), text);
  const system = 'metric';
  const sheet = renderJobSheet(plan, { system }).split('\n');
  write('sheet.md', `\`\`\`text\n${sheet.slice(0, SHOWN_LINES).join('\n').trim()}\n\`\`\`\n`);
  write('section-wide.svg', drawSection(plan, { system, pavement: 'drive' }));
  write('section-narrow.svg', drawSection(plan, { system, pavement: 'drive', narrow: true }));
  write('plan-wide.svg', drawPlan(plan, { system }));
  write('plan-narrow.svg', drawPlan(plan, { system, narrow: true }));
}
