import { referenceQuantity } from '../../reference-quantity.js';
import { COMPACTION_METHOD } from '../../sources/compaction-method.js';
import { max } from '../../units/aggregate.js';
import { density } from '../../units/construct.js';
import type { Decimal } from '../../units/decimal.js';
import type { Density } from '../../units/quantity.js';
import type { PlanWarning } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { warning } from './warning.js';

type Range = readonly [low: number, high: number];

/**
 * Densities that materials have, in kg/m3: from light or open-graded stone to dense slag, from dry sand
 * to graded grit, from peat to rock in place, from aerated to granite paving. Common practice, no source.
 */
const DENSITIES = {
  stone: [1200, 2900],
  sand: [1200, 2200],
  joint: [1200, 2000],
  soil: [1000, 2700],
  oldPaving: [1000, 3000],
} as const satisfies Readonly<Record<string, Range>>;

/**
 * Ratios that materials have. What comes loose settles by a twentieth or more under the plate, and never
 * to less than six tenths. Soil swells when it is dug, rock the most; compacted it comes near its bank
 * volume, and rock stays larger. Stone and sand hold no more water than a quarter of their dry mass.
 * Common practice, no source; the table of `SOIL_STATE_FACTORS` lies well inside.
 */
const RATIOS = {
  compactedPerLoose: [0.6, 0.95],
  loosePerBank: [1.02, 1.8],
  compactedPerBank: [0.7, 1.4],
  moisture: [0, 0.25],
} as const satisfies Readonly<Record<string, Range>>;

/** Figures that no material has, and lifts that no plant compacts. Internal. */
export function materialWarnings({ materials, soil, oldPaving = [] }: ReadJob): PlanWarning[] {
  const loose = [
    ...materials.stones.map((one) => ({ kind: 'stone' as const, ...one })),
    ...materials.sands.map((one) => ({ kind: 'sand' as const, ...one })),
  ];
  return [
    ...loose.flatMap(
      ({ kind, id, name = id, compactedDryDensity, compactedPerLoose, moisture }) => [
        ...denseWarning(name, 'compacted dry density', [compactedDryDensity, DENSITIES[kind]]),
        ...ratioWarning(name, 'compacted over loose volume', [
          compactedPerLoose,
          RATIOS.compactedPerLoose,
        ]),
        ...ratioWarning(name, 'moisture', [moisture, RATIOS.moisture]),
      ],
    ),
    ...denseWarning('joint sand', 'dry density', [materials.jointSand?.density, DENSITIES.joint]),
    ...denseWarning('soil', 'bank density', [soil.bankDensity, DENSITIES.soil]),
    ...ratioWarning('soil', 'loose over bank volume', [soil.loosePerBank, RATIOS.loosePerBank]),
    ...ratioWarning('soil', 'compacted over bank volume', [
      soil.compactedPerBank,
      RATIOS.compactedPerBank,
    ]),
    ...oldPaving.flatMap(({ material, density: dense }) =>
      denseWarning(`old paving, ${material}`, 'density', [dense, DENSITIES.oldPaving]),
    ),
    ...liftWarnings(materials),
  ];
}

function denseWarning(
  subject: string,
  what: string,
  [got, [low, high]]: readonly [Density | undefined, Range],
): PlanWarning[] {
  if (got === undefined) return [];
  const value = got.toNumber('kg/m3');
  if (value >= low && value <= high) return [];
  const values = { what, got, low: density(low, 'kg/m3'), high: density(high, 'kg/m3') };
  return [warning('DENSITY_UNLIKELY', subject, values)];
}

function ratioWarning(
  subject: string,
  what: string,
  [got, [low, high]]: readonly [Decimal | undefined, Range],
): PlanWarning[] {
  if (got === undefined) return [];
  const value = Number(got.toString());
  if (value >= low && value <= high) return [];
  return [warning('RATIO_UNLIKELY', subject, { what, got: value, low, high })];
}

/** The thickest compacted lift that is permitted for any plant. Source: `reinstatement-lifts`. */
function liftWarnings({ stones }: ReadJob['materials']): PlanWarning[] {
  const most = max(
    COMPACTION_METHOD.granular
      .flatMap(({ lifts }) => lifts)
      .map(({ lift }) => referenceQuantity('length', lift)),
  );
  return stones
    .filter(({ maxLift }) => maxLift.compare(most) > 0)
    .map(({ id, name = id, maxLift }) => warning('LIFT_TOO_THICK', name, { lift: maxLift, most }));
}
