import { list, number, object, optional, quantity } from '../../input/field.js';
import { AREA, DEPTH, FLOW, RUNOFF } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { sum } from '../../units/aggregate.js';
import type { AreaInput, FlowInput, LengthInput } from '../../units/construct.js';
import type { Length, Time, Volume } from '../../units/quantity.js';
import { NO_AREA } from '../../units/zero.js';
import { derivedStep, given, withWorking, type Step, type Worked } from '../../working.js';

/** Ground or a roof that drains into a dig. */
export interface DrainingAreaInput {
  /** Plan area [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** Share of the rain that runs off, 0 to 1. */
  readonly coefficient: number | string;
}

/** An open dig, the rain and the pump. */
export interface WaterInDigOptions {
  /** Open area of the dig [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** Depth of rain [length], more than 0 and at most 50 m. */
  readonly rain: LengthInput;
  /** Ground and roofs that drain into the dig. Default: none. */
  readonly drainsIn?: readonly DrainingAreaInput[];
  /** Rate of the pump [flow], more than 0. Default: no pump. */
  readonly pump?: FlowInput;
}

const DRAINING = shapeOf<DrainingAreaInput>()({
  area: quantity(AREA),
  coefficient: number(RUNOFF),
});

const OPTIONS = shapeOf<WaterInDigOptions>()({
  area: quantity(AREA),
  rain: quantity(DEPTH),
  drainsIn: optional(list(object(DRAINING), { of: 'areas', most: 1000 }), []),
  pump: optional(quantity(FLOW)),
});

/** Rain water in an open dig. */
export interface WaterInDig extends Cautioned, Worked {
  /** Water in the dig. */
  readonly volume: Volume;
  /** Depth of the water, level over the dig. */
  readonly depth: Length;
  /** Time to pump it out after the rain; null if no pump is given. */
  readonly pumpTime: Time | null;
  /** What to do before work resumes. */
  readonly notes: readonly string[];
}

/**
 * Water in an open dig after rain: `V = rain x (A + sum of C A of what drains in)`, its depth over
 * the dig and the time to pump it out. The soil is assumed saturated: nothing soaks away.
 *
 * @param options - see {@link WaterInDigOptions}
 * @returns volume of water, depth, pumping time; cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY_LIST` and the reading codes
 * @source derived
 * @example
 * const water = waterInDig({ area: '72.4 m2', rain: '18 mm', pump: '120 l/min' });
 * water.volume.to('m3').toString() //=> '1.3032'
 * water.pumpTime?.to('min').toString() //=> '10.86'
 */
export function waterInDig(options: WaterInDigOptions): WaterInDig {
  return waterFrom(readOptions(options, OPTIONS), () => []);
}

/** The water in a dig that has been read, after the steps that gave its rain and areas. Internal. */
export function waterFrom(
  { area: open, rain, drainsIn, pump }: Values<typeof OPTIONS>,
  earlier: () => readonly Step[],
): WaterInDig {
  const added = sum([NO_AREA, ...drainsIn.map(({ area, coefficient }) => area.times(coefficient))]);
  const volume = open.plus(added).times(rain);
  const found = {
    volume,
    depth: volume.dividedBy(open),
    pumpTime: pump === undefined ? null : volume.dividedBy(pump),
    notes: NOTES,
    cautions: cautionsFor('excavation', 'drainage'),
  };
  return withWorking(found, () => [
    ...earlier(),
    derivedStep({
      title: 'Water in the dig',
      formula: 'V = p * (A + a)',
      given: [
        given('p', 'rain', rain),
        given('A', 'open area', open),
        given('a', 'area that drains in, reduced', added),
      ],
      result: given('V', 'water', volume),
    }),
  ]);
}

const NOTES: readonly string[] = Object.freeze([
  'If water stands or gathers in a dig, keep everyone out until a competent person has decided how to work.',
  'A competent person inspects the sides again after rain, before anyone goes in.',
  'Keep off wet clay. Pump only to where water may be discharged. Check the compaction again when the clay has dried.',
]);
