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

/** The styles of a theme; each rule holds inside drawings of that theme alone. Internal. */
export function themeStyle(theme: DrawTheme): string {
  const root = `.settline-${theme}`;
  const all = theme === 'print' ? RULES : [...RULES, ...MARK_RULES];
  const rules = all.map((rule) => `${root} ${rule}`).join('');
  if (theme === 'print') {
    const colours = new Map(Object.entries<string>({ ...PALETTES.print }));
    return inColours(rules, (name) => colours.get(name) ?? '');
  }
  const dark = `@media(prefers-color-scheme:dark){${root}{${paletteVariables(PALETTES.dark)}}}`;
  return `${root}{${paletteVariables(PALETTES.light)}}${dark}${inColours(rules, (name) => `var(--settline-${name})`)}`;
}

const RULES = [
  'text{fill:$ink}',
  '.strong{font-weight:bold}',
  '.faint{fill:$faint}',
  '.paper{fill:$paper}',
  '.hatch{stroke:$ink;stroke-width:.7;stroke-opacity:.55;fill:none}',
  '.dot{fill:$ink;fill-opacity:.65}',
  '.edge{stroke:$ink;stroke-width:1.4}',
  '.area{stroke:$ink;stroke-width:1.2}',
  '.bare{stroke:none}',
  '.dimension{stroke:$ink;stroke-width:.8}',
  '.tick{stroke:$ink;stroke-width:1.5}',
  '.leader{stroke:$faint;stroke-width:.8}',
  '.string{stroke:$mark;stroke-width:1.8}',
  '.finish{stroke:$ink;stroke-width:2.4}',
  '.lift{stroke:$ink;stroke-width:1;stroke-dasharray:2 4}',
  '.old{stroke:$ink;stroke-width:1.6;stroke-dasharray:9 5}',
  '.dig{stroke:$ink;stroke-width:2;stroke-dasharray:12 4 3 4}',
  '.stake{fill:$paper;stroke:$ink;stroke-width:1.4}',
  '.solid{fill:$ink;stroke:$ink}',
  '.ground-paver{fill:$paver}',
  '.ground-sand{fill:$sand}',
  '.ground-stone{fill:$stone}',
  '.ground-sub-base{fill:$stone}',
  '.ground-old-paving{fill:$old}',
  '.ground-soil{fill:$soil}',
  '.ground-cut{fill:$cut}',
  '.ground-fill{fill:$fill}',
  '.ground-hand-dig{fill:none}',
  '.ground-building{fill:$old}',
  '.ground-slab{fill:$stone}',
  '.knock{fill:$paper;fill-opacity:.88}',
  '.open{fill:none}',
  '.base{stroke:$ink;stroke-width:1.2;stroke-dasharray:4 3}',
  '.dig-top{stroke:$ink;stroke-width:1.2;stroke-dasharray:14 4 2 4 2 4}',
  '.root-zone{stroke:$ink;stroke-width:1.4;stroke-dasharray:1 4;stroke-linecap:round}',
  '.casing{stroke:$ink;stroke-width:5.5;stroke-linejoin:round}',
  '.marked{stroke:$paper;stroke-width:2.6;stroke-linejoin:round}',
  '.line-plain{stroke:$ink;stroke-width:3.4;stroke-dasharray:16 5}',
  '.fall{stroke:$ink;stroke-width:1.8}',
  '.zero{stroke:$ink;stroke-width:2.6}',
  '.hold-frame{fill:$paper;stroke:$ink;stroke-width:2.4}',
  '.allowed{stroke:$faint;stroke-width:7;stroke-opacity:.6}',
];

/** Colours that locators mark lines in, for a screen; on paper the words tell. */
const MARK_COLOURS = {
  red: '#e5352b',
  yellow: '#ffd500',
  orange: '#ff8a1f',
  blue: '#3d8bff',
  purple: '#a866e0',
  green: '#35a853',
  pink: '#ff8fc0',
  white: '#ffffff',
} as const;

const MARK_RULES = Object.entries(MARK_COLOURS).map(
  ([name, colour]) => `.marked-${name}{stroke:${colour}}`,
);
