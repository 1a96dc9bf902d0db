// The look of the site: the parts of the generator's theme, in colours and type of our own.
import { onContentUpdated } from 'vitepress';
import { defineComponent, h } from 'vue';
import DefaultTheme from 'vitepress/theme-without-fonts';
import { defineElements } from '../live/index.ts';
import { withFolderSidebars } from './folder-sidebars.mjs';
import { PageCopy } from './page-copy.mjs';
import './colours.css';
import './math.css';
import './page.css';
import './landing.css';
import './print.css';

/** Loads what the page that is shown computes with. */
function loadElements() {
  void defineElements();
  if (document.querySelector('checked-filter') !== null) void import('./checked-filter.mjs');
}

const Layout = defineComponent({
  setup() {
    onContentUpdated(loadElements);
    return () => h(DefaultTheme.Layout, null, { 'doc-footer-before': () => h(PageCopy) });
  },
});

export default {
  extends: DefaultTheme,
  Layout,
  enhanceApp({ siteData }) {
    const { themeConfig, ...rest } = siteData.value;
    if (themeConfig.folders === undefined) return;
    siteData.value = { ...rest, themeConfig: withFolderSidebars(themeConfig) };
  },
};
