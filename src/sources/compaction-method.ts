import {
  printed,
  printedNumber,
  type ReferenceNumber,
  type ReferenceValue,
} from './reference-value.js';

/** Kinds of plant that compact lifts. */
export const COMPACTION_PLANTS = Object.freeze([
  'plate',
  'vibrotamper',
  'single-drum',
  'twin-drum',
] as const);
/** A plant of {@link COMPACTION_PLANTS}. */
export type CompactionPlant = (typeof COMPACTION_PLANTS)[number];

/** Kinds of fill that the method tells apart. */
export const FILLS = Object.freeze(['granular', 'cohesive'] as const);
/** A fill of {@link FILLS}. */
export type Fill = (typeof FILLS)[number];

/** A compacted lift and its passes. */
export interface PlantLift {
  /** Thickness once compacted, no more than this. */
  readonly lift: ReferenceValue;
  /** Minimum passes over it. */
  readonly passes: number;
  /** False where the table bars the lift from fill without any granular part. */
  readonly isForWhollyCohesive: boolean;
}

/** A class of plant, and what it may compact. */
export interface PlantClass {
  /** Kind of plant. */
  readonly plant: CompactionPlant;
  /**
   * Rating from which the class starts: kg per m2 of base plate, kg per m of drum width, or kg for a
   * vibrotamper.
   */
  readonly from: ReferenceNumber;
  /** Rating at which the class ends; null for no end. */
  readonly to: ReferenceNumber | null;
  /** Lifts from thin to thick; a thicker lift is not permitted. Empty: not permitted at all. */
  readonly lifts: readonly PlantLift[];
}

type Row = readonly [millimetres: string, passes: number, isForWhollyCohesive?: false];

const plantClass = (
  plant: CompactionPlant,
  [from, to]: readonly [string, string | null],
  ...rows: readonly Row[]
): PlantClass =>
  Object.freeze({
    plant,
    from: printedNumber(from, 'reinstatement-lifts'),
    to: to === null ? null : printedNumber(to, 'reinstatement-lifts'),
    lifts: Object.freeze(
      rows.map(([millimetres, passes, isForWhollyCohesive = true]) =>
        Object.freeze({
          lift: printed(millimetres, 'mm', 'reinstatement-lifts'),
          passes,
          isForWhollyCohesive,
        }),
      ),
    ),
  });

/**
 * Method of compaction: compacted lifts and passes by fill and class of plant. A fill is cohesive
 * with less than 20% of granular material. Classes that the table does not print for a fill are not
 * permitted for it. The vibrotamper of 25 kg is for work in a narrow trench. Source:
 * `reinstatement-lifts`.
 */
export const COMPACTION_METHOD: Readonly<Record<Fill, readonly PlantClass[]>> = Object.freeze({
  granular: Object.freeze([
    plantClass('vibrotamper', ['50', null], ['100', 4], ['150', 8]),
    plantClass('vibrotamper', ['25', '50'], ['100', 6]),
    plantClass('single-drum', ['600', '1000'], ['100', 12]),
    plantClass('single-drum', ['1000', '2000'], ['100', 6]),
    plantClass('single-drum', ['2000', '3500'], ['100', 3], ['150', 5], ['200', 7]),
    plantClass('single-drum', ['3500', null], ['100', 3], ['150', 4], ['200', 6]),
    plantClass('twin-drum', ['600', '1000'], ['100', 6]),
    plantClass('twin-drum', ['1000', '2000'], ['100', 3], ['150', 6]),
    plantClass('twin-drum', ['2000', null], ['100', 2], ['150', 3], ['200', 4]),
    plantClass('plate', ['1400', '1800'], ['100', 5]),
    plantClass('plate', ['1800', null], ['100', 3], ['150', 5], ['200', 7]),
  ]),
  cohesive: Object.freeze([
    plantClass('vibrotamper', ['50', null], ['100', 4], ['150', 8, false]),
    plantClass('single-drum', ['1000', '2000'], ['100', 8]),
    plantClass('single-drum', ['2000', '3500'], ['100', 3], ['150', 6]),
    plantClass('single-drum', ['3500', null], ['100', 3], ['150', 4], ['200', 6, false]),
    plantClass('twin-drum', ['1000', '2000'], ['100', 4], ['150', 8]),
    plantClass('twin-drum', ['2000', null], ['100', 2], ['150', 3], ['200', 5, false]),
    plantClass('plate', ['1800', null], ['100', 3], ['150', 6]),
  ]),
});

/**
 * Optimum moisture that is usual by soil, and how far from the optimum soil still compacts, as
 * fractions of dry mass. Source: `compaction-moisture`.
 */
export const COMPACTION_MOISTURE = Object.freeze({
  window: printedNumber('0.02', 'compaction-moisture'),
  'fine-grained': Object.freeze({
    minimum: printedNumber('0.12', 'compaction-moisture'),
    maximum: printedNumber('0.25', 'compaction-moisture'),
  }),
  'well-graded granular': Object.freeze({
    minimum: printedNumber('0.07', 'compaction-moisture'),
    maximum: printedNumber('0.12', 'compaction-moisture'),
  }),
});
