// npm run release:check: what a release needs and only the owner can say. Fails until it is there.
//   node .config/release-check.mjs            package.json of the repository
//   node .config/release-check.mjs a/b.json   another manifest
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const isText = (value) => typeof value === 'string' && value.trim() !== '';
const isAddress = (value) => isText(value) && URL.canParse(value) && !/\bexample\b/.test(value);
const urlOf = (value) => (isText(value) ? value : value?.url);

/** Fields of the manifest, what each is for, and when it is filled in. */
const FIELDS = [
  {
    field: 'repository',
    why: 'the package page makes the links of the README from it',
    write: '{ "type": "git", "url": "git+https://..." }',
    isFilled: (value) => isAddress(urlOf(value)),
  },
  {
    field: 'homepage',
    why: 'where the guides are read',
    write: '"https://..."',
    isFilled: isAddress,
  },
  {
    field: 'bugs',
    why: 'where faults are reported',
    write: '{ "url": "https://..." }',
    isFilled: (value) => isAddress(urlOf(value)) || isText(value?.email),
  },
  {
    field: 'author',
    why: 'who answers for the package',
    write: '"name <address>"',
    isFilled: (value) => isText(value) || isText(value?.name),
  },
];

/** The lines that say what is missing; none where all is there. */
export function missingIn(manifest) {
  return FIELDS.filter(({ field, isFilled }) => !isFilled(manifest[field])).map(
    ({ field, why, write }) => `  ${field.padEnd(10)}  ${write.padEnd(43)}  ${why}`,
  );
}

function main() {
  const own = join(dirname(fileURLToPath(import.meta.url)), '..', 'package.json');
  const missing = missingIn(JSON.parse(readFileSync(process.argv[2] ?? own, 'utf8')));
  if (missing.length === 0) {
    console.log('package.json has all that only its owner can fill in.');
    return;
  }
  console.log('Before a release the owner fills in, in package.json:');
  console.log(missing.join('\n'));
  process.exitCode = 1;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) main();
