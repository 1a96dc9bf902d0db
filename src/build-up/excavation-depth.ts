import { optional, quantity } from '../input/field.js';
import { LEVEL_DIFFERENCE, THICKNESS_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { given, withWorking, type Worked } from '../working.js';
import type { BuildUp } from './build-up.js';
import { builtUp } from './built-up.js';

/** A build-up and what lies where it goes. */
export interface ExcavationDepthOptions {
  /** The layers that go in, from {@link buildUp}. */
  readonly buildUp: BuildUp;
  /** Thickness of old paving to strip [length], 0 to 5 m. Default: none. */
  readonly removedSurface?: LengthInput;
  /**
   * Existing surface above finished grade [length], negative where it is below, up to 20 m either
   * way. Default: level with it.
   */
  readonly existingAboveFinish?: LengthInput;
}

const OPTIONS = shapeOf<ExcavationDepthOptions>()({
  buildUp: builtUp,
  removedSurface: optional(quantity(THICKNESS_OR_NONE), NO_LENGTH),
  existingAboveFinish: optional(quantity(LEVEL_DIFFERENCE), NO_LENGTH),
});

/** How deep to dig, from the existing surface down. */
export interface ExcavationDepth extends Worked {
  /** From the existing surface to the subgrade; negative where fill is needed. */
  readonly total: Length;
  /** Soil left to dig once the old surface is stripped; negative where fill is needed. */
  readonly soil: Length;
  /** What to have checked, and by whom. */
  readonly cautions: readonly Caution[];
}

/**
 * Depth of dig from the existing surface: `total = build-up + existing above finish`,
 * `soil = total - old surface`. The old surface is subtracted once only.
 *
 * @param options - see {@link ExcavationDepthOptions}
 * @returns total and soil depth [length], positive down; negative means fill
 * @throws `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source derived
 * @example
 * const layers = [
 *   { name: 'paver', thickness: '3 1/4 in' },
 *   { name: 'bedding', thickness: '1 in' },
 *   { name: 'base', thickness: '8 in' },
 * ];
 * const dig = excavationDepth({ buildUp: buildUp({ layers }), removedSurface: '3 in' });
 * dig.soil.to('in').toString() //=> '9.25'
 */
export function excavationDepth(options: ExcavationDepthOptions): ExcavationDepth {
  const {
    buildUp,
    removedSurface: stripped,
    existingAboveFinish: above,
  } = readOptions(options, OPTIONS);
  const total = buildUp.total.plus(above);
  const soil = total.minus(stripped);
  const cautions = cautionsFor('utilities', 'excavation', 'trees');
  return withWorking({ total, soil, cautions }, () => [
    {
      title: 'Depth of dig below the existing surface',
      formula: 'E = D + a',
      given: [
        given('D', 'total build-up', buildUp.total),
        given('a', 'existing surface above finished grade', above),
      ],
      result: given('E', 'depth of dig', total),
      source: 'derived',
    },
    {
      title: 'Soil left once the old surface is stripped',
      formula: 'S = E - o',
      given: [given('E', 'depth of dig', total), given('o', 'old surface', stripped)],
      result: given('S', 'soil to dig', soil),
      source: 'derived',
    },
  ]);
}
