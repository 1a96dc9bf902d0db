import { line, type Point } from '../svg/shapes.js';
import { isInside, overlaps, type Box } from './box.js';
import { textBox, textMark, type TextLabel } from './text-label.js';

/** A text to put near a point. Internal. */
export interface LabelRequest {
  readonly text: string;
  readonly size: number;
  readonly style?: string;
  /** The point that it names. */
  readonly at: Point;
  /** How far from the point it stands at least. Default 6. */
  readonly clearance?: number;
}

/** A text in its place. Internal. */
export interface PlacedLabel extends TextLabel {
  readonly box: Box;
  /** From the point to the text, where it stands far off; null where it stands beside it. */
  readonly leader: readonly [Point, Point] | null;
}

/** Where texts may stand. Internal. */
export interface LabelRoom {
  /** They stay inside this. */
  readonly view: Box;
  /** They stay clear of these: texts that stand already. */
  readonly taken: readonly Box[];
}

const DIRECTIONS = 16;
const STEP = 10;
const MOST_RINGS = 60;
/** A text nearer than this needs no leader. */
const BESIDE = 14;

/**
 * Puts texts near their points, in the order given: each in the nearest free place, with a leader
 * where that is far off. What finds no place is in `left`: give it a number and a line of the legend.
 * Internal.
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  { view, taken }: LabelRoom,
): { readonly placed: readonly PlacedLabel[]; readonly left: readonly LabelRequest[] } {
  const boxes = [...taken];
  const placed: PlacedLabel[] = [];
  const left: LabelRequest[] = [];
  for (const request of requests) {
    const found = findPlace(request, view, boxes);
    if (found === null) left.push(request);
    else {
      placed.push(found);
      boxes.push(found.box);
    }
  }
  return { placed, left };
}

function findPlace(request: LabelRequest, view: Box, boxes: readonly Box[]): PlacedLabel | null {
  const { at, clearance = 6 } = request;
  for (let ring = 0; ring < MOST_RINGS; ring += 1) {
    const reach = clearance + ring * STEP;
    for (let k = 0; k < DIRECTIONS; k += 1) {
      const label = labelAt(request, reach, (2 * Math.PI * k) / DIRECTIONS);
      const box = textBox(label);
      if (!isInside(box, view) || boxes.some((one) => overlaps(one, box))) continue;
      return { ...label, box, leader: reach - clearance > BESIDE ? [at, nearest(box, at)] : null };
    }
  }
  return null;
}

/** The text in a direction from its point, its box just clear of the reach. */
function labelAt(request: LabelRequest, reach: number, turn: number): TextLabel {
  const { text, size, style, at } = request;
  const flat = textBox({ text, size, x: 0, y: 0 });
  const [dx, dy] = [Math.cos(turn), -Math.sin(turn)];
  const centre = [
    at[0] + dx * (reach + flat.width / 2),
    at[1] + dy * (reach + flat.height / 2),
  ] as const;
  return {
    text,
    size,
    ...(style === undefined ? {} : { style }),
    x: centre[0] - flat.width / 2,
    y: centre[1] - flat.height / 2 - flat.y,
  };
}

/** The point of a box nearest to another. */
const nearest = ({ x, y, width, height }: Box, [px, py]: Point): Point => [
  Math.max(x, Math.min(px, x + width)),
  Math.max(y, Math.min(py, y + height)),
];

/** Placed texts as SVG: leaders below, texts above. Internal. */
export const labelMarks = (placed: readonly PlacedLabel[]): string[] => [
  ...placed.flatMap(({ leader }) => (leader === null ? [] : [line('leader', ...leader)])),
  ...placed.map(textMark),
];
