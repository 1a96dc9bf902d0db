import type { DrawStyle } from '../draw-options.js';
import { labelMarks, placeLabels } from '../frame/place-labels.js';
import { textMark } from '../frame/text-label.js';
import { rectangle } from '../svg/shapes.js';
import { wrapText } from '../svg/text-width.js';
import type { PlanPart, PlanPen } from './parts.js';

const RINGS = 9;
/** Of more lines than these labels do not stand clear: it would take long. */
const MOST_LINES = 1500;
const MOST_TOLD = 40;

/** The marks of a part and its labels in their places; what finds no place is told. Internal. */
export function placedMarks(
  { marks, labels, taken, lines = [] }: PlanPart,
  { view }: PlanPen,
): { readonly marks: readonly string[]; readonly left: readonly string[] } {
  const inOrder = [...labels].sort((a, b) => a.rank - b.rank);
  const { placed, left } = placeLabels(inOrder, {
    view: view.area,
    taken,
    rings: RINGS,
    lines: lines.length > MOST_LINES ? [] : lines,
  });
  const spare = new Set(labels.filter(({ isSpare = false }) => isSpare).map(({ text }) => text));
  return {
    marks: [...marks, ...placed.map(({ box }) => rectangle('knock', box)), ...labelMarks(placed)],
    left: left.map(({ text }) => text).filter((text) => !spare.has(text)),
  };
}

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
