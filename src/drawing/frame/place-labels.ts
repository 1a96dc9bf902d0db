import { line, type Point } from '../svg/shapes.js';
import { crosses, type Box } from './box.js';
import { SHARES, textBox, textMark, type TextLabel } from './text-label.js';

/** A text to put near a point. Internal. */
export interface LabelRequest {
  readonly text: string;
  /** Default: that of the room. */
  readonly size?: number;
  readonly style?: string;
  /** The point that it names. */
  readonly at: Point;
  /** How far from the point it stands at least. Default 6. */
  readonly clearance?: number;
  /** True for a text that stands on its point where it can. Default false. */
  readonly isCentred?: boolean;
  /** True for a text that reads upward. Default false. */
  readonly isTurned?: boolean;
  /** The direction to look in first, counter-clockwise from the right [rad]. Default 0. */
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
  /** Type size of those that have none of their own. Default 13. */
  readonly size?: number;
  /** How far from their points they may stand, in rings of 10 pixels. Default 60. */
  readonly rings?: number;
  /** Lines that they stand clear of where there is room beside their points. Default: none. */
  readonly lines?: readonly (readonly [Point, Point])[];
}

const STEP = 10;
const MOST_RINGS = 60;
const SIZE = 13;
/** A text nearer than this needs no leader. */
const BESIDE = 14;
/** Clear of lines a text stands no farther off than this. */
const CLEAR_RINGS = 4;

/**
 * Puts texts near their points, in the order given: each in the nearest free place, with a leader
 * where that is far off. What finds no place is in `left`: give it a number and a line of the legend.
 * Internal.
 */
export function placeLabels<T extends LabelRequest>(
  requests: readonly T[],
  { taken, ...room }: LabelRoom,
): { readonly placed: readonly PlacedLabel[]; readonly left: readonly T[] } {
  const boxes = [...taken];
  const placed: PlacedLabel[] = [];
  const left: T[] = [];
  for (const request of requests) {
    const found = placeOne(request, boxes, room);
    if (found === null) left.push(request);
    else {
      placed.push(found);
      boxes.push(found.box);
    }
  }
  return { placed, left };
}

/**
 * The nearest free place; clear of lines too, if such a place is near. One pass finds both, on bare
 * numbers: most places that it tries are taken.
 */
function placeOne(
  wish: LabelRequest,
  boxes: Box[],
  { view, size = SIZE, rings = MOST_RINGS, lines = [] }: Omit<LabelRoom, 'taken'>,
): PlacedLabel | null {
  const request = { size, ...wish };
  const { at, isTurned = false, toward = 0, isCentred = false } = request;
  const flat = textBox({ ...request, x: 0, y: 0 });
  const { width, height } = flat;
  const clearance = isCentred ? -width / 2 : (request.clearance ?? 6);
  const most = Math.min(rings, request.rings ?? rings);
  const far = CLEAR_RINGS * STEP + Math.max(width, height);
  const near = { x: at[0] - far, y: at[1] - far, width: 2 * far, height: 2 * far };
  const close = lines.filter((one) => crosses(one, near));
  const ways = waysFrom(toward);
  const [left, top] = [at[0] - width / 2, at[1] - height / 2];
  const [right, bottom] = [view.x + view.width - width, view.y + view.height - height];
  let found: PlacedLabel | null = null;
  for (let ring = 0; ring < most && (found === null || ring < CLEAR_RINGS); ring += 1) {
    const reach = clearance + ring * STEP;
    for (const [dx, dy] of ways) {
      const x = left + dx * (reach + width / 2);
      const y = top + dy * (reach + height / 2);
      if (x < view.x || y < view.y || x > right || y > bottom) continue;
      if (isTaken(x, y, x + width, y + height, boxes)) continue;
      const box = { x, y, width, height };
      const isClear = ring >= CLEAR_RINGS || !close.some((one) => crosses(one, box));
      if (!isClear && found !== null) continue;
      const anchor = isCentred ? 'middle' : anchorOf(isTurned ? -dy : dx);
      const share = SHARES[anchor];
      found = {
        ...request,
        anchor,
        box,
        leader: ring * STEP > BESIDE ? [at, nearest(box, at)] : null,
        x: x - flat.x + (isTurned ? 0 : width * share),
        y: y - flat.y - (isTurned ? height * share : 0),
      };
      if (isClear) return found;
    }
  }
  return found;
}

/** A text begins or ends at its point, by the side that it stands on: it may come out shorter. */
const anchorOf = (side: number): 'start' | 'middle' | 'end' =>
  side > 0.4 ? 'start' : side < -0.4 ? 'end' : 'middle';

/** What is in the way moves to the front: it is in the way of the next place too, as a rule. */
function isTaken(x: number, y: number, right: number, bottom: number, boxes: Box[]): boolean {
  let k = 0;
  for (const one of boxes) {
    if (one.x < right && x < one.x + one.width && one.y < bottom && y < one.y + one.height) {
      const [first = one] = boxes;
      boxes[k] = first;
      boxes[0] = one;
      return true;
    }
    k += 1;
  }
  return false;
}

const PART = (2 * Math.PI) / 16;

/** All directions, from one given to both sides of it. */
const waysFrom = (toward: number): readonly Point[] =>
  Array.from({ length: 16 }, (_, k) => {
    const turn = toward + (k % 2 === 0 ? -k / 2 : (k + 1) / 2) * PART;
    return [Math.cos(turn), -Math.sin(turn)];
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
