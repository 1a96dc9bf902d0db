import { bothOrNeither } from '../input/both-or-neither.js';
import { optional, quantity } from '../input/field.js';
import { DISTANCE, RISE, SLOPE_OF_SOME } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { countParts } from './count-parts.js';
import { slopeBetween } from './slope-between.js';

/** A rise, and the limits of the ramp over it. */
export interface RampRunOptions {
  /** Difference of level [length], more than 0 and at most 100 m. */
  readonly rise: LengthInput;
  /** Maximum slope [slope], such as 1:12 or 1:20; more than 0 and at most 10 (rise over run). */
  readonly maximumSlope: SlopeInput;
  /** Maximum rise of one flight [length], more than 0 and at most 100 m. Default: no limit. */
  readonly maximumRisePerFlight?: LengthInput;
  /**
   * Length of a landing between flights [length], more than 0 and at most 100 km. Needed with
   * `maximumRisePerFlight`.
   */
  readonly landing?: LengthInput;
  /**
   * Plan length available for the ramp [length], more than 0 and at most 100 km. Default: not
   * checked.
   */
  readonly room?: LengthInput;
}

const OPTIONS = shapeOf<RampRunOptions>()({
  rise: quantity(RISE),
  maximumSlope: quantity(SLOPE_OF_SOME),
  maximumRisePerFlight: optional(quantity(RISE)),
  landing: optional(quantity(DISTANCE)),
  room: optional(quantity(DISTANCE)),
});

/** Fit of a ramp in the length available. */
export interface RampRoom {
  /** True if the ramp fits. */
  readonly fits: boolean;
  /** Length available less total; negative if the ramp does not fit. */
  readonly margin: Length;
  /** The slope that just fits the length available in one flight. */
  readonly slope: Slope;
}

/** A ramp, or a run-up to a threshold. */
export interface RampRun extends Cautioned, Worked {
  /** Sloped length in plan, all flights together. */
  readonly run: Length;
  /** Flights between landings; one if no limit is given. */
  readonly flights: number;
  /** Rise of one flight. */
  readonly flightRise: Length;
  /** Sloped length in plan of one flight. */
  readonly flightRun: Length;
  /** Plan length with the landings between the flights. */
  readonly total: Length;
  /** Fit in the length available; null if none is given. */
  readonly room: RampRoom | null;
}

/** More flights than this are a wrong digit or unit. */
const MOST_FLIGHTS = 1000;

/**
 *
 * Length of a ramp: `run = rise / maximum slope`,
 * `flights = ceil(rise / maximum rise of a flight)`, `total = run + (flights - 1) x landing`. You
 * choose the limits; `SLOPE_LIMITS` quotes published ones.
 *
 * @param options - see {@link RampRunOptions}
 * @returns run, flights and total [length], whether it fits the length available, cautions
 * @throws `NOT_POSITIVE`, `REQUIRED`, `CAPACITY_EXCEEDED` (more than 1000 flights), `OUT_OF_RANGE` and
 *   the reading codes
 * @source derived
 * @example
 * rampRun({ rise: '150 mm', maximumSlope: '1:20' }).run.to('m').toString() //=> '3'
 * const limits = { maximumSlope: '1:12', maximumRisePerFlight: '30 in', landing: '5 ft' };
 * const ramp = rampRun({ rise: '40 in', ...limits });
 * ramp.flights //=> 2
 * ramp.total.to('ft').toString() //=> '45'
 */
export function rampRun(options: RampRunOptions): RampRun {
  const read = readOptions(options, OPTIONS, (reader, _, path, raw) => {
    bothOrNeither(reader, raw, ['maximumRisePerFlight', 'landing'], path);
  });
  const { rise, maximumSlope, landing, room } = read;
  const flights = flightsOf(read);
  const run = rise.dividedBy(maximumSlope);
  const total = landing === undefined ? run : run.plus(landing.times(flights - 1));
  const ramp = {
    run,
    flights,
    flightRise: rise.dividedBy(flights),
    flightRun: run.dividedBy(flights),
    total,
    room: room === undefined ? null : roomFor({ rise, total }, room),
    cautions: cautionsFor('access', 'drainage'),
  };
  return withWorking(ramp, () => [
    derivedStep({
      title: 'Sloped length',
      formula: 'R = h / g',
      given: [given('h', 'rise', rise), given('g', 'maximum slope', maximumSlope)],
      result: given('R', 'run', run),
    }),
    derivedStep({
      title: 'Length with landings',
      formula: 'T = R + (n - 1) * l',
      given: [
        given('R', 'run', run),
        given('n', 'flights', flights),
        given('l', 'landing', landing ?? NO_LENGTH),
      ],
      result: given('T', 'total', total),
    }),
  ]);
}

function flightsOf({ rise, maximumRisePerFlight: limit }: Values<typeof OPTIONS>): number {
  if (limit === undefined) return 1;
  return countParts(rise, limit, {
    of: 'flights',
    most: MOST_FLIGHTS,
    path: ['maximumRisePerFlight'],
  });
}

const roomFor = (
  { rise, total }: { readonly rise: Length; readonly total: Length },
  room: Length,
): RampRoom => ({
  fits: total.compare(room) <= 0,
  margin: room.minus(total),
  slope: slopeBetween(rise, room),
});
