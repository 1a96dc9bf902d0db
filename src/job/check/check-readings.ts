import { exactlyOne } from '../../input/exactly-one.js';
import { list, object, optional, quantity, text } from '../../input/field.js';
import { givenEntries } from '../../input/given-entries.js';
import { ELEVATION, LEVEL_DIFFERENCE, ROD_READING } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf, type Check, type Field, type Values } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type { FieldPath } from '../../errors.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { surfacesBelow, type SurfaceKind } from '../plan/surfaces.js';
import { placeAt, type Place, type Places } from './places.js';

/** One reading of the work as built: on a surface, at a stake, by string, rod or elevation. */
export interface JobReadingInput {
  /** Id of the stake. */
  readonly stake: string;
  /** As the plan names it: `subgrade`, `lift 1 top`, `base top`, `bedding top`, `finished grade`. */
  readonly surface: string;
  /** Measured from the string straight down [length, up to 100 m]; or give `rod` or `elevation`. */
  readonly belowString?: LengthInput;
  /** Read on the rod, under the height of instrument [length]; or give one of the others. */
  readonly rod?: LengthInput;
  /** Elevation of the surface [length]; or give `belowString` or `rod`. */
  readonly elevation?: LengthInput;
}

/** A reading that has been read. Internal. */
export interface JobReading extends Place {
  /** Above finished grade: negative below it. */
  readonly height: Length;
  /** Its position among the readings. */
  readonly index: number;
}

const READING = shapeOf<JobReadingInput>()({
  stake: text(),
  surface: text(),
  belowString: optional(quantity(LEVEL_DIFFERENCE)),
  rod: optional(quantity(ROD_READING)),
  elevation: optional(quantity(ELEVATION)),
});

const WAYS = ['belowString', 'rod', 'elevation'] as const;
const MOST_READINGS = 10_000;

/** A reading as it was read; a field with a fault is left out. Internal. */
export type ReadReading = Values<typeof READING>;

/** The readings, each held against the plan that they belong to. Internal. */
export const readingsField = (places: Places): Field<readonly ReadReading[]> =>
  list(object(READING, checkReading(places)), { of: 'readings', most: MOST_READINGS });

/** The kinds of surface that were read, whatever else is wrong with the readings. Internal. */
export function kindsRead(readings: unknown, places: Places): ReadonlySet<SurfaceKind> {
  const given = givenEntries(readings, READING, MOST_READINGS);
  return new Set(
    given.flatMap(
      (entry) => placeAt(places, entry?.['stake'], entry?.['surface'])?.surface.kind ?? [],
    ),
  );
}

const checkReading =
  (places: Places): Check<typeof READING> =>
  (reader, { stake, surface }, path, raw) => {
    const way = exactlyOne(reader, raw, WAYS, path);
    if (stake === undefined) return;
    const found = places.get(stake);
    if (found === undefined) {
      const message = `the plan has no stake ${shown(stake)}`;
      reader.fail('UNKNOWN_ID', [...path, 'stake'], message, { id: stake });
      return;
    }
    const surfaces = surfacesBelow(found.pavement).map((one) => one.surface);
    if (surface !== undefined && !surfaces.includes(surface)) {
      const choices = surfaces.join(', ');
      const message = `${shown(surface)} is not one of ${choices}`;
      reader.fail('UNKNOWN_CHOICE', [...path, 'surface'], message, { choices });
    }
    if (way === undefined || way === 'belowString' || found.stake.finishElevation !== null) return;
    const message = `missing. Finished grade at ${stake} has no elevation in the plan, so measure below the string`;
    reader.fail('REQUIRED', [...path, 'belowString'], message);
  };

/** Refuses a second reading in one place. Internal. */
export function refuseSecond(reader: Reader, readings: readonly Partial<ReadReading>[]): void {
  const seen = new Set<string>();
  readings.forEach(({ stake, surface }, index) => {
    if (stake === undefined || surface === undefined) return;
    const key = JSON.stringify([stake, surface]);
    const path: FieldPath = ['readings', index];
    const message = `${shown(stake)} has two readings on ${shown(surface)}. Keep the last`;
    if (seen.has(key)) reader.fail('DUPLICATE_ID', path, message);
    seen.add(key);
  });
}

/** Where readings were taken, and how high above finished grade. Internal. */
export const heightsOf = (
  readings: readonly ReadReading[],
  { places, sight }: { readonly places: Places; readonly sight: Length | undefined },
): readonly JobReading[] =>
  readings.flatMap((reading, index) => {
    const place = placeAt(places, reading.stake, reading.surface);
    const height = place === undefined ? undefined : heightOf(reading, place, sight);
    return place === undefined || height === undefined ? [] : [{ ...place, height, index }];
  });

function heightOf(
  { belowString, rod, elevation }: ReadReading,
  { stake, line }: Place,
  sight: Length | undefined,
): Length | undefined {
  if (belowString !== undefined) return line.stringHeight.minus(belowString);
  const level = rod === undefined ? elevation : sight?.minus(rod);
  return stake.finishElevation === null ? undefined : level?.minus(stake.finishElevation);
}
