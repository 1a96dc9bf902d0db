import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Length, Slope } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { DISTANCE, RISE, SLOPE_LIMIT } from './limits.js';
import { slopeBetween } from './slope-between.js';

/** A ramp or a run-up to a threshold. */
export interface RampRun extends Worked {
  /** Sloped length in plan, of all flights together. */
  readonly run: Length;
  /** Flights between landings; one where nothing limits a flight. */
  readonly flights: number;
  /** Rise and sloped length of one flight. */
  readonly flightRise: Length;
  readonly flightRun: Length;
  /** Plan length with the landings between the flights. */
  readonly total: Length;
  /** What the room allows, where it was given. */
  readonly room?: {
    readonly fits: boolean;
    /** Room less total: negative where it does not fit. */
    readonly spare: Length;
    /** The slope that just fits the room in one flight. */
    readonly slope: Slope;
  };
  readonly cautions: readonly Caution[];
}

/**
 * Length of a ramp: `run = rise / steepest`, `flights = ceil(rise / rise of a flight)`,
 * `total = run + (flights - 1) x landing`. Which limits hold is for the caller to say: see
 * `SLOPE_LIMITS` for what is published.
 *
 * @param options.rise - difference of level [length], more than 0
 * @param options.steepest - steepest slope [slope], for instance 1:12 or 1:20
 * @param options.flightRise - greatest rise of one flight [length], if there is such a limit
 * @param options.landing - length of a landing between flights [length], needed beside `flightRise`
 * @param options.room - plan length that there is [length], if wanted
 * @returns run, flights and total [length], what the room allows, cautions
 * @throws `NOT_POSITIVE`, `REQUIRED`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * rampRun({ rise: '150 mm', steepest: '1:20' }).run.to('m').toString() //=> '3'
 * const ramp = rampRun({ rise: '40 in', steepest: '1:12', flightRise: '30 in', landing: '5 ft' });
 * ramp.flights //=> 2
 * ramp.total.to('ft').toString() //=> '45'
 */
export function rampRun(options: {
  readonly rise: LengthInput;
  readonly steepest: SlopeInput;
  readonly flightRise?: LengthInput;
  readonly landing?: LengthInput;
  readonly room?: LengthInput;
}): RampRun {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const rise = reader.quantity('length', fields['rise'], ['rise'], RISE);
  const steepest = reader.quantity('slope', fields['steepest'], ['steepest'], SLOPE_LIMIT);
  const flight = readFlight(reader, fields);
  const room =
    fields['room'] === undefined
      ? undefined
      : reader.quantity('length', fields['room'], ['room'], DISTANCE);
  reader.finish();
  const flights = flight === undefined ? 1 : wholeNumberUp(rise, flight.rise);
  const run = rise.dividedBy(steepest);
  const total = flight === undefined ? run : run.plus(flight.landing.times(flights - 1));
  const fit =
    room === undefined
      ? {}
      : {
          room: {
            fits: total.compare(room) <= 0,
            spare: room.minus(total),
            slope: slopeBetween(rise, room),
          },
        };
  const ramp = {
    run,
    flights,
    flightRise: rise.dividedBy(flights),
    flightRun: run.dividedBy(flights),
    total,
    ...fit,
    cautions: cautionsFor('access', 'drainage'),
  };
  return withWorking(ramp, () => [
    {
      title: 'Sloped length',
      formula: 'R = h / g',
      given: [given('h', 'rise', rise), given('g', 'steepest slope', steepest)],
      result: given('R', 'run', run),
      source: 'derived',
    },
    {
      title: 'Length with landings',
      formula: 'T = R + (n - 1) l',
      given: [
        given('R', 'run', run),
        given('n', 'flights', flights),
        given('l', 'landing', flight?.landing ?? 'none'),
      ],
      result: given('T', 'total', total),
      source: 'derived',
    },
  ]);
}

function readFlight(reader: Reader, fields: Readonly<Record<string, unknown>>) {
  if (fields['flightRise'] === undefined && fields['landing'] === undefined) return undefined;
  return {
    rise: reader.quantity('length', fields['flightRise'], ['flightRise'], RISE),
    landing: reader.quantity('length', fields['landing'], ['landing'], DISTANCE),
  };
}
