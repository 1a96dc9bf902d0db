import { element } from '../svg/element.js';
import { polygon, type Point } from '../svg/shapes.js';
import { linesAcross, type Stroke } from './lines-across.js';
import { marksWithin } from './marks-within.js';

/** What an area is filled with. */
interface HatchKind {
  /** Lines through the whole area: their direction and their distance [px]. */
  readonly lines?: readonly (readonly [way: Point, apart: number])[];
  /** Strokes that are repeated in each tile of 16 pixels. */
  readonly strokes?: readonly Stroke[];
  /** Dots in each tile. */
  readonly dots?: readonly Point[];
}

const stroke = (...points: readonly Point[]): Stroke => points;
const lump = (...points: readonly [Point, ...Point[]]): Stroke => [...points, points[0]];

const UP: Point = [Math.SQRT1_2, -Math.SQRT1_2];
const DOWN: Point = [Math.SQRT1_2, Math.SQRT1_2];

/** What each material is drawn with, as handbooks do: common practice, no source. */
const HATCHES = {
  paver: { lines: [[UP, 11]] },
  sand: {
    dots: [
      [3, 4],
      [11, 2],
      [7, 9],
      [14, 12],
      [2, 14],
    ],
  },
  stone: {
    strokes: [
      lump([2, 3], [7, 1], [8, 5], [4, 7]),
      lump([10, 9], [15, 8], [14, 13], [11, 14]),
      lump([3, 11], [6, 10], [7, 14], [3, 14]),
    ],
    dots: [[13, 4]],
  },
  'sub-base': {
    strokes: [
      lump([1, 4], [6, 1], [10, 4], [8, 9], [3, 9]),
      lump([11, 10], [15, 9], [15, 14], [11, 15]),
      lump([3, 12], [6, 11], [8, 14], [4, 15]),
    ],
  },
  'old-paving': {
    lines: [
      [UP, 11],
      [DOWN, 11],
    ],
  },
  soil: {
    strokes: [
      stroke([1, 4], [7, 4]),
      stroke([9, 12], [15, 12]),
      stroke([4, 9], [4, 15]),
      stroke([12, 1], [12, 7]),
    ],
  },
  cut: { lines: [[DOWN, 11]] },
  fill: { lines: [[[1, 0], 8]] },
  'hand-dig': { lines: [[[0, 1], 8]] },
  building: { lines: [[UP, 5.5]] },
  slab: {
    strokes: [lump([3, 2], [7, 2], [5, 6]), lump([10, 9], [14, 9], [12, 13])],
    dots: [
      [12, 3],
      [4, 12],
    ],
  },
} as const satisfies Readonly<Record<string, HatchKind>>;

/** A hatch. Internal. */
export type Hatch = keyof typeof HATCHES;

/**
 * A closed figure filled with a hatch: its ground, and strokes that end at its sides. They are drawn
 * one by one, since patterns make large files of what is printed. Internal.
 */
export function hatched(style: string, points: readonly Point[], hatch: Hatch): string {
  const { lines = [], strokes = [], dots = [] }: HatchKind = HATCHES[hatch];
  const drawn = [
    ...lines.flatMap(([way, apart]) => linesAcross(points, way, apart)),
    ...marksWithin(points, strokes),
  ];
  const spots = marksWithin(
    points,
    dots.map((dot) => [dot]),
  );
  return [
    polygon(`${style} ground-${hatch}`, points),
    drawn.length === 0 ? '' : path('hatch', drawn.map(strokeText).join('')),
    spots.length === 0 ? '' : path('dot', spots.map(dotText).join('')),
  ].join('');
}

const path = (name: string, d: string): string => element('path', { class: name, d });

/** Half a pixel off shows nowhere in a hatch: tenths are enough. */
const tenths = (value: number): number => Math.round(value * 10) / 10;
const pair = ([x, y]: Point): string => `${tenths(x)} ${tenths(y)}`;
const strokeText = (points: Stroke): string => `M${points.map(pair).join(' ')}`;
const dotText = ([at = [0, 0]]: Stroke): string => `M${pair(at)}z`;
