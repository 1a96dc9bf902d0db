import type { DrawStyle } from '../draw-options.js';
import { element, textElement } from '../svg/element.js';
import { STRONG } from '../svg/text-width.js';
import { drawLegend, shownEntries, type LegendEntry } from './legend.js';
import { textLines } from './text-lines.js';
import { themeStyle } from './themes.js';

/** The picture between title and legend. Internal. */
export interface Picture {
  readonly marks: readonly string[];
  /** Where it ends: the legend goes below. */
  readonly bottom: number;
}

/** What goes into the frame of a drawing. Internal. */
export interface FrameParts {
  /** One word: it tells the drawing from others in a page. */
  readonly kind: string;
  readonly title: string;
  /** Units and cautions above the picture; each wraps. */
  readonly notes: readonly string[];
  /** What else is to know about the picture, at the foot. */
  readonly remarks?: readonly string[];
  /** The main figures in words, for readers who cannot see the picture. */
  readonly description: string;
  /** Those entries are drawn that the picture has marks for. */
  readonly legend: readonly LegendEntry[];
  /** Rules of its style sheet beside those of all drawings. */
  readonly rules: readonly string[];
  /** Draws the picture from a height down. */
  readonly draw: (top: number) => Picture;
}

const MOST_TITLE_LINES = 3;

/** A whole SVG document: title, notes, picture and legend, one below the other. Internal. */
export function frameDrawing(parts: FrameParts, style: DrawStyle): string {
  const { kind, title, description, remarks = [] } = parts;
  const { theme, width, margin, title: size } = style;
  const prefix = `settline-${kind}-${digest(`${title} ${description} ${theme} ${width}`)}`;
  const head = textLines([title], margin / 2, style, {
    size,
    room: (width - 2 * margin) / STRONG,
    most: MOST_TITLE_LINES,
    name: 'strong title',
  });
  const notes = textLines(parts.notes, head.bottom, style, { name: 'note' });
  const picture = parts.draw(notes.bottom + 12);
  const entries = shownEntries(parts.legend, picture.marks);
  const legend = drawLegend(entries, picture.bottom + 14, style);
  const foot = textLines(remarks, legend.bottom, style, { name: 'note' });
  const height = Math.ceil(foot.bottom + margin / 2);
  const children = [
    textElement('title', { id: `${prefix}-title` }, title),
    textElement('desc', { id: `${prefix}-desc` }, description),
    element('style', {}, themeStyle(theme, parts.rules)),
    element('rect', { class: 'paper', width, height }),
    ...group('head', [...head.marks, ...notes.marks]),
    ...group('picture', picture.marks),
    ...group('legend', [...legend.marks, ...foot.marks]),
  ];
  return `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: `settline-${theme}`,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      'font-family': 'sans-serif',
    },
    children.join('\n'),
  )}\n`;
}

/** The marks of one part of a drawing. */
const group = (part: 'head' | 'picture' | 'legend', marks: readonly string[]): string[] => [
  `<g class="${part}">`,
  ...marks,
  '</g>',
];

/** A short word for a text, the same each time: drawings in one page keep their ids apart. */
function digest(text: string): string {
  let hash = 0;
  for (const character of text) hash = Math.imul(hash, 31) + character.charCodeAt(0);
  return (hash >>> 0).toString(36);
}
