import { coordinateText } from '../svg/coordinate-text.js';
import { element } from '../svg/element.js';
import { polygon, type Point } from '../svg/shapes.js';
import { linesAcross, type Stroke } from './lines-across.js';

/** What an area is filled with. A drawing carries those alone that it names. Internal. */
export interface Hatch {
  /** Its name in style sheets. */
  readonly name: string;
  /** The colour below it. */
  readonly ground: string;
  /** The strokes inside a closed figure. */
  readonly fill: (points: readonly Point[]) => string;
}

/** Lines through the whole area: the direction of each, of length 1, and their distance [px]. */
const ruled = (
  points: readonly Point[],
  ...lines: readonly (readonly [way: Point, apart: number])[]
) =>
  strokePath(
    'hatch',
    lines.flatMap(([way, apart]) => linesAcross(points, way, apart)),
  );

const UP: Point = [0.7071067811865476, -0.7071067811865476];
const DOWN: Point = [0.7071067811865476, 0.7071067811865476];

// what each material is drawn with, as handbooks do: common practice, no source

/** Pavers. Internal. */
export const PAVER: Hatch = {
  name: 'paver',
  ground: '$paver',
  fill: (points) => ruled(points, [UP, 11]),
};

/** Old paving. Internal. */
export const OLD_PAVING: Hatch = {
  name: 'old-paving',
  ground: '$old',
  fill: (points) => ruled(points, [UP, 11], [DOWN, 11]),
};

/** What is dug. Internal. */
export const CUT: Hatch = {
  name: 'cut',
  ground: '$cut',
  fill: (points) => ruled(points, [DOWN, 11]),
};

/** What is filled. Internal. */
export const FILL: Hatch = {
  name: 'fill',
  ground: '$fill',
  fill: (points) => ruled(points, [[1, 0], 8]),
};

/** A zone of a marked line. Internal. */
export const HAND_DIG: Hatch = {
  name: 'hand-dig',
  ground: 'none',
  fill: (points) => ruled(points, [[0, 1], 8]),
};

/** A building along an edge. Internal. */
export const BUILDING: Hatch = {
  name: 'building',
  ground: '$old',
  fill: (points) => ruled(points, [UP, 5.5]),
};

/** A slab along an edge. Internal. */
export const SLAB: Hatch = {
  name: 'slab',
  ground: '$stone',
  fill: (points) => ruled(points, [[1, 0], 6.5], [[0, 1], 6.5]),
};

/** The rules of hatches. Internal. */
export const hatchRules = (hatches: readonly Hatch[]): string[] => [
  '.hatch{stroke:$ink;stroke-width:.7;stroke-opacity:.55;fill:none}',
  '.area{stroke:$ink;stroke-width:1.2}',
  ...hatches.map(({ name, ground }) => `.ground-${name}{fill:${ground}}`),
];

/**
 * A closed figure filled with a hatch: its ground, and strokes that end at its sides. They are drawn
 * one by one, since patterns make large files of what is printed. Internal.
 */
export const hatched = (style: string, points: readonly Point[], { name, fill }: Hatch): string =>
  polygon(`${style} ground-${name}`, points) + fill(points);

/** Strokes as one path, each with the same end. Internal. */
export const strokePath = (name: string, strokes: readonly Stroke[], end = ''): string =>
  strokes.length === 0
    ? ''
    : element('path', {
        class: name,
        d: strokes.map((stroke) => `M${stroke.map(pair).join(' ')}${end}`).join(''),
      });

/** Half a pixel off shows nowhere in a hatch: tenths are enough. */
const tenths = (value: number): string => coordinateText(Math.round(value * 10) / 10);
const pair = ([x, y]: Point): string => `${tenths(x)} ${tenths(y)}`;
