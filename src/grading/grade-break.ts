import { makeReader, type Reader } from '../input/reader.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import { fromSI, type Length, type Slope } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { DISTANCE, MARGIN, RISE, SLOPE, SLOPE_LIMIT } from './limits.js';

/** A vehicle that has to pass a break; measure the one that uses the drive. */
export interface VehicleInput {
  readonly wheelbase: LengthInput;
  /** Least height of the underside between the axles. */
  readonly underside: LengthInput;
  /** From an axle to the end of the vehicle beyond it, the longer one; with `overhangHeight`. */
  readonly overhang?: LengthInput;
  /** Least height under the overhang. */
  readonly overhangHeight?: LengthInput;
}

/** What a part of a vehicle has left over a break. */
export interface BreakClearance {
  /** `underside` at a crest, `overhang` in a sag. */
  readonly part: 'underside' | 'overhang';
  /** How far the break reaches up toward that part. */
  readonly reach: Length;
  /** Height of the part less the reach: negative where it strikes. */
  readonly clearance: Length;
  readonly verdict: Verdict;
}

/** A sharp change of grade spread over several. */
export interface BreakTransition {
  /** Breaks that it takes. */
  readonly breaks: number;
  /** From the first break to the last. */
  readonly length: Length;
  /** Grades from the one before to the one after, in equal steps. */
  readonly grades: readonly Slope[];
}

/** A change of grade, and what passes over it. */
export interface GradeBreakCheck extends Worked {
  /** After less before. */
  readonly change: Slope;
  readonly kind: 'crest' | 'sag' | 'straight';
  readonly clearance?: BreakClearance;
  readonly transition?: BreakTransition;
}

/**
 * A change of grade `A = g2 - g1` and the vehicle over it. At a crest midway between the axles the
 * ground comes up by `h = W |A| / 4` between them; in a sag it comes up by `h = O |A|` under an
 * overhang O. Spread over breaks of at most a each: `n = ceil(|A| / a)`, length `(n - 1) d`. For
 * grades as paving has them; tyres, springs and load are not in it.
 *
 * @param options.before - grade before the break [slope, + rising]
 * @param options.after - grade after it [slope, + rising]
 * @param options.vehicle - `wheelbase`, `underside`, and `overhang` with `overhangHeight` [length], if
 *   wanted
 * @param options.limit - greatest `change` at one break [slope] and the `distance` between breaks
 *   [length], if wanted; `DRIVEWAY_BREAK_LIMITS` quotes one
 * @param options.uncertainty - of the clearance [length], default none
 * @returns change [slope], kind, the clearance [length] with its verdict, the transition
 * @throws `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
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
export function gradeBreak(options: {
  readonly before: SlopeInput;
  readonly after: SlopeInput;
  readonly vehicle?: VehicleInput;
  readonly limit?: { readonly change: SlopeInput; readonly distance: LengthInput };
  readonly uncertainty?: LengthInput;
}): GradeBreakCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const before = reader.quantity('slope', fields['before'], ['before'], SLOPE);
  const after = reader.quantity('slope', fields['after'], ['after'], SLOPE);
  const vehicle =
    fields['vehicle'] === undefined ? undefined : readVehicle(reader, fields['vehicle']);
  const limit = fields['limit'] === undefined ? undefined : readLimit(reader, fields['limit']);
  const doubt = fields['uncertainty'] ?? NOTHING;
  const uncertainty = reader.quantity('length', doubt, ['uncertainty'], MARGIN);
  reader.finish();
  const change = after.minus(before);
  const clearance = vehicle === undefined ? undefined : clearanceOver(change, vehicle, uncertainty);
  const result: Omit<GradeBreakCheck, 'working'> = {
    change,
    kind: change.isZero() ? 'straight' : change.isNegative() ? 'crest' : 'sag',
    ...(clearance === undefined ? {} : { clearance }),
    ...(limit === undefined ? {} : { transition: spread(before, change, limit) }),
  };
  return withWorking(result, () => [
    {
      title: 'Change of grade',
      formula: 'A = g2 - g1',
      given: [given('g1', 'grade before', before), given('g2', 'grade after', after)],
      result: given('A', 'change', change),
      source: 'derived',
    },
    ...(vehicle === undefined || clearance === undefined
      ? []
      : [clearanceStep(vehicle, change, clearance)]),
  ]);
}

const NOTHING = fromSI('length', ZERO_RATIO);

interface Vehicle {
  readonly wheelbase: Length;
  readonly underside: Length;
  readonly overhang?: Length;
  readonly overhangHeight?: Length;
}

function readVehicle(reader: Reader, value: unknown): Vehicle {
  const fields = reader.object(value, ['vehicle']);
  const read = (name: keyof Vehicle) =>
    reader.quantity('length', fields[name], ['vehicle', name], RISE);
  const own = { wheelbase: read('wheelbase'), underside: read('underside') };
  if (fields['overhang'] === undefined && fields['overhangHeight'] === undefined) return own;
  return { ...own, overhang: read('overhang'), overhangHeight: read('overhangHeight') };
}

function readLimit(reader: Reader, value: unknown) {
  const fields = reader.object(value, ['limit']);
  const at = ['limit', 'distance'];
  return {
    change: reader.quantity('slope', fields['change'], ['limit', 'change'], SLOPE_LIMIT),
    distance: reader.quantity('length', fields['distance'], at, DISTANCE),
  };
}

function clearanceOver(
  change: Slope,
  vehicle: Vehicle,
  uncertainty: Length,
): BreakClearance | undefined {
  const { wheelbase, underside, overhang, overhangHeight } = vehicle;
  const judged = (part: BreakClearance['part'], reach: Length, height: Length) => {
    const clearance = height.minus(reach);
    return { part, reach, clearance, verdict: verdictOf(clearance, uncertainty) };
  };
  if (!change.isNegative()) {
    if (overhang === undefined || overhangHeight === undefined) return undefined;
    return judged('overhang', overhang.times(change), overhangHeight);
  }
  return judged('underside', wheelbase.times(change.abs()).dividedBy(4), underside);
}

function spread(
  before: Slope,
  change: Slope,
  limit: { readonly change: Slope; readonly distance: Length },
): BreakTransition {
  const breaks = wholeNumberUp(change.abs(), limit.change);
  const grades = Array.from({ length: breaks + 1 }, (_, k) =>
    k === 0 ? before : before.plus(change.times(k).dividedBy(breaks)),
  );
  const length = breaks === 0 ? NOTHING : limit.distance.times(breaks - 1);
  return { breaks, length, grades };
}

function clearanceStep(vehicle: Vehicle, change: Slope, clearance: BreakClearance): Step {
  const isCrest = clearance.part === 'underside';
  return {
    title: isCrest ? 'Ground between the axles' : 'Ground under the overhang',
    formula: isCrest ? 'h = W |A| / 4' : 'h = O |A|',
    given: [
      isCrest
        ? given('W', 'wheelbase', vehicle.wheelbase)
        : given('O', 'overhang', vehicle.overhang ?? NOTHING),
      given('A', 'change of grade', change),
    ],
    result: given('h', 'reach of the ground', clearance.reach),
    source: 'derived',
  };
}
