import { neededBy } from '../../input/needed-by.js';
import { compactedPerLoose } from '../../input/compaction-ratio.js';
import { number, optional, quantity } from '../../input/field.js';
import { AREA, DENSITY, FRACTION, SET_BACK, SITE_LENGTH, THICKNESS } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import type { AreaInput, DensityInput, LengthInput } from '../../units/construct.js';
import type { Area, Mass } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
// stone for a soft spot is ordered like base
import { baseOrder } from '../../volumes/base-order.js';
import { inState, type StateVolume } from '../../volumes/state-volume.js';
import { formulaStep, given, withWorking, type Worked } from '../../working.js';

/** A soft spot, and the stone to fill it. */
export interface SoftSpotOptions {
  /** Plan area of the spot [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** Depth below the subgrade [length], more than 0 and at most 5 m. */
  readonly depth: LengthInput;
  /** Compacted over loose volume of the stone, 0.5 to 1. */
  readonly compactedPerLoose: number | string;
  /** Dry density of the stone in place [density], more than 0 and at most 5 t/m3. */
  readonly compactedDryDensity: DensityInput;
  /** Moisture of the stone: water over dry mass, a fraction 0 to 1. No default. */
  readonly moisture: number | string;
  /** Perimeter of the spot [length], more than 0 and at most 10 km. Default: no geotextile. */
  readonly perimeter?: LengthInput;
  /**
   * Lap of geotextile folded back on top all around [length], 0 to 100 m; with `perimeter`. Default: 0.
   */
  readonly lap?: LengthInput;
}

const OPTIONS = shapeOf<SoftSpotOptions>()({
  area: quantity(AREA),
  depth: quantity(THICKNESS),
  compactedPerLoose,
  compactedDryDensity: quantity(DENSITY),
  moisture: number(FRACTION),
  perimeter: optional(quantity(SITE_LENGTH)),
  lap: optional(quantity(SET_BACK), NO_LENGTH),
});

/** A soft spot dug out and filled with stone. */
export interface SoftSpot extends Cautioned, Worked {
  /** Soil to haul away, in place. */
  readonly spoil: StateVolume<'bank'>;
  /** Stone in place. */
  readonly stoneCompacted: StateVolume<'compacted'>;
  /** Stone in the truck. */
  readonly stoneLoose: StateVolume<'loose'>;
  /** Mass of dry stone. */
  readonly dryMass: Mass;
  /** Mass on the scale, water included. */
  readonly deliveredMass: Mass;
  /** Geotextile over the bottom and up the sides; null if no perimeter is given. */
  readonly geotextile: Area | null;
  /** What to check before you fill it. */
  readonly notes: readonly string[];
}

/**
 * Soil, stone and geotextile for a soft spot that is dug out below the subgrade: `V = A e`, stone
 * as for a base, `geotextile = A + perimeter x (e + lap)`. Book this stone separately, or the yield
 * check of the base will be wrong.
 *
 * @param options - see {@link SoftSpotOptions}
 * @returns spoil as bank volume, stone compacted, loose, dry and delivered, geotextile; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source derived
 * @example
 * const spot = softSpot({
 *   area: '3.2 m2',
 *   depth: '0.25 m',
 *   compactedPerLoose: 0.8,
 *   compactedDryDensity: '2.2 t/m3',
 *   moisture: 0,
 * });
 * spot.stoneLoose.to('m3').toString() //=> '1'
 * spot.deliveredMass.to('t').toString() //=> '1.76'
 */
export function softSpot(options: SoftSpotOptions): SoftSpot {
  const read = readOptions(options, OPTIONS, neededBy('lap', 'perimeter'));
  const { area, depth, compactedDryDensity, perimeter, lap } = read;
  const stone = baseOrder({
    area,
    thickness: depth,
    compactedDryDensity,
    moisture: options.moisture,
    compactedPerLoose: options.compactedPerLoose,
  });
  const geotextile = perimeter === undefined ? null : area.plus(perimeter.times(depth.plus(lap)));
  const found = {
    spoil: inState(area.times(depth), 'bank'),
    stoneCompacted: stone.compacted,
    stoneLoose: stone.loose,
    dryMass: stone.dryMass,
    deliveredMass: stone.deliveredMass,
    geotextile,
    notes: NOTES,
    cautions: cautionsFor('excavation', 'structure', 'utilities'),
  };
  return withWorking(found, () => [
    ...stone.working,
    ...(perimeter === undefined || geotextile === null
      ? []
      : [
          formulaStep({
            title: 'Geotextile in the spot',
            formula: 'G = A + P * (e + l)',
            given: [
              given('A', 'area', area),
              given('P', 'perimeter', perimeter),
              given('e', 'depth', depth),
              given('l', 'lap', lap),
            ],
            result: given('G', 'geotextile', geotextile),
            source: 'derived' as const,
          }),
        ]),
  ]);
}

const NOTES: readonly string[] = Object.freeze([
  'First find where the water comes from. Stone over a spring stays soft.',
  'Do not undercut beside a footing, kerb or wall without an engineer.',
  'Book this stone separately from the base.',
]);
