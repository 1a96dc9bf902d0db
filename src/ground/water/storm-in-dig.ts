// The water in a dig is that of `site`: this adds the published shares that run off into it.
import { optional, quantity } from '../../input/field.js';
import { limitText } from '../../input/limit-text.js';
import { AREA, DEPTH, FLOW, TIME } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../../input/shape.js';
import { waterFrom, type WaterInDig } from '../../site/excavation/water-in-dig.js';
import { sum } from '../../units/aggregate.js';
import type { AreaInput, FlowInput, TimeInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { shareOf } from '../../units/times-ratio.js';
import { derivedStep, given, type Step } from '../../working.js';
import { coefficientOf, reducedAreas, runoffAreas, type RunoffAreaInput } from './peak-runoff.js';
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
 * Water in an open dig after a storm: `waterInDig` with the rain of a storm, `p = i t`, and
 * published shares of what runs off into it. The soil is assumed full: nothing soaks away.
 *
 * @param options - see {@link StormInDigOptions}
 * @returns volume of water, depth, pumping time; cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `EMPTY_LIST`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading codes
 * @source derived
 * @source runoff-table
 * @source runoff-code
 * @source rational-method
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
  const read = readOptions(options, OPTIONS, checkStorm);
  const { area, pump } = read;
  const rain = rainOf(read);
  const drainsIn = read.drainsIn.map((one) => ({
    area: one.area,
    coefficient: coefficientOf(one),
  }));
  return waterFrom({ area, rain, drainsIn, pump }, () => stormSteps(read, rain));
}

type Storm = Values<typeof OPTIONS>;

const rainOf = ({ rain, duration }: Pick<Storm, 'rain' | 'duration'>): Length =>
  rain.depth.times(shareOf(duration, rain.time));

/** A storm of some rain, and no more than a dig may be deep. */
const checkStorm: Check<typeof OPTIONS> = (reader, { rain, duration }, path) => {
  if (rain === undefined) return;
  if (rain.depth.isZero()) {
    const message = 'the depth of rain is 0. Write the rain of the storm';
    reader.fail('NOT_POSITIVE', [...path, 'rain', 'depth'], message);
    return;
  }
  if (duration === undefined) return;
  const depth = rainOf({ rain, duration });
  if (depth.atMost(DEPTH.most)) return;
  const most = limitText(DEPTH.most, depth);
  const message = `${rain.depth.toString()} in ${rain.time.toString()} for ${duration.toString()} is more rain than ${most}. Check the rain and the duration`;
  reader.fail('OUT_OF_RANGE', [...path, 'duration'], message, { got: depth.toString(), most });
};

function stormSteps({ rain, duration, drainsIn }: Storm, depth: Length): Step[] {
  const { terms, given: inputs } = reducedAreas(drainsIn);
  return [
    derivedStep({
      title: 'Rain of the storm',
      formula: 'p = i * (t / T)',
      given: [
        given('i', 'depth of rain', rain.depth),
        given('t', 'how long it rains', duration),
        given('T', 'in a time of', rain.time),
      ],
      result: given('p', 'rain', depth),
    }),
    ...(drainsIn.length === 0
      ? []
      : [
          derivedStep({
            title: 'Area that drains in, reduced',
            formula: `a = ${terms.join(' + ')}`,
            given: inputs,
            result: given(
              'a',
              'area that drains in, reduced',
              sum(drainsIn.map((one) => one.area.times(coefficientOf(one)))),
            ),
          }),
        ]),
  ];
}
