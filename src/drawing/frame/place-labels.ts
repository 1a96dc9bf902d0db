import { line, type Point } from '../svg/shapes.js';
import { crosses, isInside, overlaps, type Box } from './box.js';
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
  /** True for a text that reads upward. Default false. */
  readonly isTurned?: boolean;
  /** The direction to look in first, counter-clockwise from the right [rad]. Default: all alike. */
  readonly toward?: number;
  /** How far from its point it may stand, in rings of 10 pixels. Default: as far as all. */
  readonly rings?: number;
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
  /** How far from their points they may stand, in rings of 10 pixels. Default 60. */
  readonly rings?: number;
  /** Lines that they stand clear of where there is room beside their points. Default: none. */
  readonly lines?: readonly (readonly [Point, Point])[];
}

const STEP = 10;
const MOST_RINGS = 60;
/** A text nearer than this needs no leader. */
const BESIDE = 14;
/** Clear of lines a text stands no farther off than this. */
const CLEAR_RINGS = 4;

/**
 * Puts texts near their points, in the order given: each in the nearest free place, with a leader
 * where that is far off. What finds no place is in `left`: give it a number and a line of the legend.
 * Internal.
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  { view, taken, rings = MOST_RINGS, lines = [] }: LabelRoom,
): { readonly placed: readonly PlacedLabel[]; readonly left: readonly LabelRequest[] } {
  const boxes = [...taken];
  const placed: PlacedLabel[] = [];
  const left: LabelRequest[] = [];
  for (const request of requests) {
    const found = placeOne(request, { view, boxes, rings, lines });
    if (found === null) left.push(request);
    else {
      placed.push(found);
      boxes.push(found.box);
    }
  }
  return { placed, left };
}

interface Around {
  readonly view: Box;
  readonly boxes: Box[];
  readonly rings: number;
  readonly lines: readonly (readonly [Point, Point])[];
}

/** Beside its point and clear of lines, where that can be; else where there is room. */
function placeOne(
  request: LabelRequest,
  { view, boxes, rings, lines }: Around,
): PlacedLabel | null {
  const { text, size, style = '', isTurned = false, at, clearance = 6 } = request;
  const flat = textBox({ text, size, style, x: 0, y: 0, isTurned });
  const most = Math.min(rings, request.rings ?? rings);
  const reach = Math.max(0, clearance) + most * STEP + Math.max(flat.width, flat.height);
  const near = { x: at[0] - reach, y: at[1] - reach, width: 2 * reach, height: 2 * reach };
  const around = { view, boxes: boxes.filter((box) => overlaps(box, near)) };
  const clear = {
    rings: Math.min(most, CLEAR_RINGS),
    lines: lines.filter((one) => crosses(one, near)),
  };
  return (
    (lines.length > 0 ? findPlace(request, flat, { ...around, ...clear }) : null) ??
    findPlace(request, flat, { ...around, rings: most, lines: [] })
  );
}

/** The nearest free place; `flat` is the box of the text from its own place. */
function findPlace(
  request: LabelRequest,
  flat: Box,
  { view, boxes, rings, lines }: Around,
): PlacedLabel | null {
  const { at, clearance = 6, toward } = request;
  const { width, height } = flat;
  const ways = toward === undefined ? ROUND : waysFrom(toward);
  for (let ring = 0; ring < rings; ring += 1) {
    const reach = clearance + ring * STEP;
    for (const [dx, dy] of ways) {
      const x = at[0] + dx * (reach + width / 2) - width / 2;
      const y = at[1] + dy * (reach + height / 2) - height / 2;
      const box = { x, y, width, height };
      if (!isInside(box, view) || isTaken(box, boxes) || isCrossed(box, lines)) continue;
      const leader = reach - clearance > BESIDE ? ([at, nearest(box, at)] as const) : null;
      return { ...labelIn(request, box, flat), box, leader };
    }
  }
  return null;
}

/** What is in the way moves to the front: it is in the way of the next place too, as a rule. */
function isTaken(box: Box, boxes: Box[]): boolean {
  const at = boxes.findIndex((one) => overlaps(one, box));
  const [found, first] = [boxes[at], boxes[0]];
  if (found === undefined || first === undefined) return false;
  boxes[at] = first;
  boxes[0] = found;
  return true;
}

function isCrossed(box: Box, lines: Around['lines']): boolean {
  for (const one of lines) if (crosses(one, box)) return true;
  return false;
}

const PART = (2 * Math.PI) / 16;
const way = (turn: number): Point => [Math.cos(turn), -Math.sin(turn)];

/** All directions round from the right. */
const ROUND: readonly Point[] = Array.from({ length: 16 }, (_, k) => way(k * PART));

/** All directions, from one given to both sides of it. */
const waysFrom = (toward: number): readonly Point[] =>
  ROUND.map((_, k) => way(toward + (k % 2 === 0 ? -k / 2 : (k + 1) / 2) * PART));

/** The text whose box this is. */
const labelIn = (
  { text, size, style, isTurned = false }: LabelRequest,
  box: Box,
  flat: Box,
): TextLabel => ({
  text,
  size,
  style,
  isTurned,
  x: box.x - flat.x,
  y: box.y - flat.y,
});

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
