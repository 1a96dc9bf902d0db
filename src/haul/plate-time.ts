import { number, optional, quantity, whole } from '../input/field.js';
import { AREA, MACHINE_PART, OVERLAP, PASSES, SHARE, SPEED, THICKNESS } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { AreaInput, LengthInput, SpeedInput } from '../units/construct.js';
import type { Flow, Length, Time } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';

/** A layer to compact, and the plate or roller for it. */
export interface PlateTimeOptions {
  /** Area to compact [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** Width of the plate or drum [length], more than 0 and at most 50 m. */
  readonly plateWidth: LengthInput;
  /** Share of the width that overlaps the last lane, 0 to 0.9. */
  readonly overlap: number | string;
  /** Speed of travel [speed], more than 0 and at most 50 km/h. */
  readonly speed: SpeedInput;
  /** Passes over each lift, 1 to 50. */
  readonly passes: number;
  /** Lifts, 1 to 50. */
  readonly lifts: number;
  /** Share of the time in motion, more than 0 and at most 1. Turns and edges lower it. */
  readonly efficiency: number | string;
  /** Compacted thickness of one lift [length], more than 0 and at most 5 m. Default: no output. */
  readonly lift?: LengthInput;
}

const OPTIONS = shapeOf<PlateTimeOptions>()({
  area: quantity(AREA),
  plateWidth: quantity(MACHINE_PART),
  overlap: number(OVERLAP),
  speed: quantity(SPEED),
  passes: whole(PASSES),
  lifts: whole(PASSES),
  efficiency: number(SHARE),
  lift: optional(quantity(THICKNESS)),
});

/** How long a plate or roller takes. */
export interface PlateTime extends Worked {
  /** Width that a lane gains: plate less overlap. */
  readonly lane: Length;
  /** Time for one pass over the whole area. */
  readonly perPass: Time;
  /** Time for all passes over one lift. */
  readonly perLift: Time;
  /** Time for all passes over all lifts. */
  readonly time: Time;
  /** Compacted volume over time; null if no thickness of a lift is given. */
  readonly output: Flow | null;
  /** What the time leaves out. */
  readonly notes: readonly string[];
}

/**
 *
 * Time of a plate or roller: `once over = A / (width (1 - overlap) speed efficiency)`,
 * `time = once over x passes x lifts`; compacted output `= lane x speed x lift x efficiency / passes`.
 *
 * @param options - see {@link PlateTimeOptions}
 * @returns lane width, time for one pass, for a lift and for all lifts; output
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `NOT_WHOLE` and the reading codes
 * @source derived
 * @example
 * const plate = plateTime({
 *   area: '72.4 m2',
 *   plateWidth: '0.5 m',
 *   overlap: 0.1,
 *   speed: '20 m/min',
 *   passes: 4,
 *   lifts: 3,
 *   efficiency: 1,
 * });
 * plate.time.to('min').toFixed(1) //=> '96.5'
 */
export function plateTime(options: PlateTimeOptions): PlateTime {
  const read = readOptions(options, OPTIONS);
  const { area, speed, passes, lifts, efficiency, lift } = read;
  const lane = laneOf(read);
  const perPass = timeOfPass(read);
  const perLift = perPass.times(passes);
  const time = perLift.times(lifts);
  const output = lift === undefined ? null : area.times(lift).dividedBy(perLift);
  return withWorking({ lane, perPass, perLift, time, output, notes: NOTES }, () => [
    derivedStep({
      title: 'Time of the plate',
      formula: 'T = A * n * k / (b * v * e)',
      given: [
        given('A', 'area', area),
        given('b', 'lane', lane),
        given('v', 'speed', speed),
        given('e', 'efficiency', efficiency),
        given('n', 'passes', passes),
        given('k', 'lifts', lifts),
      ],
      result: given('T', 'time', time),
    }),
  ]);
}

const NOTES: readonly string[] = Object.freeze([
  'Turns and edges take another 20 to 30% (common practice, no source). Lower the efficiency.',
  'Plates suit stone and sand. Use a rammer or a padded roller on clay.',
  'Only a trial strip shows how many passes are enough. No table does.',
]);

type Plate = Values<typeof OPTIONS>;

const laneOf = ({ plateWidth: width, overlap }: Pick<Plate, 'plateWidth' | 'overlap'>): Length =>
  width.minus(width.times(overlap));

/** One pass over an area. Internal. */
export const timeOfPass = (
  plate: Pick<Plate, 'area' | 'plateWidth' | 'overlap' | 'speed' | 'efficiency'>,
): Time => plate.area.dividedBy(laneOf(plate)).dividedBy(plate.speed).dividedBy(plate.efficiency);
