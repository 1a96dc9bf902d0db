import { grainRules, SOIL } from '../frame/grain-hatches.js';
import { BUILDING, CUT, FILL, HAND_DIG, OLD_PAVING, SLAB } from '../frame/hatches.js';
import { LAYER_HATCHES } from '../surface-rows.js';
import { LIFT_RULES, MARK_RULES, PLAN_RULES, ZERO_RULES, HOLD_RULES } from '../frame/rules.js';
import { PALETTES, paletteVariables, themeStyle } from '../frame/themes.js';

/** The paper that a page is printed on. */
export type SheetPaper = 'a4' | 'letter';

/** Names of papers in style sheets, and the height of a drawing: on a page of its own, and below the opening. */
const PAPERS = {
  a4: { name: 'A4', tallest: '195mm', first: '180mm' },
  letter: { name: 'letter', tallest: '180mm', first: '160mm' },
} as const;

/** Below this the drawings are those for a phone. */
const PHONE = '700px';

/** What the drawings of a page have marks for. */
const PAGE_RULES = [
  ...grainRules([...LAYER_HATCHES, SOIL, OLD_PAVING, CUT, FILL, HAND_DIG, BUILDING, SLAB]),
  ...LIFT_RULES,
  ...PLAN_RULES,
  ...MARK_RULES,
  ...ZERO_RULES,
  ...HOLD_RULES,
];

const ON_SCREEN = [
  ':root{color-scheme:light dark}',
  'body{margin:0;background:var(--settline-paper);color:var(--settline-ink);font:18px/1.45 sans-serif}',
  'main{max-width:720px;margin:0 auto;padding:12px;overflow-wrap:break-word}',
  'h1{font-size:1.6em;line-height:1.2;margin:.3em 0}',
  'h2{font-size:1.35em;line-height:1.2;margin:1.6em 0 .4em;border-bottom:3px solid}',
  'h3{font-size:1.1em;line-height:1.25;margin:1.2em 0 .3em}',
  'p{margin:.35em 0}',
  '.item{padding-left:1.4em;text-indent:-1.4em}',
  '.mark{display:inline-block;min-width:1em;text-indent:0;font-weight:bold}',
  '.warning{font-weight:bold}',
  '.box{display:inline-block;width:.85em;height:.85em;border:2px solid;vertical-align:-.1em;text-indent:0}',
  '.sign{display:inline-block;width:7em;height:1.6em;border-bottom:2px solid;text-indent:0}',
  '.entry{display:flex;justify-content:space-between;gap:1em;border-bottom:1px dotted}',
  '.entry b{text-align:right;white-space:nowrap}',
  '.part{padding-left:1.2em}',
  '.table{overflow-x:auto}',
  'table{width:100%;border-collapse:collapse;font-size:.95em;line-height:1.3}',
  'th,td{padding:.25em .3em;text-align:right;vertical-align:bottom;border-bottom:1px solid}',
  'td{white-space:nowrap;font-variant-numeric:tabular-nums}',
  'th:first-child,td:first-child{text-align:left;white-space:normal}',
  'figure{margin:1em 0}',
  'svg{display:block;width:100%;height:auto}',
  '.narrow{display:none}',
];

const ON_A_PHONE = [
  '.wide{display:none}',
  '.narrow{display:block}',
  'table{font-size:.85em}',
  'th{font-size:.85em}',
  '.many{font-size:.76em}',
  'th,td{padding:.25em .15em .25em .3em}',
  '.most thead{display:none}',
  '.most,.most tbody,.most tr,.most td{display:block}',
  '.most tr{padding:.3em 0;border-bottom:1px solid}',
  '.most td{display:flex;justify-content:space-between;padding:.1em .3em;border:0}',
  '.most td:first-child{font-weight:bold}',
  '.most td::before{content:attr(data-head);font-weight:normal}',
];

const onPaper = ({ name, tallest, first }: (typeof PAPERS)[SheetPaper]): string[] => [
  `@page{size:${name};margin:13mm}`,
  `@media print{.settline-screen{${paletteVariables(PALETTES.print)}}`,
  'body{font-size:12pt;line-height:1.3}',
  'main{max-width:none;padding:0}',
  'p{margin:.2em 0}',
  'h2{margin:1.1em 0 .3em}',
  'h3{margin:.8em 0 .2em}',
  'th,td{padding:.1em .3em}',
  '.wide.half,.phone,.screen{display:none}',
  '.whole{display:block}',
  '.narrow.half{display:inline-block;width:49%;vertical-align:top;margin:.6em 0}',
  `svg{max-height:${tallest}}`,
  `.opening-part svg{max-height:${first}}`,
  'h1,h2,h3,thead{break-after:avoid}',
  'figure,tr,p{break-inside:avoid}',
  '.table{overflow:visible}}',
];

/** The style sheet of a page: light or dark on a screen, black on paper, with the colours of its drawings. Internal. */
export const pageStyle = (paper: SheetPaper): string =>
  [
    themeStyle('screen', PAGE_RULES),
    ...ON_SCREEN,
    `@media screen and (max-width:${PHONE}){`,
    ...ON_A_PHONE,
    '}',
    ...onPaper(PAPERS[paper]),
  ].join('');
