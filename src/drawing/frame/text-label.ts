import { coordinateText } from '../svg/coordinate-text.js';
import { textElement } from '../svg/element.js';
import { textWidth } from '../svg/text-width.js';
import type { Box } from './box.js';

/** A line of text, and where it stands. Internal. */
export interface TextLabel {
  readonly text: string;
  /** Left end, middle or right end of its base line, by the anchor. */
  readonly x: number;
  readonly y: number;
  /** Type size. */
  readonly size: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Names of styles: `strong`, `figure`. */
  readonly style?: string | undefined;
  /** True for a text that reads upward, turned about its place. */
  readonly isTurned?: boolean;
}

/** Height of a line of text in parts of its size: above and below its base line. Internal. */
export const ABOVE = 0.95;
export const BELOW = 0.27;

/** A text as SVG. Internal. */
export const textMark = ({
  text,
  x,
  y,
  size,
  anchor,
  style,
  isTurned = false,
}: TextLabel): string =>
  textElement(
    'text',
    {
      class: style,
      x,
      y,
      'font-size': size,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      transform: isTurned ? `rotate(-90 ${coordinateText(x)} ${coordinateText(y)})` : undefined,
    },
    text,
  );

/** The part of a text that stands before its place. Internal. */
export const SHARES = { start: 0, middle: 0.5, end: 1 } as const;

/** The box that a text takes up at most. Internal. */
export function textBox({
  text,
  x,
  y,
  size,
  anchor = 'start',
  style = '',
  isTurned = false,
}: TextLabel): Box {
  const long = textWidth(text, size, style.includes('strong'));
  const before = long * SHARES[anchor];
  const high = (ABOVE + BELOW) * size;
  return isTurned
    ? { x: x - ABOVE * size, y: y - long + before, width: high, height: long }
    : { x: x - before, y: y - ABOVE * size, width: long, height: high };
}
