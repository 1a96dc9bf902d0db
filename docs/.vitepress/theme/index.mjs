// The look of the site: the parts of the generator's theme, in colours and type of our own.
import { h } from 'vue';
import DefaultTheme from 'vitepress/theme-without-fonts';
import { PageCopy } from './page-copy.mjs';
import 'temml/dist/Temml-Local.css';
import './colours.css';
import './page.css';
import './landing.css';
import './print.css';

export default {
  extends: DefaultTheme,
  Layout: () => h(DefaultTheme.Layout, null, { 'doc-footer-before': () => h(PageCopy) }),
  enhanceApp() {
    if (import.meta.env.SSR) return;
    void import('./checked-filter.mjs');
    void import('../live/index.ts').then(({ defineElements }) => defineElements());
  },
};
