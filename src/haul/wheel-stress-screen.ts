import { flag, quantity } from '../input/field.js';
import { DEPTH, FORCE, PRESSURE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { WHEEL_SCREEN } from '../sources/production.js';
import type { ForceInput, LengthInput, PressureInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Pressure } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { derivedStep, formulaStep, given, withWorking, type Worked } from '../working.js';

/** A wheel over soft ground. */
export interface WheelStressScreenOptions {
  /** Load on the wheel [force], more than 0 and at most 10 000 kN. */
  readonly wheelLoad: ForceInput;
  /** Pressure of the tyre [pressure], more than 0. */
  readonly tyrePressure: PressureInput;
  /** From the surface down to the subgrade [length], more than 0 and at most 50 m. */
  readonly depth: LengthInput;
  /**
   * Undrained shear strength of the subgrade [pressure], more than 0. Use the lower quartile of your
   * readings, not their mean.
   */
  readonly shearStrength: PressureInput;
  /** True if a geotextile separates stone and soil. */
  readonly geotextile: boolean;
}

const OPTIONS = shapeOf<WheelStressScreenOptions>()({
  wheelLoad: quantity(FORCE),
  tyrePressure: quantity(PRESSURE),
  depth: quantity(DEPTH),
  shearStrength: quantity(PRESSURE),
  geotextile: flag,
});

/** A rough check of soft ground under one wheel. A screen, not a design. */
export interface WheelStressScreen extends Cautioned, Worked {
  /** Always `screen-only`: it is not a design. */
  readonly scope: 'screen-only';
  /** Side of the square that the tyre presses on. */
  readonly contactSide: Length;
  /** Stress on the subgrade. */
  readonly stress: Pressure;
  /** Stress that the rule allows on soft ground. */
  readonly permissible: Pressure;
  /** Stress over what the rule allows. */
  readonly ratio: number;
  /** True: stop and ask an engineer. False: the screen found nothing, which proves nothing. */
  readonly isOver: boolean;
  /** What the screen is not for. */
  readonly note: string;
}

/**
 * Screens the stress of one wheel on soft subgrade: the tyre presses on a square `a = sqrt(P / p)`,
 * spread 2 down to 1 out: `s = P / (a + z)^2`, against `2.8 C` without and `5.0 C` with a
 * geotextile. The rule was written for unpaved aggregate roads. It is not a pavement design and
 * does not replace one.
 *
 * @param options - see {@link WheelStressScreenOptions}
 * @returns contact side, stress, what the rule allows, their ratio, whether it is over; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source fm-5-430
 * @example
 * const wheel = wheelStressScreen({
 *   wheelLoad: '8 kN',
 *   tyrePressure: '500 kPa',
 *   depth: '0.285 m',
 *   shearStrength: '40 kPa',
 *   geotextile: false,
 * });
 * wheel.stress.to('kPa').toFixed(1) //=> '47.2'
 * wheel.permissible.to('kPa').toString() //=> '112'
 * wheel.scope //=> 'screen-only'
 */
export function wheelStressScreen(options: WheelStressScreenOptions): WheelStressScreen {
  const read = readOptions(options, OPTIONS);
  const { wheelLoad: load, tyrePressure: tyre, depth, shearStrength: strength, geotextile } = read;
  const contactSide = fromSI('length', squareRoot(divideRatios(exactOf(load), exactOf(tyre))));
  const side = contactSide.plus(depth);
  const stress = load.dividedBy(side.times(side));
  const factor = geotextile ? WHEEL_SCREEN.geotextile : WHEEL_SCREEN.plain;
  const permissible = strength.times(factor.value);
  const found = {
    scope: 'screen-only',
    contactSide,
    stress,
    permissible,
    ratio: stress.dividedBy(permissible).toNumber(),
    isOver: stress.compare(permissible) > 0,
    note: 'This is a screen for one wheel on soft ground, not a design. A licensed engineer decides the thickness under vehicles.',
    cautions: cautionsFor('structure'),
  } as const;
  return withWorking(found, () => [
    derivedStep({
      title: 'Stress on the subgrade (screen)',
      formula: 's = P / (sqrt(P / p) + z)^2',
      given: [
        given('P', 'wheel load', load),
        given('p', 'tyre pressure', tyre),
        given('z', 'depth', depth),
      ],
      result: given('s', 'stress', stress),
    }),
    formulaStep({
      title: 'Stress that the rule allows on soft ground (screen)',
      formula: 'S = k * C',
      given: [
        given('k', 'factor of the rule', Number(factor.value)),
        given('C', 'shear strength', strength),
      ],
      result: given('S', 'permissible', permissible),
      source: factor.source,
    }),
  ]);
}
