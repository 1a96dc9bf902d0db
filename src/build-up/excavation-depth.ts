import { optional, quantity } from '../input/field.js';
import { LEVEL_DIFFERENCE, THICKNESS_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import type { BuildUp } from './build-up.js';
import { builtUp } from './built-up.js';

/** A build-up and the ground it goes into. */
export interface ExcavationDepthOptions {
  /** The layers that go in, from {@link buildUp}. */
  readonly buildUp: BuildUp;
  /** Thickness of old paving to strip [length], 0 to 5 m. Default: none. */
  readonly removedSurface?: LengthInput;
  /**
   * Existing surface above finished grade [length], negative if it is below, up to 20 m either
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
export interface ExcavationDepth extends Cautioned, Worked {
  /** From the existing surface to the subgrade; negative if fill is needed. */
  readonly total: Length;
  /** Soil to dig after stripping the old surface; negative if fill is needed. */
  readonly soil: Length;
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
  const total = digDepth(buildUp, above);
  const soil = soilUnder(stripped, total);
  const cautions = cautionsFor('utilities', 'excavation', 'trees');
  return withWorking({ total, soil, cautions }, () => [
    digStep(buildUp, above),
    soilStep(stripped, total),
  ]);
}

/** Depth of dig below an existing surface above finished grade. Internal. */
export const digDepth = ({ total }: BuildUp, above: Length): Length => total.plus(above);

/** Soil left of a dig once the old surface is stripped. Internal. */
export const soilUnder = (stripped: Length, dig: Length): Length => dig.minus(stripped);

/** The working of {@link digDepth}. Internal. */
export const digStep = (buildUp: BuildUp, above: Length): Step =>
  derivedStep({
    title: 'Depth of dig below the existing surface',
    formula: 'E = D + a',
    given: [
      given('D', 'total build-up', buildUp.total),
      given('a', 'existing surface above finished grade', above),
    ],
    result: given('E', 'depth of dig', digDepth(buildUp, above)),
  });

/** The working of {@link soilUnder}. Internal. */
export const soilStep = (stripped: Length, dig: Length): Step =>
  derivedStep({
    title: 'Soil to dig after stripping the old surface',
    formula: 'S = E - o',
    given: [given('E', 'depth of dig', dig), given('o', 'old surface', stripped)],
    result: given('S', 'soil to dig', soilUnder(stripped, dig)),
  });
