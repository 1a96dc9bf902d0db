import { bothOrNeither } from '../../input/both-or-neither.js';
import { number, optional, quantity } from '../../input/field.js';
import { FALL_OF_SOME, FLOW, RUNOFF, SITE_LENGTH } from '../../input/ranges.js';
import { fault } from '../../errors.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import type { FlowInput, LengthInput, SlopeInput } from '../../units/construct.js';
import type { Area, Length } from '../../units/quantity.js';
import { formulaStep, given, withWorking, type Worked } from '../../working.js';
import { waterRate, type WaterRateInput } from './rain-rate.js';

/** A drain inlet, the rain, and the paving that falls to it. */
export interface InletAreaOptions {
  /** Flow that the inlet takes [flow], more than 0; its maker gives it. */
  readonly capacity: FlowInput;
  /** How hard it rains: depth in a time. */
  readonly rain: WaterRateInput;
  /** Share of the rain that runs off, more than 0 and at most 1. */
  readonly coefficient: number | string;
  /** Longest way that water runs to the inlet [length]; with `fall`. Default: no rise is worked out. */
  readonly run?: LengthInput;
  /** Fall of the paving to the inlet [slope], more than 0 and at most 100%; with `run`. Default: no rise. */
  readonly fall?: SlopeInput;
}

const OPTIONS = shapeOf<InletAreaOptions>()({
  capacity: quantity(FLOW),
  rain: waterRate,
  coefficient: number({ ...RUNOFF, sign: 'positive' }),
  run: optional(quantity(SITE_LENGTH)),
  fall: optional(quantity(FALL_OF_SOME)),
});

/** What one inlet drains. */
export interface InletArea extends Cautioned, Worked {
  /** Largest plan area that one inlet drains. */
  readonly area: Area;
  /** Height of the far end over the inlet; null unless run and fall are given. */
  readonly rise: Length | null;
}

/**
 * Plan area that one inlet drains, `A = Q / (C i)`: the inverse of {@link peakRunoff}; and the height
 * of the far end of the paving over the inlet, `h = L s`.
 *
 * @param options - see {@link InletAreaOptions}
 * @returns area [area], rise [length], cautions
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` (also for no rain), `WRONG_TYPE` and the
 *   reading codes
 * @source rational-method
 * @example
 * const inlet = inletArea({
 *   capacity: '100 l/min',
 *   rain: { depth: '60 mm', time: '1 h' },
 *   coefficient: '0.8',
 *   run: '9 m',
 *   fall: '2%',
 * });
 * inlet.area.to('m2').toString() //=> '125'
 * inlet.rise?.to('mm').toString() //=> '180'
 */
export function inletArea(options: InletAreaOptions): InletArea {
  const read = readOptions(options, OPTIONS, (reader, _, path, raw) => {
    bothOrNeither(reader, raw, ['run', 'fall'], path);
  });
  const { capacity, rain, coefficient, run, fall } = read;
  if (rain.depth.isZero()) {
    const message = 'the depth of rain is 0. Write the rain of the storm';
    throw fault('OUT_OF_RANGE', message, {}, ['rain', 'depth']);
  }
  const area = capacity.times(rain.time).dividedBy(rain.depth).dividedBy(coefficient);
  const rise = run === undefined || fall === undefined ? null : run.times(fall);
  return withWorking({ area, rise, cautions: cautionsFor('drainage') }, () => [
    formulaStep({
      title: 'Area that one inlet drains',
      formula: 'A = Q * t / (C * p)',
      given: [
        given('Q', 'flow that the inlet takes', capacity),
        given('t', 'time', rain.time),
        given('C', 'share that runs off', coefficient),
        given('p', 'depth of rain', rain.depth),
      ],
      result: given('A', 'area', area),
      source: 'rational-method',
    }),
    ...(run === undefined || fall === undefined || rise === null
      ? []
      : [
          formulaStep({
            title: 'Height of the far end over the inlet',
            formula: 'h = L * s',
            given: [given('L', 'run', run), given('s', 'fall', fall)],
            result: given('h', 'rise', rise),
            source: 'derived' as const,
          }),
        ]),
  ]);
}
