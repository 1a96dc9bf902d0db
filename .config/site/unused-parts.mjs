// Parts of the generator that no page of this site shows: each is replaced by nothing, so that no page
// loads its script and styles. The button of the search is our own.
import { fileURLToPath } from 'node:url';

const PARTS = [
  ...['VPAlgoliaSearchBox', 'VPBadge', 'VPButton', 'VPCarbonAds', 'VPDocAsideCarbonAds'],
  ...[
    'VPDocAsideSponsors',
    'VPDocFooterLastUpdated',
    'VPFeature',
    'VPFeatures',
    'VPFooter',
    'VPHero',
  ],
  ...['VPHome', 'VPHomeContent', 'VPHomeFeatures', 'VPHomeHero', 'VPHomeSponsors', 'VPImage'],
  ...['VPNavBarMenuGroup', 'VPNavBarSocialLinks', 'VPNavBarTranslations', 'VPNavScreenMenuGroup'],
  ...['VPNavScreenSocialLinks', 'VPNavScreenTranslations', 'VPSocialLink', 'VPSocialLinks'],
  ...['VPSponsors', 'VPSponsorsGrid', 'VPTeamMembers', 'VPTeamMembersItem', 'VPTeamPage'],
  ...['VPTeamPageSection', 'VPTeamPageTitle'],
];
const SCRIPTS = ['composables/preFetch', 'composables/codeGroups'];
const STYLES = ['custom-block', 'vp-code-group', 'vp-sponsor'];

const inTheme = (name) =>
  fileURLToPath(new URL(`../../docs/.vitepress/theme/${name}`, import.meta.url));
const ending = (names, extension) => new RegExp(`^.*/(?:${names.join('|')})${extension}$`);

/** Names that a bundler reads as others. */
export const unusedParts = [
  { find: ending(PARTS, '\\.vue'), replacement: inTheme('nothing.mjs') },
  { find: ending(SCRIPTS, '(?:\\.js)?'), replacement: inTheme('nothing.mjs') },
  { find: ending(STYLES, '\\.css'), replacement: inTheme('nothing.css') },
  { find: /^.*\/VPNavBarSearchButton\.vue$/, replacement: inTheme('search-button.mjs') },
];
