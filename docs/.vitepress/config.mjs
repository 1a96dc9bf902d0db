// The documentation site: `npm run docs` builds it, `npm run docs:dev` serves its sources.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vitepress';
import { chunkGroups } from '../../.config/site/chunk-groups.mjs';
import { BASE, CACHE, SITE } from '../../.config/site/paths.mjs';
import { editableExamples } from '../../.config/site/markdown/editable-examples.mjs';
import { formulas } from '../../.config/site/markdown/formulas.mjs';
import { linkNames } from '../../.config/site/markdown/link-names.mjs';
import { repositoryLinks } from '../../.config/site/markdown/repository-links.mjs';
import { rowPlaces } from '../../.config/site/markdown/row-places.mjs';
import { tables } from '../../.config/site/markdown/tables.mjs';
import { searchOptions } from '../../.config/site/search.mjs';
import { noteLicences } from '../../.config/site/licences.mjs';
import { livePages } from '../../.config/site/live-pages.mjs';
import { smallerScripts } from '../../.config/site/smaller-scripts.mjs';
import { unusedParts } from '../../.config/site/unused-parts.mjs';
import { folders, pages } from './sidebars.mjs';

const typesetFormulas = await formulas();

// in the page itself: an address in its head would be read anew, and wrongly, after each step to another page
const icon = readFileSync(join(import.meta.dirname, 'mark.svg'), 'utf8').trim();

export default defineConfig({
  lang: 'en-GB',
  title: 'settline',
  description: 'The arithmetic of a crew that builds paver driveways and walks, exact and traced.',
  base: BASE,
  srcExclude: ['api/parts/**'],
  outDir: SITE,
  cacheDir: join(CACHE, 'vitepress'),
  metaChunk: true,
  // what a page links to is loaded when it is asked for
  router: { prefetchLinks: false },
  head: [
    [
      'link',
      {
        rel: 'icon',
        type: 'image/svg+xml',
        href: `data:image/svg+xml,${encodeURIComponent(icon)}`,
      },
    ],
    ['meta', { name: 'color-scheme', content: 'light dark' }],
  ],
  vue: {
    template: {
      compilerOptions: {
        isCustomElement: (tag) => tag.startsWith('settline-') || tag.startsWith('checked-'),
      },
    },
  },
  markdown: {
    theme: { light: 'github-light-high-contrast', dark: 'github-dark-high-contrast' },
    config(markdown) {
      markdown.use(repositoryLinks);
      markdown.use(rowPlaces);
      markdown.use(tables);
      markdown.use(linkNames);
      markdown.use(typesetFormulas);
      markdown.use(editableExamples);
    },
  },
  vite: {
    ...livePages,
    resolve: { alias: [...livePages.resolve.alias, ...unusedParts] },
    plugins: [...livePages.plugins, chunkGroups(), noteLicences(), smallerScripts()],
    // no part of the theme is written with options: that part of Vue is left out
    define: { __VUE_OPTIONS_API__: 'false' },
    build: {
      ...livePages.build,
      chunkSizeWarningLimit: 2000,
      // a script names all that it imports: a list of it beside each place that loads one is not needed
      modulePreload: { resolveDependencies: () => [] },
      rollupOptions: {
        // a package marks calls as pure in places that the bundler does not read
        onwarn: (warning, warn) => {
          if (warning.code !== 'INVALID_ANNOTATION') warn(warning);
        },
      },
    },
    logLevel: 'warn',
  },
  themeConfig: {
    siteTitle: 'settline',
    outline: [2, 3],
    search: { provider: 'local', options: searchOptions },
    docFooter: { prev: 'Before', next: 'Next' },
    nav: [
      { text: 'Learn', link: '/tutorial/first-depth', activeMatch: '^/tutorial/' },
      { text: 'Plan a job', link: '/job' },
      { text: 'Tasks', link: '/how-to/', activeMatch: '^/how-to/' },
      { text: 'Explanation', link: '/explanation/numbers', activeMatch: '^/explanation/' },
      { text: 'Functions', link: '/api/', activeMatch: '^/api/(?!sources|checked)' },
      { text: 'Figures', link: '/api/checked-figures' },
    ],
    sidebar: { '/': pages() },
    // the theme makes the lists of the functions of each folder from these
    folders: folders(),
  },
});
