import { number, object, optional, quantity } from '../../input/field.js';
import { AREA, DENSITY, FRACTION, MASS, THICKNESS, TIME } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import type {
  AreaInput,
  DensityInput,
  LengthInput,
  MassInput,
  TimeInput,
} from '../../units/construct.js';
import type { Area } from '../../units/quantity.js';
import { decimalRatio } from '../../units/ratio.js';
import { onePlus, overRatio, shareOf } from '../../units/times-ratio.js';
import { derivedStep, given, withWorking, type Worked } from '../../working.js';

/** The pace of a crew, and its time left. */
export interface ClosingCrewInput {
  /** Area that the crew closes in `time` [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** Time the crew takes for `area` [time], more than 0 and at most 10 000 h. */
  readonly time: TimeInput;
  /** Time left today [time], more than 0 and at most 10 000 h. */
  readonly timeLeft: TimeInput;
}

/** Stone on site, the base to place, and the crew. */
export interface ClosableAreaOptions {
  /** Stone on site, as delivered [mass], more than 0 and at most 1 000 000 t. */
  readonly stone: MassInput;
  /** Moisture of the stone: water over dry mass, a fraction 0 to 1. No default. */
  readonly moisture: number | string;
  /** Compacted thickness that closes the dig [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /** Dry density in place [density], more than 0 and at most 5 t/m3. */
  readonly compactedDryDensity: DensityInput;
  /** The crew. Default: stone is the only limit. */
  readonly crew?: ClosingCrewInput;
}

const CREW = shapeOf<ClosingCrewInput>()({
  area: quantity(AREA),
  time: quantity(TIME),
  timeLeft: quantity(TIME),
});

const OPTIONS = shapeOf<ClosableAreaOptions>()({
  stone: quantity(MASS),
  moisture: number(FRACTION),
  thickness: quantity(THICKNESS),
  compactedDryDensity: quantity(DENSITY),
  crew: optional(object(CREW)),
});

/** Area of a dig that can be covered with base in the time left. */
export interface ClosableArea extends Cautioned, Worked {
  /** The smaller of the two. Open no more than this. */
  readonly area: Area;
  /** Area that the stone on site closes. */
  readonly byStone: Area;
  /** Area that the crew closes in the time left; null if no crew is given. */
  readonly byCrew: Area | null;
  /** Which of the two is smaller. */
  readonly limitedBy: 'stone' | 'crew';
}

/**
 * Open area that can be closed today, the smaller of two:
 * `by stone = dry stone on site / (thickness x dry density)`, `by crew = area / time x time left`.
 *
 * @param options - see {@link ClosableAreaOptions}
 * @returns area by stone, by crew, the lesser and which it is; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source derived
 * @example
 * const today = closableArea({
 *   stone: '14 t',
 *   moisture: 0,
 *   thickness: '0.2 m',
 *   compactedDryDensity: '2.15 t/m3',
 *   crew: { area: '12 m2', time: '1 h', timeLeft: '3 h' },
 * });
 * today.area.to('m2').toFixed(1) //=> '32.6'
 * today.limitedBy //=> 'stone'
 */
export function closableArea(options: ClosableAreaOptions): ClosableArea {
  const read = readOptions(options, OPTIONS);
  const { stone, moisture, thickness, compactedDryDensity: density, crew } = read;
  const dry = overRatio(stone, onePlus(decimalRatio(moisture)));
  const byStone = dry.dividedBy(density).dividedBy(thickness);
  const byCrew = crew === undefined ? null : crew.area.times(shareOf(crew.timeLeft, crew.time));
  const crewDecides = byCrew !== null && byCrew.compare(byStone) < 0;
  const found = {
    area: crewDecides ? byCrew : byStone,
    byStone,
    byCrew,
    limitedBy: crewDecides ? 'crew' : 'stone',
    cautions: cautionsFor('excavation', 'drainage'),
  } as const;
  return withWorking(found, () => [
    derivedStep({
      title: 'Area that the stone on site closes',
      formula: 'A = M / ((1 + w) * t * d)',
      given: [
        given('M', 'stone on site', stone),
        given('w', 'moisture of dry mass', moisture),
        given('t', 'thickness', thickness),
        given('d', 'dry density in place', density),
      ],
      result: given('A', 'area by stone', byStone),
    }),
  ]);
}
