import { choice, optional, quantity } from '../../input/field.js';
import { AREA, MACHINE_PART, PAYLOAD } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf, type Values } from '../../input/shape.js';
import type { FieldPath } from '../../errors.js';
import {
  COMPACTION_METHOD,
  COMPACTION_PLANTS,
  type CompactionPlant,
  type Fill,
  type PlantClass,
} from '../../sources/compaction-method.js';
import type { AreaInput, LengthInput, MassInput } from '../../units/construct.js';

/** A machine that compacts lifts. */
export interface PlantInput {
  /** Kind of machine. */
  readonly plant: CompactionPlant;
  /** Its mass [mass], more than 0 and at most 10 000 t. For a roller: the mass on one drum. */
  readonly mass: MassInput;
  /** Area of the base plate that touches the ground [area]; of a plate only. */
  readonly plateArea?: AreaInput;
  /** Width of the drum [length]; of a roller only. */
  readonly drumWidth?: LengthInput;
}

/** The fields of {@link PlantInput}. Internal. */
export const PLANT_FIELDS = shapeOf<PlantInput>()({
  plant: choice(COMPACTION_PLANTS),
  mass: quantity(PAYLOAD),
  plateArea: optional(quantity(AREA)),
  drumWidth: optional(quantity(MACHINE_PART)),
});

type Plant = Values<typeof PLANT_FIELDS>;

const NEEDS: Readonly<Record<CompactionPlant, 'plateArea' | 'drumWidth' | null>> = {
  plate: 'plateArea',
  vibrotamper: null,
  'single-drum': 'drumWidth',
  'twin-drum': 'drumWidth',
};

/** Refuses a plate without its area, a roller without its width, and what belongs to neither. Internal. */
export function checkPlant(
  reader: Reader,
  { plant }: { readonly plant?: CompactionPlant | undefined },
  path: FieldPath,
  raw: Readonly<Record<string, unknown>>,
): void {
  if (plant === undefined) return;
  for (const field of ['plateArea', 'drumWidth'] as const) {
    const isGiven = raw[field] !== undefined;
    if (NEEDS[plant] === field && !isGiven) {
      reader.fail('REQUIRED', [...path, field], `missing. A ${plant} is rated by it`);
    } else if (NEEDS[plant] !== field && isGiven) {
      reader.fail('CONFLICTING_FIELDS', [...path, field], `a ${plant} is not rated by it`);
    }
  }
}

/** Refuses what {@link checkPlant} does, and granular fill without granular material. Internal. */
export function checkPlantAndFill(
  reader: Reader,
  values: {
    readonly plant?: CompactionPlant | undefined;
    readonly fill?: Fill | undefined;
    readonly isWhollyCohesive?: boolean | undefined;
  },
  path: FieldPath,
  raw: Readonly<Record<string, unknown>>,
): void {
  checkPlant(reader, values, path, raw);
  if (values.fill !== 'granular' || values.isWhollyCohesive !== true) return;
  const message = 'granular fill is not wholly cohesive. Leave out one of them';
  reader.fail('CONFLICTING_FIELDS', [...path, 'isWhollyCohesive'], message);
}

/** Rating of a machine: kg per m2 of plate, kg per m of drum, or kg. Internal. */
export function ratingOf({ mass, plateArea, drumWidth }: Plant): number {
  const kilograms = mass.to('kg');
  if (plateArea !== undefined) return kilograms.dividedBy(plateArea.to('m2')).toNumber();
  if (drumWidth !== undefined) return kilograms.dividedBy(drumWidth.to('m')).toNumber();
  return kilograms.toNumber();
}

/**
 * The class of a machine for a fill; undefined for one that is lighter than any. A rating on the
 * border of two classes is in the lighter one, except that a vibrotamper of 50 kg is in that of 50.
 * Internal.
 */
export const classOf = (
  plant: CompactionPlant,
  rating: number,
  fill: Fill,
): PlantClass | undefined =>
  COMPACTION_METHOD[fill].find(
    (one) =>
      one.plant === plant &&
      rating >= Number(one.from.value) &&
      (one.to === null || rating <= Number(one.to.value)),
  );
