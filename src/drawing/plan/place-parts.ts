import { labelMarks, placeLabels } from '../frame/place-labels.js';
import { rectangle } from '../svg/shapes.js';
import type { PlanPart, PlanPen } from './parts.js';

const RINGS = 9;
/** Of more lines than these labels do not stand clear: it would take long. */
const MOST_LINES = 1500;

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
