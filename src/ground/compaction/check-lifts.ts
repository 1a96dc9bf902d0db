import { choice, flag, list, object, optional, quantity, text, whole } from '../../input/field.js';
import { PASSES, THICKNESS } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { FILLS, type Fill } from '../../sources/compaction-method.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import type { Verdict } from '../../verdict.js';
import {
  formulaStep,
  given,
  procedureStep,
  withWorking,
  type Step,
  type Worked,
} from '../../working.js';
import { permittedLifts, rowOf, type MethodLift } from './compaction-method.js';
import { checkPlantAndFill, PLANT_FIELDS, ratingOf, type PlantInput } from './plant.js';

/** A lift as planned or as done. */
export interface PlacedLiftInput {
  /** What the crew calls it. Each name once. */
  readonly name: string;
  /** Compacted thickness [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /** Passes over it, 1 to 50. */
  readonly passes: number | string;
}

/** Lifts, and the machine that compacts them. */
export interface CheckLiftsOptions extends PlantInput {
  /** `granular`, or `cohesive` with less than 20% of granular material. */
  readonly fill: Fill;
  /** True for a fill without any granular material; of cohesive fill only. Default: false. */
  readonly isWhollyCohesive?: boolean;
  /** Lifts from the bottom up. */
  readonly lifts: readonly PlacedLiftInput[];
}

const LIFT = shapeOf<PlacedLiftInput>()({
  name: text(),
  thickness: quantity(THICKNESS),
  passes: whole(PASSES),
});

const OPTIONS = shapeOf<CheckLiftsOptions>()({
  ...PLANT_FIELDS,
  fill: choice(FILLS),
  isWhollyCohesive: optional(flag, false),
  lifts: list(object(LIFT), { of: 'lifts', most: 500, unique: 'name' }),
});

/** A lift compared with the method. */
export interface CheckedLift {
  /** What the crew calls it. */
  readonly name: string;
  /** Compacted thickness. */
  readonly thickness: Length;
  /** Passes given. */
  readonly passes: number;
  /** Passes that the method requires; null if it does not permit a lift this thick. */
  readonly requiredPasses: number | null;
  /** `pass` or `fail`. */
  readonly verdict: Verdict;
  /** What to do about it, in words. */
  readonly note: string;
}

/** Lifts compared with a published method. */
export interface LiftsCheck extends Worked {
  /** `pass` if every lift passes. */
  readonly verdict: Verdict;
  /** Every lift, from the bottom up. */
  readonly lifts: readonly CheckedLift[];
  /** Thickest lift that the method permits for the machine; null for none. */
  readonly thickestLift: Length | null;
}

/**
 * Checks lifts and passes against a published method of compaction, see {@link compactionMethod}. A
 * lift on the limit passes.
 *
 * @param options - see {@link CheckLiftsOptions}
 * @returns verdict; each lift with its required passes and verdict; thickest lift [length]
 * @throws `DUPLICATE_ID`, `EMPTY_LIST`, `NOT_WHOLE`, `REQUIRED`, `CONFLICTING_FIELDS`,
 *   `UNKNOWN_CHOICE`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source reinstatement-lifts
 * @example
 * const check = checkLifts({
 *   plant: 'plate',
 *   mass: '500 kg',
 *   plateArea: '0.25 m2',
 *   fill: 'granular',
 *   lifts: [
 *     { name: 'lower', thickness: '150 mm', passes: 5 },
 *     { name: 'upper', thickness: '100 mm', passes: 2 },
 *   ],
 * });
 * check.verdict //=> 'fail'
 * check.lifts[1]?.requiredPasses //=> 3
 */
export function checkLifts(options: CheckLiftsOptions): LiftsCheck {
  const read = readOptions(options, OPTIONS, checkPlantAndFill);
  const rows = permittedLifts(read, ratingOf(read));
  const lifts = read.lifts.map((lift) => checkLift(lift, rows));
  const found = {
    verdict: lifts.every(({ verdict }) => verdict === 'pass') ? 'pass' : 'fail',
    lifts,
    thickestLift: rows.at(-1)?.lift ?? null,
  } as const;
  return withWorking(found, () => lifts.map(liftStep));
}

function checkLift(
  { name, thickness, passes }: Values<typeof LIFT>,
  rows: readonly MethodLift[],
): CheckedLift {
  const row = rowOf(rows, thickness);
  const required = row?.passes ?? null;
  const isEnough = required !== null && passes >= required;
  return {
    name,
    thickness,
    passes,
    requiredPasses: required,
    verdict: isEnough ? 'pass' : 'fail',
    note: isEnough
      ? 'The passes are enough.'
      : required === null
        ? 'The method does not permit a lift this thick with this machine. Use thinner lifts or a heavier machine.'
        : `Give it ${required - passes} more ${required - passes === 1 ? 'pass' : 'passes'}.`,
  };
}

const liftStep = ({ name, thickness, passes, requiredPasses, verdict }: CheckedLift): Step => {
  const fields = {
    title: `Passes over ${name}`,
    result: given('v', 'verdict', verdict),
    source: 'reinstatement-lifts',
  } as const;
  const done = given('p', 'passes', passes);
  if (requiredPasses === null) {
    const method = 'finds no row of the table for a lift this thick';
    const values = [given('t', 'compacted thickness', thickness), done];
    return procedureStep({ ...fields, given: values, procedure: 'checkLifts', method });
  }
  return formulaStep({
    ...fields,
    given: [done, given('r', 'required passes', requiredPasses)],
    formula: 'v = p >= r ? "pass" : "fail"',
  });
};
