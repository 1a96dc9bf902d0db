// The water in a dig is that of `site`: this adds the published shares that run off into it.
import { optional, quantity } from '../../input/field.js';
import { AREA, FLOW } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { waterInDig, type WaterInDig } from '../../site/excavation/water-in-dig.js';
import type { AreaInput, FlowInput } from '../../units/construct.js';
import { TIME } from '../../input/ranges.js';
import type { TimeInput } from '../../units/construct.js';
import { coefficientOf, runoffAreas, type RunoffAreaInput } from './peak-runoff.js';
import { waterRate, type WaterRateInput } from './rain-rate.js';

/** An open dig, a storm, and what drains into the dig. */
export interface StormInDigOptions {
  /** Open area of the dig [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** How hard it rains: depth in a time. */
  readonly rain: WaterRateInput;
  /** How long it rains [time], more than 0. */
  readonly duration: TimeInput;
  /** Ground and roofs that drain into the dig. Default: none. */
  readonly drainsIn?: readonly RunoffAreaInput[];
  /** Rate of the pump [flow], more than 0. Default: no pump. */
  readonly pump?: FlowInput;
}

const OPTIONS = shapeOf<StormInDigOptions>()({
  area: quantity(AREA),
  rain: waterRate,
  duration: quantity(TIME),
  drainsIn: optional(runoffAreas, []),
  pump: optional(quantity(FLOW)),
});

/**
 * Water in an open dig after a storm: {@link waterInDig} with the rain of a storm, `p = i t`, and
 * published shares of what runs off into it. The soil is assumed full: nothing soaks away.
 *
 * @param options - see {@link StormInDigOptions}
 * @returns volume of water, depth, pumping time; cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `EMPTY_LIST`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading codes
 * @source derived
 * @source runoff-table
 * @example
 * const water = stormInDig({
 *   area: '50 m2',
 *   rain: { depth: '12 mm', time: '1 h' },
 *   duration: '2 h',
 *   drainsIn: [{ area: '20 m2', surface: 'asphalt' }],
 * });
 * water.volume.to('m3').toString() //=> '1.656'
 */
export function stormInDig(options: StormInDigOptions): WaterInDig {
  const { area, rain, duration, drainsIn, pump } = readOptions(options, OPTIONS);
  return waterInDig({
    area,
    rain: rain.depth.times(duration.dividedBy(rain.time)),
    ...(drainsIn.length === 0
      ? {}
      : {
          drainsIn: drainsIn.map((one) => ({
            area: one.area,
            coefficient: coefficientOf(one).toString(),
          })),
        }),
    ...(pump === undefined ? {} : { pump }),
  });
}
