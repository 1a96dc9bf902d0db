import { makeReader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { WHEEL_SCREEN } from '../sources/production.js';
import type { ForceInput, LengthInput, PressureInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Pressure } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Worked } from '../working.js';
import { DEPTH, FORCE, PRESSURE } from '../site/limits.js';

/** A rough look at soft ground under one wheel. A screen, out of scope for design. */
export interface WheelStressScreen extends Worked {
  readonly scope: 'screen-only';
  /** Side of the square that the tyre presses on. */
  readonly contactSide: Length;
  readonly stress: Pressure;
  /** What the rule lets soft ground carry. */
  readonly permissible: Pressure;
  /** Stress over what the rule lets it carry. */
  readonly ratio: number;
  /** `over`: stop and ask an engineer. `under`: the screen found nothing, which proves nothing. */
  readonly verdict: 'over' | 'under';
  readonly note: string;
  readonly cautions: readonly Caution[];
}

/**
 * Screens the stress of one wheel on soft subgrade: the tyre presses on a square `a = sqrt(P / p)`,
 * spread 2 down to 1 out: `s = P / (a + z)^2`, against `2.8 C` without and `5.0 C` with a geotextile.
 * The rule was written for unpaved aggregate roads. It is no pavement design and replaces none.
 *
 * @param options.wheelLoad - P [force]
 * @param options.tyrePressure - p [pressure]
 * @param options.depth - z, from the surface to the subgrade [length]
 * @param options.shearStrength - C, undrained, of the subgrade [pressure]; the lower quartile of
 *   readings, not their mean
 * @param options.geotextile - whether a geotextile separates stone and soil
 * @returns contact side, stress, what the rule allows, ratio, verdict of the screen; cautions
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
export function wheelStressScreen(options: {
  readonly wheelLoad: ForceInput;
  readonly tyrePressure: PressureInput;
  readonly depth: LengthInput;
  readonly shearStrength: PressureInput;
  readonly geotextile: boolean;
}): WheelStressScreen {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const load = reader.quantity('force', fields['wheelLoad'], ['wheelLoad'], FORCE);
  const tyre = reader.quantity('pressure', fields['tyrePressure'], ['tyrePressure'], PRESSURE);
  const depth = reader.quantity('length', fields['depth'], ['depth'], DEPTH);
  const strength = reader.quantity(
    'pressure',
    fields['shearStrength'],
    ['shearStrength'],
    PRESSURE,
  );
  const geotextile = reader.flag(fields['geotextile'], ['geotextile']);
  reader.finish();

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
    verdict: stress.compare(permissible) > 0 ? 'over' : 'under',
    note: 'A screen for one wheel on soft ground, out of scope for design: thickness under vehicles is for a licensed engineer.',
    cautions: cautionsFor('structure'),
  } as const;
  return withWorking(found, () => [
    {
      title: 'Stress on the subgrade (screen)',
      formula: 's = P / (sqrt(P / p) + z)^2',
      given: [
        given('P', 'wheel load', load),
        given('p', 'tyre pressure', tyre),
        given('z', 'depth', depth),
      ],
      result: given('s', 'stress', stress),
      source: 'derived',
    },
    {
      title: 'What the rule lets soft ground carry (screen)',
      formula: 'S = k C',
      given: [
        given('k', 'factor of the rule', factor.value),
        given('C', 'shear strength', strength),
      ],
      result: given('S', 'permissible', permissible),
      source: factor.source,
    },
  ]);
}
