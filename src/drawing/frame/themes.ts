import { COMMON_RULES } from './rules.js';

/** How a drawing is coloured: black with hatches for paper, or light and dark for a screen. */
export type DrawTheme = 'print' | 'screen';

/** Colours of one theme: what is read stands on `paper` at a contrast of 4.5 or more. Internal. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly faint: string;
  readonly mark: string;
  readonly paver: string;
  readonly sand: string;
  readonly stone: string;
  readonly old: string;
  readonly soil: string;
  readonly cut: string;
  readonly fill: string;
}

const WHITE = '#ffffff';

/** The colours of print, and of a screen by day and by night. Internal. */
export const PALETTES: Readonly<Record<'print' | 'light' | 'dark', Palette>> = {
  print: {
    paper: WHITE,
    ink: '#000000',
    faint: '#555555',
    mark: '#000000',
    paver: WHITE,
    sand: WHITE,
    stone: WHITE,
    old: WHITE,
    soil: WHITE,
    cut: WHITE,
    fill: WHITE,
  },
  light: {
    paper: '#fdfdfb',
    ink: '#1b1f22',
    faint: '#5a6268',
    mark: '#a3240f',
    paver: '#e6d3c8',
    sand: '#f6ecc9',
    stone: '#dfe3e6',
    old: '#c9c9c9',
    soil: '#ece2d6',
    cut: '#f3dcd6',
    fill: '#d8e8d9',
  },
  dark: {
    paper: '#15191c',
    ink: '#f1f3f4',
    faint: '#a9b2b9',
    mark: '#ff9d84',
    paver: '#5a4036',
    sand: '#524a2c',
    stone: '#3b444b',
    old: '#4a4a4a',
    soil: '#40362b',
    cut: '#54332b',
    fill: '#2c4a31',
  },
};

/** A rule with its colours put in. */
const inColours = (rule: string, colour: (name: string) => string): string =>
  rule.replace(/\$(\w+)/g, (_all, name: string) => colour(name));

/** The colours of a palette as variables of a page. Internal. */
export const paletteVariables = (palette: Palette): string =>
  Object.entries<string>({ ...palette })
    .map(([name, colour]) => `--settline-${name}:${colour}`)
    .join(';');

/**
 * The styles of a theme, those that all drawings have and those of one; each rule holds inside drawings
 * of that theme alone. Internal.
 */
export function themeStyle(theme: DrawTheme, own: readonly string[]): string {
  const root = `.settline-${theme}`;
  const rules = [...COMMON_RULES, ...own].map((rule) => `${root} ${rule}`).join('');
  if (theme === 'print') {
    const colours = new Map(Object.entries<string>({ ...PALETTES.print }));
    return inColours(rules, (name) => colours.get(name) ?? '');
  }
  const dark = `@media(prefers-color-scheme:dark){${root}{${paletteVariables(PALETTES.dark)}}}`;
  return `${root}{${paletteVariables(PALETTES.light)}}${dark}${inColours(rules, (name) => `var(--settline-${name})`)}`;
}
