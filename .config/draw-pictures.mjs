// Writes the pictures of the README from a built-in site: npm run pictures. A test holds them up to date.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

/** The pictures by the name of their file, drawn by the functions of a build or of the sources. */
export function picturesWith({ planJob, drawPlan, drawSection }) {
  const job = JSON.parse(readFileSync(join(root, 'examples', 'heron-yard.json'), 'utf8'));
  const plan = planJob(job);
  return {
    'section.svg': drawSection(plan, { system: 'metric', pavement: 'drive' }),
    'plan.svg': drawPlan(plan, { system: 'metric' }),
  };
}

/** Where the pictures lie. */
export const PICTURES = join(root, 'docs', 'pictures');

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [job, drawing] = await Promise.all([
    import('../dist/job/index.js'),
    import('../dist/drawing/index.js'),
  ]);
  mkdirSync(PICTURES, { recursive: true });
  for (const [name, svg] of Object.entries(picturesWith({ ...job, ...drawing }))) {
    writeFileSync(join(PICTURES, name), svg);
  }
}
