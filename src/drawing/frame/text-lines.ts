import type { DrawStyle } from '../draw-options.js';
import { wrapText } from '../svg/text-width.js';
import { textMark } from './text-label.js';

const MOST_TOLD = 40;

const PITCH = 1.35;

/** Lines of text below each other, from a height down, with gaps before each text. Internal. */
export function textLines(
  texts: readonly string[],
  top: number,
  { margin, width, small }: DrawStyle,
  {
    x = margin,
    room = width - 2 * margin,
    gap = 0,
    size = small,
    name,
    most,
  }: {
    readonly x?: number;
    readonly room?: number;
    readonly gap?: number;
    readonly size?: number;
    readonly name?: string;
    /** Lines of a text at most. */
    readonly most?: number;
  } = {},
): { readonly marks: readonly string[]; readonly bottom: number } {
  let y = top;
  const marks = texts.flatMap((text) => {
    y += gap;
    return wrapText(text, size, room, most).map((line) => {
      y += size * PITCH;
      return textMark({ text: line, x, y, size, style: name });
    });
  });
  return { marks, bottom: y };
}

/** Labels without a place, in words. Internal. */
export function leftWords(left: readonly string[], { label }: DrawStyle): string[] {
  if (left.length === 0) return [];
  return left.length > MOST_TOLD
    ? [label('no-room-count', { count: `${left.length}` })]
    : [label('no-room', { labels: left.join('; ') })];
}
