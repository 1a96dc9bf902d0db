// Writes the generated pages into docs/api, and the list of public names with their pages.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ReflectionKind } from 'typedoc';
import { publicNames } from '../collect-examples.mjs';
import { checkedPage, foldersOf } from './checked-page.mjs';
import { cell, firstSentence } from './comment-text.mjs';
import { functionPage } from './function-page.mjs';
import { API, NAMES, ROOT } from './paths.mjs';
import { readChecks } from './read-checks.mjs';
import { readPublications } from './read-publications.mjs';
import { reflectSources } from './reflect.mjs';
import { readSourceFiles } from './related-files.mjs';
import { schemaPage } from './schema-page.mjs';
import { sourcesPage } from './sources.mjs';
import { hasPlace, typesPage } from './types-page.mjs';
import { writeMathFont } from './math-font.mjs';
import { writeLandingParts } from './write-landing-parts.mjs';

const isFunction = ({ kind }) => kind === ReflectionKind.Function;

/**
 * The folders with what each declares itself, and what each exports of another that has the page; what
 * the root alone exports comes last.
 */
function foldersIn(project) {
  return project.children
    .map((module) => ({
      folder: module.name === 'index' ? 'settline' : module.name,
      own: (module.children ?? []).filter((one) => isFunction(one) || hasPlace(one)),
      borrowed: (module.children ?? []).filter(({ kind }) => kind === ReflectionKind.Reference),
    }))
    .filter(({ folder, own }) => folder !== 'settline' || own.length > 0);
}

function writePage(path, text) {
  const target = join(API, path);
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, text);
}

/** The list of all functions, folder by folder. */
function indexPage(folders) {
  const homes = new Map(
    folders.flatMap(({ folder, own }) => own.map((one) => [one.name, { folder, one }])),
  );
  const rowOf = (folder, one) =>
    `| [\`${one.name}\`](${folder}/${one.name}.md) | ${cell(firstSentence(one.signatures[0].comment))} |`;
  const parts = folders.map(({ folder, own, borrowed }) => {
    const rows = own.filter(isFunction).map((one) => rowOf(folder, one));
    if (own.length === 0) {
      const elsewhere = borrowed.flatMap(({ name }) => homes.get(name) ?? []);
      rows.push(
        ...elsewhere
          .filter(({ one }) => isFunction(one))
          .map((home) => rowOf(home.folder, home.one)),
      );
    }
    const types =
      own.length === 0
        ? ''
        : `[Types of \`${folder === 'settline' ? folder : `settline/${folder}`}\`](${folder}/types.md)`;
    const table =
      rows.length === 0 ? '' : `| function | what it does |\n| --- | --- |\n${rows.join('\n')}\n\n`;
    return `## ${folder} {#${folder}}\n\n${table}${types}`;
  });
  return `---
title: All functions
description: Every function of settline by import, with one sentence on what it does.
---

# All functions

Each import is a folder of the library. The package exports every name from its root too.

${parts.join('\n\n')}
`;
}

function namesOf(folders) {
  return Object.fromEntries(
    folders.flatMap(({ folder, own }) =>
      own.map((one) =>
        isFunction(one)
          ? [
              one.name,
              { page: `api/${folder}/${one.name}`, text: firstSentence(one.signatures[0].comment) },
            ]
          : [one.name, { page: `api/${folder}/types`, hash: one.name.toLowerCase() }],
      ),
    ),
  );
}

/** Writes all of it anew; the library must be built. */
export async function writeReference() {
  const { SOURCES } = await import(pathToFileURL(join(ROOT, 'dist', 'sources', 'index.js')).href);
  const files = readSourceFiles();
  const checks = readChecks();
  const folders = foldersIn(await reflectSources());
  const withPages = new Set(
    folders.flatMap(({ own }) => own.filter(isFunction).map(({ name }) => name)),
  );
  const hasPage = (name) => withPages.has(name);
  const tools = { names: publicNames(), sources: SOURCES, files, hasPage };
  rmSync(API, { recursive: true, force: true });
  for (const { folder, own } of folders.filter((one) => one.own.length > 0)) {
    for (const one of own.filter(isFunction)) {
      writePage(`${folder}/${one.name}.md`, functionPage(one, folder, tools));
    }
    writePage(`${folder}/types.md`, typesPage(folder, own.filter(hasPlace)));
  }
  writePage('index.md', indexPage(folders));
  writePage('sources.md', sourcesPage(SOURCES, readPublications(), checks));
  const called = [...files].filter(([path]) => path.startsWith('tests/published/'));
  const foldersByFile = new Map(called.map(([path, text]) => [basename(path), foldersOf(text)]));
  writePage('checked-figures.md', checkedPage(checks, foldersByFile));
  const schema = JSON.parse(readFileSync(join(ROOT, 'job.schema.json'), 'utf8'));
  writePage('job-file-fields.md', schemaPage(schema));
  await writeLandingParts();
  await writeMathFont();
  writeFileSync(NAMES, JSON.stringify(namesOf(folders)));
}
