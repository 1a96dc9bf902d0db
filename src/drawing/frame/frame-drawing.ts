import type { DrawStyle } from '../draw-options.js';
import { coordinateText } from '../svg/coordinate-text.js';
import { element, textElement } from '../svg/element.js';
import { STRONG, wrapText } from '../svg/text-width.js';
import type { Box } from './box.js';
import { drawLegend, shownEntries, type LegendEntry } from './legend.js';
import { textMark } from './text-label.js';
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
  /** The main figures in words, for who cannot see the picture. */
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
  const prefix = `settline-${parts.kind}-${digest(`${parts.title} ${parts.description} ${style.theme} ${style.width}`)}`;
  const head = headMarks(parts, style);
  const picture = parts.draw(head.bottom);
  const entries = shownEntries(parts.legend, picture.marks);
  const legend = drawLegend(entries, picture.bottom + 14, style);
  const foot = textLines(parts.remarks ?? [], legend.bottom, style, { name: 'note' });
  const box = {
    x: 0,
    y: 0,
    width: style.width,
    height: Math.ceil(foot.bottom + style.margin / 2),
  };
  return rootElement({ prefix, box, style }, [
    textElement('title', { id: `${prefix}-title` }, parts.title),
    textElement('desc', { id: `${prefix}-desc` }, parts.description),
    element('style', {}, themeStyle(style.theme, parts.rules)),
    element('rect', { class: 'paper', width: box.width, height: box.height }),
    ...group('head', head.marks),
    ...group('picture', picture.marks),
    ...group('legend', [...legend.marks, ...foot.marks]),
  ]);
}

/** The marks of one part of a drawing. */
const group = (part: 'head' | 'picture' | 'legend', marks: readonly string[]): string[] => [
  `<g class="${part}">`,
  ...marks,
  '</g>',
];

function headMarks({ title, notes }: FrameParts, style: DrawStyle): Picture {
  const { margin: x, width, title: size } = style;
  const lines = wrapText(title, size, (width - 2 * x) / STRONG, MOST_TITLE_LINES);
  const at = (index: number): number => style.margin / 2 + index * size * 1.3;
  const below = textLines(notes, at(lines.length), style, { name: 'note' });
  return {
    marks: [
      ...lines.map((text, k) => textMark({ text, x, y: at(k + 1), size, style: 'strong title' })),
      ...below.marks,
    ],
    bottom: below.bottom + 12,
  };
}

function rootElement(
  { prefix, box, style }: { readonly prefix: string; readonly box: Box; readonly style: DrawStyle },
  children: readonly string[],
): string {
  const [width, height] = [coordinateText(box.width), coordinateText(box.height)];
  return `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: `settline-${style.theme}`,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      viewBox: `0 0 ${width} ${height}`,
      width: box.width,
      height: box.height,
      'font-family': 'sans-serif',
    },
    children.join('\n'),
  )}\n`;
}

/** A short word for a text, the same each time: drawings in one page keep their ids apart. */
function digest(text: string): string {
  let hash = 0x811c9dc5;
  for (let k = 0; k < text.length; k += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(k), 0x01000193);
  }
  return (hash >>> 0).toString(36);
}
