import type { Point } from '../svg/shapes.js';
import { hatchRules, strokePath, type Hatch } from './hatches.js';
import type { Stroke } from './lines-across.js';
import { marksWithin } from './marks-within.js';

/** Strokes and dots that are repeated in each tile of 16 pixels; closed ones run back to their start. */
const sown = (
  points: readonly Point[],
  {
    strokes = [],
    isClosed = false,
    dots = [],
  }: {
    readonly strokes?: readonly Stroke[];
    readonly isClosed?: boolean;
    readonly dots?: readonly Point[];
  },
) =>
  strokePath('hatch', marksWithin(points, strokes), isClosed ? 'z' : '') +
  strokePath(
    'dot',
    marksWithin(
      points,
      dots.map((dot) => [dot]),
    ),
    'z',
  );

/** The rules of hatches with dots among them. Internal. */
export const grainRules = (hatches: readonly Hatch[]): string[] => [
  '.dot{stroke:$ink;stroke-width:1.8;stroke-opacity:.65;stroke-linecap:round}',
  ...hatchRules(hatches),
];

// what each material is drawn with, as handbooks do: common practice, no source

/** Bedding. Internal. */
export const SAND: Hatch = {
  name: 'sand',
  ground: '$sand',
  fill: (points) =>
    sown(points, {
      dots: [
        [3, 4],
        [11, 2],
        [7, 9],
        [14, 12],
        [2, 14],
      ],
    }),
};

/** Base. Internal. */
export const STONE: Hatch = {
  name: 'stone',
  ground: '$stone',
  fill: (points) =>
    sown(points, {
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
    }),
};

/** Sub-base. Internal. */
export const SUB_BASE: Hatch = {
  name: 'sub-base',
  ground: '$stone',
  fill: (points) =>
    sown(points, {
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
    }),
};

/** Soil. Internal. */
export const SOIL: Hatch = {
  name: 'soil',
  ground: '$soil',
  fill: (points) =>
    sown(points, {
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
    }),
};

/** A layer against frost. Internal. */
export const FROST: Hatch = {
  name: 'frost',
  ground: '$stone',
  fill: (points) =>
    sown(points, {
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
    }),
};
