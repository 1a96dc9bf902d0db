import type { DrawStyle } from '../draw-options.js';
import { wrapText } from '../svg/text-width.js';
import { textMark } from './text-label.js';

const MOST_TOLD = 40;

/** Lines of text below a picture. Internal. */
export function textLines(
  texts: readonly string[],
  top: number,
  { margin, width, small }: DrawStyle,
): { readonly marks: readonly string[]; readonly bottom: number } {
  const lines = texts.flatMap((text) => wrapText(text, small, width - 2 * margin));
  return {
    marks: lines.map((text, k) =>
      textMark({ text, x: margin, y: top + (k + 1) * small * 1.35, size: small }),
    ),
    bottom: top + lines.length * small * 1.35,
  };
}

/** Labels without a place, in words. Internal. */
export function leftWords(left: readonly string[], { label }: DrawStyle): string[] {
  if (left.length === 0) return [];
  return left.length > MOST_TOLD
    ? [label('no-room-count', { count: `${left.length}` })]
    : [label('no-room', { labels: left.join('; ') })];
}
