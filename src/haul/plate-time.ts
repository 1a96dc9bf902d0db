import { makeReader } from '../input/reader.js';
import { speed, type AreaInput, type LengthInput, type SpeedInput } from '../units/construct.js';
import type { Flow, Length, Time } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { AREA, DEPTH, FRACTION, LENGTH, PART } from '../site/limits.js';
import { readCount } from '../site/read-whole.js';

/** How long a plate or roller is at work. */
export interface PlateTime extends Worked {
  /** Width that a pass gains: plate less overlap. */
  readonly lane: Length;
  /** Once over the whole area. */
  readonly perPass: Time;
  /** All passes over one lift. */
  readonly perLift: Time;
  readonly time: Time;
  /** Compacted volume over time, if the thickness of a lift was given. */
  readonly output: Flow | null;
  readonly notes: readonly string[];
}

/**
 * Time of a plate or roller: `once over = A / (width (1 - overlap) speed efficiency)`,
 * `time = once over x passes x lifts`; compacted output `= lane x speed x lift x efficiency / passes`.
 *
 * @param options.area - [area]
 * @param options.plateWidth - [length]
 * @param options.overlap - share of the width that runs over the last lane again, 0 to 0.9
 * @param options.speed - [speed]
 * @param options.passes - over each lift, 1 to 50
 * @param options.lifts - 1 to 50
 * @param options.efficiency - share of the time in motion, more than 0 to 1; turns and edges lower it
 * @param options.lift - compacted thickness of one lift [length], for the output
 * @returns lane, time once over, for a lift and in all; output
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
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
export function plateTime(options: {
  readonly area: AreaInput;
  readonly plateWidth: LengthInput;
  readonly overlap: number | string;
  readonly speed: SpeedInput;
  readonly passes: number;
  readonly lifts: number;
  readonly efficiency: number | string;
  readonly lift?: LengthInput;
}): PlateTime {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const area = reader.quantity('area', fields['area'], ['area'], AREA);
  const width = reader.quantity('length', fields['plateWidth'], ['plateWidth'], LENGTH);
  const overlap = reader.number(fields['overlap'], ['overlap'], { ...FRACTION, most: 0.9 });
  const travel = reader.quantity('speed', fields['speed'], ['speed'], SPEED);
  const passes = readCount(reader, fields['passes'], ['passes'], 50);
  const lifts = readCount(reader, fields['lifts'], ['lifts'], 50);
  const efficiency = reader.number(fields['efficiency'], ['efficiency'], PART);
  const lift =
    fields['lift'] === undefined
      ? undefined
      : reader.quantity('length', fields['lift'], ['lift'], DEPTH);
  reader.finish();

  const lane = width.minus(width.times(overlap));
  const perPass = area.dividedBy(lane).dividedBy(travel).dividedBy(efficiency);
  const perLift = perPass.times(passes);
  const time = perLift.times(lifts);
  const output = lift === undefined ? null : area.times(lift).dividedBy(perLift);
  return withWorking({ lane, perPass, perLift, time, output, notes: NOTES }, () => [
    {
      title: 'Time of the plate',
      formula: 'T = A n k / (b v e)',
      given: [
        given('A', 'area', area),
        given('b', 'lane', lane),
        given('v', 'speed', travel),
        given('e', 'efficiency', efficiency),
        given('n', 'passes', passes),
        given('k', 'lifts', lifts),
      ],
      result: given('T', 'time', time),
      source: 'derived',
    },
  ]);
}

const SPEED = Object.freeze({ sign: 'positive', most: speed(50, 'km/h') } as const);
const NOTES: readonly string[] = Object.freeze([
  'Turns and edges take another 20 to 30 % (common practice, no source): lower the efficiency.',
  'Plates suit stone and sand; clay wants a rammer or a padded roller.',
  'How many passes are enough is found on a trial strip, not by a number.',
]);
