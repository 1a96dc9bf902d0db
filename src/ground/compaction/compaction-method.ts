import { choice, flag, optional, quantity } from '../../input/field.js';
import { THICKNESS } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { referenceQuantity } from '../../reference-quantity.js';
import { FILLS, type Fill, type PlantLift } from '../../sources/compaction-method.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import {
  formulaStep,
  given,
  procedureStep,
  withWorking,
  type Step,
  type Worked,
} from '../../working.js';
import { checkPlantAndFill, classOf, PLANT_FIELDS, ratingOf, type PlantInput } from './plant.js';

/** A machine and the fill it compacts. */
export interface CompactionMethodOptions extends PlantInput {
  /** `granular`, or `cohesive` with less than 20% of granular material. */
  readonly fill: Fill;
  /** True for a fill without any granular material; of cohesive fill only. Default: false. */
  readonly isWhollyCohesive?: boolean;
  /** Compacted thickness of a lift, to find its passes [length]. Default: the thickest. */
  readonly lift?: LengthInput;
}

const OPTIONS = shapeOf<CompactionMethodOptions>()({
  ...PLANT_FIELDS,
  fill: choice(FILLS),
  isWhollyCohesive: optional(flag, false),
  lift: optional(quantity(THICKNESS)),
});

/** A lift that a machine may compact. */
export interface MethodLift {
  /** Compacted thickness, no more than this. */
  readonly lift: Length;
  /** Minimum passes. */
  readonly passes: number;
}

/** What a machine may compact, by a published method. */
export interface CompactionMethod extends Worked {
  /** Rating: kg per m2 of base plate, kg per m of drum, or kg of a vibrotamper. */
  readonly rating: number;
  /** Lifts from thin to thick; empty if the machine is not permitted for the fill. */
  readonly lifts: readonly MethodLift[];
  /** Thickest compacted lift; null if the machine is not permitted for the fill. */
  readonly thickestLift: Length | null;
  /** Passes for the lift asked for, or for the thickest; null if it is not permitted. */
  readonly passes: number | null;
  /** What that means, in words. */
  readonly note: string;
}

/**
 * Thickest lift of a machine and its passes, from a published method: the class of the machine by
 * its mass over the area of its plate or the width of its drum, then the row of the lift. A thickness
 * between two rows goes up to the thicker. Nothing is read between or beyond rows: a machine lighter
 * than the table, or a lift thicker than its last row, is not permitted. The method stands in for
 * tests; where density is specified, test it.
 *
 * @param options - see {@link CompactionMethodOptions}
 * @returns rating, lifts and passes, thickest lift [length], passes
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `UNKNOWN_CHOICE`, `NOT_POSITIVE`, `OUT_OF_RANGE`,
 *   `WRONG_TYPE` and the reading codes
 * @source reinstatement-lifts
 * @example
 * const plate = { plant: 'plate', mass: '400 kg', plateArea: '0.25 m2' } as const;
 * const stone = compactionMethod({ ...plate, fill: 'granular', lift: '5 in' });
 * stone.rating //=> 1600
 * stone.thickestLift?.to('mm').toString() //=> '100'
 * stone.passes //=> null
 */
export function compactionMethod(options: CompactionMethodOptions): CompactionMethod {
  const read = readOptions(options, OPTIONS, checkPlantAndFill);
  const { plant, fill, lift } = read;
  const rating = ratingOf(read);
  const lifts = permittedLifts(read, rating);
  const row = lift === undefined ? lifts.at(-1) : rowOf(lifts, lift);
  const thickestLift = lifts.at(-1)?.lift ?? null;
  const found = {
    rating,
    lifts,
    thickestLift,
    passes: row?.passes ?? null,
    note: noteOf({ thickestLift, row, fill, plant }),
  };
  return withWorking(found, () => methodSteps(read, found));
}

/** The lifts of the machine's class. Internal. */
export function permittedLifts(
  {
    plant,
    fill,
    isWhollyCohesive,
  }: Pick<Values<typeof OPTIONS>, 'plant' | 'fill' | 'isWhollyCohesive'>,
  rating: number,
): readonly MethodLift[] {
  const rows: readonly PlantLift[] = classOf(plant, rating, fill)?.lifts ?? [];
  return rows
    .filter((row) => !isWhollyCohesive || row.isForWhollyCohesive)
    .map(({ lift, passes }) => ({ lift: referenceQuantity('length', lift), passes }));
}

/** The thinnest row that covers a lift; undefined if none does. Internal. */
export const rowOf = (lifts: readonly MethodLift[], lift: Length): MethodLift | undefined =>
  lifts.find((row) => lift.atMost(row.lift));

function noteOf(of: {
  readonly thickestLift: Length | null;
  readonly row: MethodLift | undefined;
  readonly fill: Fill;
  readonly plant: string;
}): string {
  const { thickestLift: most, row, fill, plant } = of;
  if (most === null) {
    return `The method does not permit this ${plant} on ${fill} fill at any thickness. Use a heavier machine.`;
  }
  const thickest = `${most.to('mm').toString()} mm`;
  if (row === undefined) {
    return `The lift is thicker than the ${thickest} that the method permits for this ${plant}. Use thinner lifts or a heavier machine.`;
  }
  return `${row.passes} passes over a lift of no more than ${row.lift.to('mm').toString()} mm compacted. The thickest permitted is ${thickest}.`;
}

function methodSteps(
  { plant, mass, plateArea, drumWidth, fill, lift }: Values<typeof OPTIONS>,
  { rating, thickestLift, passes }: Pick<CompactionMethod, 'rating' | 'thickestLift' | 'passes'>,
): Step[] {
  const per = plateArea?.to('m2') ?? drumWidth?.to('m') ?? null;
  return [
    formulaStep({
      title: `Rating of the ${plant}`,
      formula: per === null ? 'r = m' : 'r = m / p',
      given: [
        given('m', 'mass in kg', mass.to('kg')),
        ...(per === null ? [] : [given('p', 'plate area in m2 or drum width in m', per)]),
      ],
      result: given('r', 'rating, in kg per m2, kg per m or kg', rating),
      source: 'derived',
    }),
    procedureStep({
      title: 'Thickest lift and its passes, from the table of the method',
      procedure: 'compactionMethod',
      method:
        'finds the class of the machine in the table of the method by its rating and its fill, and the row of the lift',
      given: [
        given('r', 'rating', rating),
        given('f', 'fill', fill),
        ...(lift === undefined ? [] : [given('l', 'lift', lift)]),
        given('P', 'passes', passes ?? 'not permitted'),
      ],
      result: given('L', 'thickest lift', thickestLift ?? 'none'),
      source: 'reinstatement-lifts',
    }),
  ];
}
