import { known } from '../../invariant.js';
import { exactlyOne } from '../../input/exactly-one.js';
import { number, optional, quantity } from '../../input/field.js';
import { STONE_VOIDS } from '../../input/ground-ranges.js';
import { DEPTH_OR_NONE, TIME } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { fault } from '../../errors.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { RESERVOIR } from '../../sources/water-figures.js';
import type { LengthInput, TimeInput } from '../../units/construct.js';
import { Decimal40 } from '../../units/decimal.js';
import type { Length, Time } from '../../units/quantity.js';
import { shareOf } from '../../units/times-ratio.js';
import { formulaStep, given, withWorking, type Step, type Worked } from '../../working.js';
import { waterRate, type WaterRateInput } from './rain-rate.js';

/** Stone full of water over soil, and the depth or the time. */
export interface DrainTimeOptions {
  /** Depth of the stone that is full [length], 0 to 50 m. Give this or `time`. */
  readonly depth?: LengthInput;
  /** Time in which it must be empty [time], more than 0; local rules set it. Give this or `depth`. */
  readonly time?: TimeInput;
  /** How fast the soil takes water: depth in a time. */
  readonly infiltration: WaterRateInput;
  /** Share of voids in the stone, more than 0 and at most 0.7. Default: 0.4. */
  readonly voids?: number | string;
}

const OPTIONS = shapeOf<DrainTimeOptions>()({
  depth: optional(quantity(DEPTH_OR_NONE)),
  time: optional(quantity(TIME)),
  infiltration: waterRate,
  voids: optional(number(STONE_VOIDS), new Decimal40(RESERVOIR.voids.value)),
});

/** Depth of stone and the time it takes to drain. */
export interface DrainTime extends Cautioned, Worked {
  /** Depth of the stone that drains in the time: the level of an underdrain above the soil. */
  readonly depth: Length;
  /** Time in which it drains. */
  readonly time: Time;
}

/**
 * Time in which stone full of water drains into the soil, `t = d n / f`; or the depth that drains in
 * a time, `d = f t / n`, which is how high an underdrain may be above the soil.
 *
 * @param options - see {@link DrainTimeOptions}
 * @returns depth [length], time [time], cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` (also for soil
 *   that takes no water), `WRONG_TYPE` and the reading codes
 * @source permeable-sizing
 * @example
 * const infiltration = { depth: '8 mm', time: '1 h' };
 * drainTime({ depth: '300 mm', infiltration }).time.to('h').toString() //=> '15'
 * drainTime({ time: '15 h', infiltration }).depth.to('mm').toString() //=> '300'
 */
export function drainTime(options: DrainTimeOptions): DrainTime {
  const read = readOptions(options, OPTIONS, (reader, _, path, raw) => {
    exactlyOne(reader, raw, ['depth', 'time'], [...path, 'depth']);
  });
  const { infiltration, voids } = read;
  if (infiltration.depth.isZero()) {
    const message = 'soil that takes no water never drains. Put in an underdrain';
    throw fault('OUT_OF_RANGE', message, {}, ['infiltration', 'depth']);
  }
  const depth =
    read.depth ??
    infiltration.depth.times(shareOf(known(read.time, 'time'), infiltration.time)).dividedBy(voids);
  const time =
    read.time ?? infiltration.time.times(shareOf(depth.times(voids), infiltration.depth));
  return withWorking({ depth, time, cautions: cautionsFor('ground', 'drainage') }, () => [
    drainStep(read, { depth, time }),
  ]);
}

/** The step of what was not given: the time, or the depth. */
function drainStep(
  { infiltration, voids, time: asked }: Values<typeof OPTIONS>,
  { depth, time }: Pick<DrainTime, 'depth' | 'time'>,
): Step {
  const soil = [
    given('f', 'depth that the soil takes', infiltration.depth),
    given('T', 'time in which the soil takes f', infiltration.time),
    given('n', 'voids', voids),
  ];
  const source = 'permeable-sizing';
  return asked === undefined
    ? formulaStep({
        title: 'Time to drain',
        formula: 't = T * (d * n / f)',
        given: [given('d', 'depth of stone', depth), ...soil],
        result: given('t', 'time', time),
        source,
      })
    : formulaStep({
        title: 'Depth that drains in the time',
        formula: 'd = f * (t / T) / n',
        given: [given('t', 'time', time), ...soil],
        result: given('d', 'depth of stone', depth),
        source,
      });
}
