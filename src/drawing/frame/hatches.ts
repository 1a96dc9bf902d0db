import { element } from '../svg/element.js';
import { line, type Point } from '../svg/shapes.js';

/** Materials that are hatched. */
const HATCHES = [
  'paver',
  'sand',
  'stone',
  'sub-base',
  'old-paving',
  'soil',
  'cut',
  'fill',
  'hand-dig',
  'building',
  'slab',
] as const;
/** A hatch. Internal. */
export type Hatch = (typeof HATCHES)[number];

const SIZE = 16;

const dot = ([cx, cy]: Point, r: number): string => element('circle', { class: 'dot', cx, cy, r });
const stroke = (from: Point, to: Point): string => line('hatch', from, to);
const lump = (points: string): string => element('polygon', { class: 'hatch', points });

/** What is repeated in each, as handbooks draw it: common practice, no source. */
const TILES: Readonly<Record<Hatch, readonly string[]>> = {
  paver: [stroke([0, 16], [16, 0])],
  sand: [
    dot([3, 4], 0.9),
    dot([11, 2], 0.9),
    dot([7, 9], 0.9),
    dot([14, 12], 0.9),
    dot([2, 14], 0.9),
  ],
  stone: [
    lump('2,3 7,1 8,5 4,7'),
    lump('10,9 15,8 14,13 11,14'),
    lump('3,11 6,10 7,14 3,14'),
    dot([13, 4], 0.9),
  ],
  'sub-base': [
    lump('1,4 6,1 10,4 8,9 3,9'),
    lump('11,10 15,9 15,14 11,15'),
    lump('3,12 6,11 8,14 4,15'),
  ],
  'old-paving': [stroke([0, 16], [16, 0]), stroke([0, 0], [16, 16])],
  soil: [
    stroke([1, 4], [7, 4]),
    stroke([9, 12], [15, 12]),
    stroke([4, 9], [4, 15]),
    stroke([12, 1], [12, 7]),
  ],
  cut: [stroke([0, 0], [16, 16])],
  fill: [stroke([0, 4], [16, 4]), stroke([0, 12], [16, 12])],
  'hand-dig': [stroke([4, 0], [4, 16]), stroke([12, 0], [12, 16])],
  building: [stroke([0, 8], [8, 0]), stroke([0, 16], [16, 0]), stroke([8, 16], [16, 8])],
  slab: [lump('3,2 7,2 5,6'), lump('10,9 14,9 12,13'), dot([12, 3], 0.9), dot([4, 12], 0.9)],
};

/** The patterns of the hatches used, told apart from those of other drawings by a prefix. Internal. */
export const hatchPatterns = (used: Iterable<Hatch>, prefix: string): string =>
  HATCHES.filter((hatch) => new Set(used).has(hatch))
    .map((hatch) =>
      element(
        'pattern',
        { id: `${prefix}-${hatch}`, width: SIZE, height: SIZE, patternUnits: 'userSpaceOnUse' },
        `${element('rect', { class: `ground-${hatch}`, width: SIZE, height: SIZE })}${TILES[hatch].join('')}`,
      ),
    )
    .join('');

/** The fill of an area that has a hatch. Internal. */
export const hatchFill = (hatch: Hatch, prefix: string): string => `url(#${prefix}-${hatch})`;
