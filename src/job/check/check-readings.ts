import { known, present } from '../../invariant.js';
import { exactlyOne } from '../../input/exactly-one.js';
import { list, object, optional, quantity, text } from '../../input/field.js';
import { givenEntries, type GivenEntry } from '../../input/given-entries.js';
import { ELEVATION, LEVEL_DIFFERENCE, ROD_READING } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf, type Check, type Field, type Values } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type { FieldPath } from '../../errors.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { surfacesBelow } from '../plan/surfaces.js';
import type { SurfaceKind } from '../plan/surface-kind.js';
import {
  differByString,
  placeAt,
  stakePlaces,
  surfaceAt,
  type Place,
  type Places,
  type StakePlace,
} from './places.js';

/** One reading of the work as built: on a surface, at a stake, by string, rod or elevation. */
export interface JobReadingInput {
  /** Id of the stake. */
  readonly stake: string;
  /**
   * Id of the string. Needed if the stake serves strings of different heights or pavements; default: any
   * of its strings.
   */
  readonly string?: string;
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
  string: optional(text()),
  surface: text(),
  belowString: optional(quantity(LEVEL_DIFFERENCE)),
  rod: optional(quantity(ROD_READING)),
  elevation: optional(quantity(ELEVATION)),
});

const WAYS = ['belowString', 'rod', 'elevation'] as const;
const MOST_READINGS = 10_000;

/** A reading as it was read; a field with a fault is left out. Internal. */
export type ReadReading = Values<typeof READING>;

/** The readings, each compared with the plan it belongs to. Internal. */
export const readingsField = (places: Places): Field<readonly ReadReading[]> =>
  list(object(READING, checkReading(places)), { of: 'readings', most: MOST_READINGS });

/** The kinds of surface that were read, whatever else is wrong with the readings. Internal. */
export function kindsRead(readings: unknown, places: Places): ReadonlySet<SurfaceKind> {
  const given = givenEntries(readings, READING, MOST_READINGS);
  return new Set(given.flatMap((entry) => kindOf(entry, places) ?? []));
}

/** The kind of the surface; undefined where the strings of the stake do not agree on it. */
function kindOf(entry: GivenEntry, places: Places): SurfaceKind | undefined {
  const own = stakePlaces(places, entry?.['stake'], entry?.['string']);
  const kinds = new Set(
    own.map((place) => surfaceAt(place, entry?.['surface'])?.surface.kind ?? null),
  );
  const [kind] = kinds;
  return kinds.size === 1 && kind !== null ? kind : undefined;
}

const checkReading =
  (places: Places): Check<typeof READING> =>
  (reader, { stake, string, surface }, path, raw) => {
    const way = exactlyOne(reader, raw, WAYS, path);
    if (stake === undefined) return;
    const all = places.get(stake);
    if (all === undefined) {
      const message = `the plan has no stake ${shown(stake)}`;
      reader.fail('UNKNOWN_ID', [...path, 'stake'], message, { id: stake });
      return;
    }
    const isNamed = raw['string'] !== undefined;
    const own = isNamed ? checkString(reader, { stake, string, all }, [...path, 'string']) : all;
    if (!isNamed && differByString(all)) {
      const message = `missing. ${stake} serves ${stringsOf(all, 'and')}. Name the string you measured from`;
      reader.fail('REQUIRED', [...path, 'string'], message);
    }
    checkSurface(reader, { surface, own }, [...path, 'surface']);
    const isLevelled = own.every(({ stake: at }) => at.finishElevation !== null);
    if (way === undefined || way === 'belowString' || isLevelled) return;
    const message = `missing. Finished grade at ${stake} has no elevation in the plan, so measure below the string`;
    reader.fail('REQUIRED', [...path, 'belowString'], message);
  };

/** The place of the string that is named; all places of the stake where it is not one of its strings. */
function checkString(
  reader: Reader,
  {
    stake,
    string,
    all,
  }: {
    readonly stake: string;
    readonly string: string | undefined;
    readonly all: readonly StakePlace[];
  },
  path: FieldPath,
): readonly StakePlace[] {
  // a string that could not be read has its fault
  if (string === undefined) return all;
  const own = all.filter(({ line }) => line.id === string);
  if (own.length > 0) return own;
  const message = `${stake} is not a stake of ${shown(string)}. Use ${stringsOf(all, 'or')}`;
  reader.fail('UNKNOWN_ID', path, message, { id: string });
  return all;
}

const stringsOf = (places: readonly StakePlace[], word: string): string =>
  places.map(({ line }) => line.id).join(` ${word} `);

function checkSurface(
  reader: Reader,
  { surface, own }: { readonly surface: string | undefined; readonly own: readonly StakePlace[] },
  path: FieldPath,
): void {
  const surfaces = new Set(
    own.flatMap(({ pavement }) => surfacesBelow(pavement).map((one) => one.surface)),
  );
  if (surface === undefined || surfaces.has(surface)) return;
  const choices = [...surfaces].join(', ');
  const message = `${shown(surface)} is not one of ${choices}`;
  reader.fail('UNKNOWN_CHOICE', path, message, { choices });
}

/** Refuses a second reading in one place. Internal. */
export function refuseSecond(
  reader: Reader,
  readings: readonly Partial<ReadReading>[],
  places: Places,
): void {
  const seen = new Set<string>();
  readings.forEach(({ stake, string, surface }, index) => {
    if (stake === undefined || surface === undefined) return;
    const place = placeAt(places, { stake, string, surface });
    if (place === undefined) return;
    const key = JSON.stringify([stake, place.pavement.id, surface]);
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
  readings.map((reading, index) => {
    const place = known(placeAt(places, reading), 'place of a reading');
    return { ...place, height: heightOf(reading, place, sight), index };
  });

function heightOf(
  { belowString, rod, elevation }: ReadReading,
  { stake, line }: Place,
  sight: Length | undefined,
): Length {
  if (belowString !== undefined) return line.stringHeight.minus(belowString);
  const level = rod === undefined ? elevation : sight?.minus(rod);
  return known(level, 'level').minus(present(stake.finishElevation, 'finished grade'));
}
