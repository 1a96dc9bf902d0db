import { bothOrNeither } from '../../input/both-or-neither.js';
import { number, optional, quantity } from '../../input/field.js';
import { AREA_RATIO, STONE_VOIDS } from '../../input/ground-ranges.js';
import { DEPTH_OR_NONE, TIME } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { referenceQuantity } from '../../reference-quantity.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { RESERVOIR } from '../../sources/water-figures.js';
import { time, type LengthInput, type TimeInput } from '../../units/construct.js';
import { Decimal40, ZERO } from '../../units/decimal.js';
import type { Length } from '../../units/quantity.js';
import { shareOf } from '../../units/times-ratio.js';
import { NO_LENGTH } from '../../units/zero.js';
import { formulaStep, given, withWorking, type Step, type Worked } from '../../working.js';
import { waterRate, type WaterRate, type WaterRateInput } from './rain-rate.js';

/** The rain on permeable paving, what drains onto it, and the soil under its stone. */
export interface ReservoirDepthOptions {
  /** Depth of rain on the paving [length], 0 to 50 m. */
  readonly rain: LengthInput;
  /** Depth of runoff from the area that drains onto it [length], 0 to 50 m; with `areaRatio`. Default: none. */
  readonly runoff?: LengthInput;
  /** That area over the area of the paving, 0 to 100; no more than 2 is advised; with `runoff`. Default: 0. */
  readonly areaRatio?: number | string;
  /** How fast the soil takes water, for design: depth in a time. */
  readonly infiltration: WaterRateInput;
  /** Time in which the stone fills [time], more than 0. Default: 2 h. */
  readonly fillTime?: TimeInput;
  /** Share of voids in the stone, more than 0 and at most 0.7. Default: 0.4. */
  readonly voids?: number | string;
}

const TWO_HOURS = time(2, 'h');

const OPTIONS = shapeOf<ReservoirDepthOptions>()({
  rain: quantity(DEPTH_OR_NONE),
  runoff: optional(quantity(DEPTH_OR_NONE), NO_LENGTH),
  areaRatio: optional(number(AREA_RATIO), ZERO),
  infiltration: waterRate,
  fillTime: optional(quantity(TIME), TWO_HOURS),
  voids: optional(number(STONE_VOIDS), new Decimal40(RESERVOIR.voids.value)),
});

/** Stone that holds the rain under permeable paving. */
export interface ReservoirDepth extends Cautioned, Worked {
  /** Depth of stone; 0 if the soil takes the water as fast as it comes. */
  readonly depth: Length;
  /** Depth of water in it when full. */
  readonly water: Length;
  /** Time until it is empty after the rain; null if the soil takes no water. */
  readonly drainHours: number | null;
  /** True if the ratio of areas is over 2, or the stone deeper than 2 m on soil that drains fast. */
  readonly extrapolated: boolean;
  /** What to do besides, in words. */
  readonly notes: readonly string[];
}

/**
 * Depth of open-graded stone that holds the rain of a storm under permeable paving:
 * `d = (q R + P - f t) / n`, q being the runoff from an area of R times the paving, P the rain on it,
 * f what the soil takes in the time t and n the voids. It empties in `d n / f`. The stone must also
 * carry the load, and the soil must not be softened: that is a design.
 *
 * @param options - see {@link ReservoirDepthOptions}
 * @returns depth of stone and of water [length], hours to drain, cautions
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source permeable-sizing
 * @example
 * const stone = reservoirDepth({
 *   rain: '60 mm',
 *   infiltration: { depth: '6 mm', time: '1 h' },
 * });
 * stone.depth.to('mm').toString() //=> '120'
 * stone.drainHours //=> 8
 */
export function reservoirDepth(options: ReservoirDepthOptions): ReservoirDepth {
  const read = readOptions(options, OPTIONS, (reader, _, path, raw) => {
    bothOrNeither(reader, raw, ['runoff', 'areaRatio'], path);
  });
  const { rain, runoff, areaRatio, infiltration, fillTime, voids } = read;
  const soaked = infiltration.depth.times(shareOf(fillTime, infiltration.time));
  const water = rain.plus(runoff.times(areaRatio)).minus(soaked);
  const left = water.isNegative() ? NO_LENGTH : water;
  const depth = left.dividedBy(voids);
  const isFast = perHour(infiltration).atLeast(referenceQuantity('length', RESERVOIR.fastSoil));
  const isDeep = isFast && depth.greaterThan(referenceQuantity('length', RESERVOIR.maximumDepth));
  const isWide = areaRatio.gt(RESERVOIR.maximumAreaRatio.value);
  const found = {
    depth,
    water: left,
    drainHours: infiltration.depth.isZero()
      ? null
      : infiltration.time.times(left.dividedBy(infiltration.depth)).toNumber('h'),
    extrapolated: isWide || isDeep,
    notes: [
      ...(isWide
        ? ['No more than twice the area of the paving should drain onto it, because fines clog it.']
        : []),
      ...(isDeep
        ? [
            `On soil that drains fast, no more than ${RESERVOIR.maximumDepth.value} ${RESERVOIR.maximumDepth.unit} of stone is advised: its weight closes the soil.`,
          ]
        : []),
      ...(infiltration.depth.isZero() ? ['The soil takes no water. Put in an underdrain.'] : []),
    ],
    cautions: cautionsFor('ground', 'drainage'),
  };
  return withWorking(found, () => [depthStep(read, depth)]);
}

/** Depth that soil takes in an hour. */
const perHour = ({ depth, time: taken }: WaterRate): Length =>
  depth.times(shareOf(time(1, 'h'), taken));

const depthStep = (read: Values<typeof OPTIONS>, depth: Length): Step => {
  const { rain, runoff, areaRatio, infiltration, fillTime, voids } = read;
  return formulaStep({
    title: 'Depth of stone that holds the rain',
    formula: 'd = max(0, (q * R + P - f * t / T) / n)',
    given: [
      given('q', 'runoff from beside', runoff),
      given('R', 'area beside over area of paving', areaRatio),
      given('P', 'rain', rain),
      given('f', 'what the soil takes', infiltration.depth),
      given('t', 'time to fill', fillTime),
      given('T', 'in a time of', infiltration.time),
      given('n', 'voids', voids),
    ],
    result: given('d', 'depth of stone', depth),
    source: 'permeable-sizing',
  });
};
