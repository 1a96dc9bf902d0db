// npm run docs: builds the documentation site into site/. With `dev`, serves its sources instead.
import { spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, createServer } from 'vitepress';
import { checkLinks } from './check-links.mjs';
import { checkPages } from './check-pages.mjs';
import { copyFiles } from './copy-files.mjs';
import { CACHE, DOCS, ROOT, SITE } from './paths.mjs';
import { renewChecks } from './read-checks.mjs';
import { writeLicences } from './licences.mjs';
import { writeNotFound } from './not-found.mjs';
import { makeBaseRelative } from './relative-base.mjs';
import { writeMarkdownCopies } from './markdown-copies.mjs';
import { writeReference } from './write-reference.mjs';

function run(...args) {
  const { status } = spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}

run(join('.config', 'build.mjs'), 'javascript');
renewChecks();
await writeReference();
if (process.argv[2] === 'dev') {
  const server = await createServer(DOCS, { base: '/' });
  await server.listen();
  // the generator is told to say warnings alone
  console.log(server.resolvedUrls.local.join('\n'));
} else {
  checkPages();
  rmSync(SITE, { recursive: true, force: true });
  await build(DOCS);
  makeBaseRelative();
  writeNotFound();
  copyFiles();
  writeLicences();
  writeMarkdownCopies();
  checkLinks();
  const { user, system } = process.cpuUsage();
  const seconds = Math.round((user + system) / 1e6);
  writeFileSync(join(CACHE, 'site-build.json'), JSON.stringify({ seconds }));
  console.log(`site/ built with ${seconds} s of processor time`);
}
