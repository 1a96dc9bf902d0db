import { makeReader } from '../input.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import type { BuildUp } from './build-up.js';
import { LEVEL_DIFFERENCE, THICKNESS_OR_NONE } from './limits.js';
import { requireBuildUp } from './require-build-up.js';

/** How deep to dig, from the existing surface down. */
export interface ExcavationDepth extends Worked {
  /** From the existing surface to the subgrade; negative where fill is needed. */
  readonly total: Length;
  /** Soil left to dig once the old surface is stripped; negative where fill is needed. */
  readonly soil: Length;
  readonly cautions: readonly Caution[];
}

/**
 * Depth of dig from the existing surface: `total = build-up + existing above finish`,
 * `soil = total - old surface`. The old surface is subtracted once only.
 *
 * @param options.buildUp - from {@link buildUp}
 * @param options.removedSurface - thickness of old paving to strip [length], default none
 * @param options.existingAboveFinish - how far the existing surface stands above finished grade
 *   [length], negative where it lies below, default level with it
 * @returns total and soil depth [length], positive down; negative means fill
 * @throws `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source derived
 * @example
 * const layers = [
 *   { name: 'paver', thickness: '2 3/8 in' },
 *   { name: 'bedding', thickness: '1 in' },
 *   { name: 'base', thickness: '10 in' },
 * ];
 * const dig = excavationDepth({ buildUp: buildUp({ layers }), removedSurface: '2 in' });
 * dig.soil.to('in').toString() //=> '11.375'
 */
export function excavationDepth(options: {
  readonly buildUp: BuildUp;
  readonly removedSurface?: LengthInput;
  readonly existingAboveFinish?: LengthInput;
}): ExcavationDepth {
  const reader = makeReader();
  const buildUp = requireBuildUp(reader, reader.object(options, [])['buildUp'], ['buildUp']);
  const stripped = reader.quantity(
    'length',
    options.removedSurface ?? '0 m',
    ['removedSurface'],
    THICKNESS_OR_NONE,
  );
  const above = reader.quantity(
    'length',
    options.existingAboveFinish ?? '0 m',
    ['existingAboveFinish'],
    LEVEL_DIFFERENCE,
  );
  reader.finish();
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
