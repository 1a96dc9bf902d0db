import { makeReader } from '../../input/reader.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import type { AreaInput, DensityInput, LengthInput } from '../../units/construct.js';
import type { Area, Mass } from '../../units/quantity.js';
// the stone in the hole is ordered like any base
import { baseOrder } from '../../volumes/base-order.js';
import { FRACTION, DENSITY } from '../../volumes/limits.js';
import { inState, type StateVolume } from '../../volumes/state-volume.js';
import { readCompactedPerLoose } from '../../input/compaction-ratio.js';
import { given, withWorking, type Worked } from '../../working.js';
import { AREA, DEPTH, LENGTH, LENGTH_OR_NONE } from '../limits.js';

/** A soft spot dug out and filled with stone. */
export interface SoftSpot extends Worked {
  /** Soil to cart away. */
  readonly spoil: StateVolume<'bank'>;
  readonly stoneCompacted: StateVolume<'compacted'>;
  readonly stoneLoose: StateVolume<'loose'>;
  readonly dryMass: Mass;
  readonly deliveredMass: Mass;
  /** Geotextile over the bottom and up the sides; null without a perimeter. */
  readonly geotextile: Area | null;
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Soil, stone and geotextile for a soft spot that is dug out below the subgrade: `V = A e`, stone as
 * for a base, `geotextile = A + perimeter x (e + lap)`. Book the stone apart from the base, or the
 * yield of the base comes out wrong.
 *
 * @param options.area - plan area of the spot [area]
 * @param options.depth - below the subgrade [length]
 * @param options.compactedPerLoose - of the stone, 0.5 to 1
 * @param options.compactedDryDensity - of the stone in place, dry [density]
 * @param options.moisture - of the stone, water over dry mass, a fraction; no default
 * @param options.perimeter - of the spot [length], for the geotextile
 * @param options.lap - geotextile folded back on top all round [length], default none
 * @returns spoil in the bank, stone compacted, loose, dry and delivered, geotextile; cautions
 * @throws `RATIO_OUT_OF_RANGE`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
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
export function softSpot(options: {
  readonly area: AreaInput;
  readonly depth: LengthInput;
  readonly compactedPerLoose: number | string;
  readonly compactedDryDensity: DensityInput;
  readonly moisture: number | string;
  readonly perimeter?: LengthInput;
  readonly lap?: LengthInput;
}): SoftSpot {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const area = reader.quantity('area', fields['area'], ['area'], AREA);
  const depth = reader.quantity('length', fields['depth'], ['depth'], DEPTH_OF_SPOT);
  const ratio = readCompactedPerLoose(reader, fields['compactedPerLoose'], ['compactedPerLoose']);
  const density = reader.quantity(
    'density',
    fields['compactedDryDensity'],
    ['compactedDryDensity'],
    DENSITY,
  );
  const moisture = reader.number(fields['moisture'], ['moisture'], FRACTION);
  const perimeter =
    fields['perimeter'] === undefined
      ? undefined
      : reader.quantity('length', fields['perimeter'], ['perimeter'], LENGTH);
  const lap = reader.quantity('length', fields['lap'] ?? '0 m', ['lap'], LENGTH_OR_NONE);
  reader.finish();

  const stone = baseOrder({
    area,
    thickness: depth,
    compactedDryDensity: density,
    moisture: moisture.toString(),
    compactedPerLoose: ratio.toString(),
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
          {
            title: 'Geotextile in the spot',
            formula: 'G = A + P (e + l)',
            given: [
              given('A', 'area', area),
              given('P', 'perimeter', perimeter),
              given('e', 'depth', depth),
              given('l', 'lap', lap),
            ],
            result: given('G', 'geotextile', geotextile),
            source: 'derived' as const,
          },
        ]),
  ]);
}

const DEPTH_OF_SPOT = { ...DEPTH, most: DEPTH.most.dividedBy(10) } as const;
const NOTES: readonly string[] = Object.freeze([
  'Find where the water comes from first: stone in a spring stays soft.',
  'Do not undercut beside a footing, kerb or wall without an engineer.',
  'Book this stone apart from the base.',
]);
