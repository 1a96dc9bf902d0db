// Puts files into the built site that pages lead to: sources and tests as text, the schema, the sites.
import { cpSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { ROOT, SITE } from './paths.mjs';
import { readSourceFiles } from './related-files.mjs';

export function copyFiles() {
  for (const [path, text] of readSourceFiles()) {
    const target = join(SITE, 'source', `${path}.txt`);
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, text);
  }
  cpSync(join(ROOT, 'job.schema.json'), join(SITE, 'job.schema.json'));
  mkdirSync(join(SITE, 'examples'), { recursive: true });
  for (const name of readdirSync(join(ROOT, 'examples')).filter((one) => one.endsWith('.json'))) {
    cpSync(join(ROOT, 'examples', name), join(SITE, 'examples', name));
  }
}
