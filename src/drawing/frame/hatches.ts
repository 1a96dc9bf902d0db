import { coordinateText } from '../svg/coordinate-text.js';
import { element } from '../svg/element.js';
import { polygon, type Point } from '../svg/shapes.js';
import { linesAcross, type Stroke } from './lines-across.js';
import { marksWithin } from './marks-within.js';

/** What an area is filled with. A drawing carries those alone that it names. Internal. */
export interface Hatch {
  /** Its name in style sheets. */
  readonly name: string;
  /** The colour below it. */
  readonly ground: string;
  /** Lines through the whole area: their direction, of length 1, and their distance [px]. */
  readonly lines?: readonly (readonly [way: Point, apart: number])[];
  /** Strokes that are repeated in each tile of 16 pixels. */
  readonly strokes?: readonly Stroke[];
  /** True where each stroke runs back to its start. */
  readonly isClosed?: boolean;
  /** Dots in each tile. */
  readonly dots?: readonly Point[];
}

const UP: Point = [0.7071067811865476, -0.7071067811865476];
const DOWN: Point = [0.7071067811865476, 0.7071067811865476];

// what each material is drawn with, as handbooks do: common practice, no source

/** Pavers. Internal. */
export const PAVER: Hatch = {
  name: 'paver',
  ground: '$paver',
  lines: [[UP, 11]],
};

/** Bedding. Internal. */
export const SAND: Hatch = {
  name: 'sand',
  ground: '$sand',
  dots: [
    [3, 4],
    [11, 2],
    [7, 9],
    [14, 12],
    [2, 14],
  ],
};

/** Base. Internal. */
export const STONE: Hatch = {
  name: 'stone',
  ground: '$stone',
  strokes: [
    [
      [2, 3],
      [7, 1],
      [8, 5],
      [4, 7],
    ],
    [
      [10, 9],
      [15, 8],
      [14, 13],
      [11, 14],
    ],
    [
      [3, 11],
      [6, 10],
      [7, 14],
      [3, 14],
    ],
  ],
  isClosed: true,
  dots: [[13, 4]],
};

/** Sub-base. Internal. */
export const SUB_BASE: Hatch = {
  name: 'sub-base',
  ground: '$stone',
  strokes: [
    [
      [1, 4],
      [6, 1],
      [10, 4],
      [8, 9],
      [3, 9],
    ],
    [
      [11, 10],
      [15, 9],
      [15, 14],
      [11, 15],
    ],
    [
      [3, 12],
      [6, 11],
      [8, 14],
      [4, 15],
    ],
  ],
  isClosed: true,
};

/** Old paving. Internal. */
export const OLD_PAVING: Hatch = {
  name: 'old-paving',
  ground: '$old',
  lines: [
    [UP, 11],
    [DOWN, 11],
  ],
};

/** Soil. Internal. */
export const SOIL: Hatch = {
  name: 'soil',
  ground: '$soil',
  strokes: [
    [
      [1, 4],
      [7, 4],
    ],
    [
      [9, 12],
      [15, 12],
    ],
    [
      [4, 9],
      [4, 15],
    ],
    [
      [12, 1],
      [12, 7],
    ],
  ],
};

/** What is dug. Internal. */
export const CUT: Hatch = { name: 'cut', ground: '$cut', lines: [[DOWN, 11]] };

/** What is filled. Internal. */
export const FILL: Hatch = { name: 'fill', ground: '$fill', lines: [[[1, 0], 8]] };

/** A zone of a marked line. Internal. */
export const HAND_DIG: Hatch = { name: 'hand-dig', ground: 'none', lines: [[[0, 1], 8]] };

/** A building along an edge. Internal. */
export const BUILDING: Hatch = { name: 'building', ground: '$old', lines: [[UP, 5.5]] };

/** A slab along an edge. Internal. */
export const SLAB: Hatch = {
  name: 'slab',
  ground: '$stone',
  strokes: [
    [
      [3, 2],
      [7, 2],
      [5, 6],
    ],
    [
      [10, 9],
      [14, 9],
      [12, 13],
    ],
  ],
  isClosed: true,
  dots: [
    [12, 3],
    [4, 12],
  ],
};

/** The rules of hatches. Internal. */
export const hatchRules = (hatches: readonly Hatch[]): string[] => [
  '.hatch{stroke:$ink;stroke-width:.7;stroke-opacity:.55;fill:none}',
  '.dot{stroke:$ink;stroke-width:1.8;stroke-opacity:.65;stroke-linecap:round}',
  '.area{stroke:$ink;stroke-width:1.2}',
  ...hatches.map(({ name, ground }) => `.ground-${name}{fill:${ground}}`),
];

/**
 * A closed figure filled with a hatch: its ground, and strokes that end at its sides. They are drawn
 * one by one, since patterns make large files of what is printed. Internal.
 */
export function hatched(style: string, points: readonly Point[], hatch: Hatch): string {
  const { name, lines = [], strokes = [], isClosed = false, dots = [] } = hatch;
  const drawn = [
    ...lines.flatMap(([way, apart]) => linesAcross(points, way, apart)),
    ...marksWithin(points, strokes),
  ];
  const spots = marksWithin(
    points,
    dots.map((dot) => [dot]),
  );
  return [
    polygon(`${style} ground-${name}`, points),
    path('hatch', drawn, isClosed ? 'z' : ''),
    path('dot', spots, 'z'),
  ].join('');
}

const path = (name: string, strokes: readonly Stroke[], end: string): string =>
  strokes.length === 0
    ? ''
    : element('path', {
        class: name,
        d: strokes.map((stroke) => `M${stroke.map(pair).join(' ')}${end}`).join(''),
      });

/** Half a pixel off shows nowhere in a hatch: tenths are enough. */
const tenths = (value: number): string => coordinateText(Math.round(value * 10) / 10);
const pair = ([x, y]: Point): string => `${tenths(x)} ${tenths(y)}`;
