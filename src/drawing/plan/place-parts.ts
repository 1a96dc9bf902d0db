import type { Picture } from '../frame/frame-drawing.js';
import { labelMarks, placeLabels } from '../frame/place-labels.js';
import { leftWords, textLines } from '../frame/text-lines.js';
import { rectangle } from '../svg/shapes.js';
import type { PlanPart, PlanPen } from './parts.js';
import { planFooter } from './plan-footer.js';

const RINGS = 9;
/** Of more lines than these labels do not stand clear: it would take long. */
const MOST_LINES = 1500;

/**
 * A part in its picture: its marks and its labels in their places, axes and scale below, and in words
 * what found no place and what does not show. Internal.
 */
export function drawPicture(
  { marks, labels, taken, lines, told }: Required<PlanPart>,
  { view, style }: PlanPen,
): Picture {
  const inOrder = [...labels].sort((a, b) => a.rank - b.rank);
  const { placed, left } = placeLabels(inOrder, {
    view: view.area,
    taken,
    size: style.small,
    rings: RINGS,
    lines: lines.length > MOST_LINES ? [] : lines,
  });
  const without = left.filter(({ isSpare = false }) => !isSpare).map(({ text }) => text);
  const footer = planFooter(view, style);
  const words = textLines([...leftWords(without, style), ...told], footer.bottom + 4, style);
  return {
    marks: [
      ...marks,
      ...placed.map(({ box }) => rectangle('knock', box)),
      ...labelMarks(placed),
      ...footer.marks,
      ...words.marks,
    ],
    bottom: words.bottom,
  };
}
