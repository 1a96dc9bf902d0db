// The list beside each page: the hand-written pages, or the functions of one folder.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { API, DOCS } from '../../.config/site/paths.mjs';

/** The heading of a page. */
const titleOf = (path) =>
  /^# (.+)$/m.exec(readFileSync(join(DOCS, `${path}.md`), 'utf8'))?.[1] ?? path;
const entry = (path) => ({ text: titleOf(path), link: `/${path}` });
const group = (text, folder, names) => ({
  text,
  items: names.map((name) => entry(`${folder}/${name}`)),
});

export const TUTORIAL = ['first-depth', 'whole-job', 'as-built'];
/** One page a task, in the order of the work. */
export const TASKS = [
  [
    'Before you dig',
    'buried-lines trees levels grades set-out stakes-in-line curves areas layers is-ten-inches-enough how-deep-does-it-freeze dig-line string',
  ],
  ['The dig', 'old-paving open-dig dig-volume spoil hours'],
  [
    'Build and check',
    'order lifts how-much-water-does-the-stone-need steps check-layers hand-over',
  ],
  ['In an app', 'in-an-app drawings saved-plans many-jobs'],
  ['Less often', 'structure scans survey-foot'],
];
export const EXPLANATION = [
  'numbers',
  'soil-states',
  'uncertainty',
  'sources',
  'packages',
  'scope',
];
export const REFERENCE = [
  'job-file',
  'formulas',
  'glossary',
  'error-codes',
  'warnings',
  'measured',
];

const reference = () =>
  REFERENCE.filter((name) => existsSync(join(DOCS, 'reference', `${name}.md`)));

/** The list beside hand-written pages. */
export const pages = () => [
  {
    text: 'Learn',
    items: [
      ...TUTORIAL.map((name) => entry(`tutorial/${name}`)),
      { text: 'Plan a job', link: '/job' },
    ],
  },
  { text: 'Tasks', items: [{ text: 'All tasks, and questions', link: '/how-to/' }] },
  ...TASKS.map(([text, names]) => group(text, 'how-to', names.split(' '))),
  group('Explanation', 'explanation', EXPLANATION),
  {
    text: 'Reference',
    items: [
      { text: 'All functions', link: '/api/' },
      ...reference().map((name) => entry(`reference/${name}`)),
      { text: 'Fields of the job file', link: '/api/job-file-fields' },
      { text: 'Sources', link: '/api/sources' },
      { text: 'Checked figures', link: '/api/checked-figures' },
    ],
  },
];

/** The functions of each folder of the library, by the folder's name; one text a folder takes little room. */
export function folders() {
  const found = existsSync(API) ? readdirSync(API, { withFileTypes: true }) : [];
  const names = found.filter((one) => one.isDirectory() && one.name !== 'parts');
  const functionsOf = ({ name }) =>
    readdirSync(join(API, name))
      .filter((file) => file !== 'types.md')
      .map((file) => file.slice(0, -3))
      .sort()
      .join(' ');
  return Object.fromEntries(names.map((folder) => [folder.name, functionsOf(folder)]));
}
