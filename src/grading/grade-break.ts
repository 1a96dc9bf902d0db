import { bothOrNeither } from '../input/both-or-neither.js';
import { neededBy } from '../input/needed-by.js';
import { object, optional, quantity } from '../input/field.js';
import { DISTANCE, RISE, SLOPE, SLOPE_OF_SOME, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { clearanceOver, clearanceStep, type BreakClearance } from './break-clearance.js';
import { countParts } from './count-parts.js';

/** A vehicle that passes a break. Measure the one that uses the drive. */
export interface VehicleInput {
  /** Wheelbase, from axle to axle [length], more than 0 and at most 100 m. */
  readonly wheelbase: LengthInput;
  /** Lowest height of the underside between the axles [length], more than 0 and at most 100 m. */
  readonly underside: LengthInput;
  /**
   * Overhang from an axle to the end of the vehicle, front or rear, whichever is longer [length],
   * more than 0 and at most 100 m. Default: not checked.
   */
  readonly overhang?: LengthInput;
  /** Lowest height under the overhang [length], more than 0 and at most 100 m. Needed with `overhang`. */
  readonly overhangHeight?: LengthInput;
}

/** Limit for a change of grade at one break, and the distance between breaks. */
export interface BreakLimitInput {
  /** Maximum change of grade at one break [slope], more than 0 and at most 10. */
  readonly change: SlopeInput;
  /** Distance from break to break [length], more than 0 and at most 100 km. */
  readonly distance: LengthInput;
}

/** A change of grade, and the vehicle that passes it. */
export interface GradeBreakOptions {
  /** Grade before the break [slope], positive if it rises; up to 10 either way. */
  readonly before: SlopeInput;
  /** Grade after the break [slope], positive if it rises; up to 10 either way. */
  readonly after: SlopeInput;
  /** The vehicle that passes. Default: not checked. */
  readonly vehicle?: VehicleInput;
  /** A limit to spread the change over several breaks; `DRIVEWAY_BREAK_LIMITS` quotes one. Default: none. */
  readonly limit?: BreakLimitInput;
  /** Uncertainty of the clearance [length], 0 to 10 m; with `vehicle`. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const VEHICLE = shapeOf<VehicleInput>()({
  wheelbase: quantity(RISE),
  underside: quantity(RISE),
  overhang: optional(quantity(RISE)),
  overhangHeight: optional(quantity(RISE)),
});

const LIMIT = shapeOf<BreakLimitInput>()({
  change: quantity(SLOPE_OF_SOME),
  distance: quantity(DISTANCE),
});

const OPTIONS = shapeOf<GradeBreakOptions>()({
  before: quantity(SLOPE),
  after: quantity(SLOPE),
  vehicle: optional(
    object(VEHICLE, (reader, _, path, raw) => {
      bothOrNeither(reader, raw, ['overhang', 'overhangHeight'], path);
    }),
  ),
  limit: optional(object(LIMIT)),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** A sharp change of grade, spread over several breaks. */
export interface BreakTransition {
  /** Number of breaks. */
  readonly breaks: number;
  /** Distance from the first break to the last. */
  readonly length: Length;
  /** Grades in equal steps, from the one before to the one after. */
  readonly grades: readonly Slope[];
}

/** A change of grade, and the clearance over it. */
export interface GradeBreakCheck extends Worked {
  /** Grade after less grade before. */
  readonly change: Slope;
  /** `crest`: humped; `sag`: hollow; `straight`: no change. */
  readonly kind: 'crest' | 'sag' | 'straight';
  /** Clearance of the vehicle; null without one, or in a sag if no overhang is given. */
  readonly clearance: BreakClearance | null;
  /** The change spread over several breaks; null if no limit is given. */
  readonly transition: BreakTransition | null;
}

/** More breaks than this are a wrong digit or unit. */
const MOST_BREAKS = 1000;

/**
 * A change of grade `A = g2 - g1` and the vehicle over it. At a crest midway between the axles the
 * ground comes up by `h = W |A| / 4`; in a sag it comes up by `h = O |A|` under an overhang O.
 * Spread over breaks of no more than a each: `n = ceil(|A| / a)`, length `(n - 1) d`. Grades only:
 * tyres, springs and load are not included.
 *
 * @param options - see {@link GradeBreakOptions}
 * @returns change [slope], kind, clearance [length] with its verdict, transition
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `CAPACITY_EXCEEDED` (more than 1000 breaks),
 *   `OUT_OF_RANGE` and the reading codes
 * @source driveway-profiles
 * @source derived
 * @example
 * const edge = gradeBreak({
 *   before: '-2%',
 *   after: '-11%',
 *   vehicle: { wheelbase: '2.8 m', underside: '140 mm' },
 *   limit: { change: '3%', distance: '11 ft' },
 * });
 * edge.clearance?.reach.to('mm').toString() //=> '63'
 * edge.clearance?.verdict //=> 'pass'
 * edge.transition?.length.to('ft').toString() //=> '22'
 */
export function gradeBreak(options: GradeBreakOptions): GradeBreakCheck {
  const { before, after, vehicle, limit, uncertainty } = readOptions(
    options,
    OPTIONS,
    neededBy('uncertainty', 'vehicle'),
  );
  const change = after.minus(before);
  const clearance = vehicle === undefined ? null : clearanceOver(change, vehicle, uncertainty);
  const kind = change.isZero() ? 'straight' : change.isNegative() ? 'crest' : 'sag';
  const transition = limit === undefined ? null : spread(before, change, limit);
  return withWorking({ change, kind, clearance, transition } as const, () => [
    derivedStep({
      title: 'Change of grade',
      formula: 'A = g2 - g1',
      given: [given('g1', 'grade before', before), given('g2', 'grade after', after)],
      result: given('A', 'change', change),
    }),
    ...(vehicle === undefined || clearance === null
      ? []
      : [clearanceStep(vehicle, change, clearance)]),
  ]);
}

function spread(before: Slope, change: Slope, limit: Values<typeof LIMIT>): BreakTransition {
  const breaks = countParts(change.abs(), limit.change, {
    of: 'breaks',
    most: MOST_BREAKS,
    path: ['limit', 'change'],
  });
  const grades = Array.from({ length: breaks + 1 }, (_, k) =>
    k === 0 ? before : before.plus(change.times(k).dividedBy(breaks)),
  );
  const length = breaks === 0 ? NO_LENGTH : limit.distance.times(breaks - 1);
  return { breaks, length, grades };
}
