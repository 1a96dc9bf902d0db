import type { FieldPath } from '../errors.js';
import { PLACE, SLOPE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { refuseUnknown } from '../input/unknown-field.js';
import type { LengthUnit } from '../units/catalogue.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import type { NumberInput } from '../units/read-number.js';
import { NO_LENGTH } from '../units/zero.js';
import {
  readSpots,
  spotHeight,
  type SpotHeight,
  type Spots,
  type SpotsInput,
} from './read-spots.js';

/** A design plane, given by its elevation at x = y = 0. */
export interface SitePlaneAtZeroInput {
  /** Elevation at x = y = 0 [length]. */
  readonly z0: LengthInput;
  /** Rise over run along x [slope], + rising. */
  readonly gradeX: SlopeInput;
  /** Rise over run along y [slope], + rising. */
  readonly gradeY: SlopeInput;
}

/** A design plane, given by any point on it, as `planeThrough` returns it. */
export interface SitePlaneByPointInput {
  /** A point on the plane. */
  readonly point: SpotHeight;
  /** Rise over run along x [slope], + rising. */
  readonly gradeX: SlopeInput;
  /** Rise over run along y [slope], + rising. */
  readonly gradeY: SlopeInput;
}

/** A design plane. */
export type SitePlaneInput = SitePlaneAtZeroInput | SitePlaneByPointInput;

/** Four corners in order, with straight lines between, all in one unit. */
export interface SiteCornersInput {
  /** The unit of all numbers. */
  readonly unit: LengthUnit;
  /** The corners as x, y and elevation. */
  readonly corners: readonly (readonly [NumberInput, NumberInput, NumberInput])[];
}

/** A design surface: a plane, spot heights, or four corners in order with straight lines between. */
export type SiteDesignInput =
  | SitePlaneInput
  | SpotsInput
  | SiteCornersInput
  | {
      /** The corners, three lengths each. */
      readonly corners: readonly SpotHeight[];
    };

/** A plane that has been read, by its elevation at x = y = 0. Internal. */
export interface ReadPlane {
  readonly kind: 'plane';
  readonly z0: Length;
  readonly gradeX: Slope;
  readonly gradeY: Slope;
}

/** A design that has been read. Internal. */
export type ReadDesign =
  | ReadPlane
  | { readonly kind: 'spots'; readonly spots: Spots }
  | { readonly kind: 'corners'; readonly spots: Spots };

/** Reads a design surface. Internal. */
export function readSiteDesign(
  reader: Reader,
  value: unknown,
  path: FieldPath = ['design'],
): ReadDesign {
  if (Array.isArray(value)) return { kind: 'spots', spots: readSpots(reader, value, { path }) };
  const fields = reader.object(value, path);
  const kinds = ['gradeX', 'corners', 'points'].filter((name) => fields[name] !== undefined);
  if (kinds.length > 1) {
    const choices = kinds.join(', ');
    reader.fail(
      'CONFLICTING_FIELDS',
      path,
      `a design is one surface. Give only one of ${choices}`,
      {
        choices,
      },
    );
  }
  if (fields['gradeX'] !== undefined || fields['z0'] !== undefined)
    return readPlane(reader, fields);
  if (fields['corners'] === undefined) {
    return { kind: 'spots', spots: readSpots(reader, value, { path }) };
  }
  const at = [...path, 'corners'];
  refuseUnknown(reader, fields, path, { unit: true, corners: true });
  const spots =
    fields['unit'] === undefined
      ? readSpots(reader, fields['corners'], { path: at })
      : readSpots(reader, fields, { path, list: 'corners' });
  const count = spots.spots.length;
  if (count > 0 && count !== 4) {
    const words = `${count === 1 ? '1 corner' : `${count} corners`}, a warped surface has 4. Give them in order around the site`;
    reader.fail('COUNT_MISMATCH', at, words, { expected: 4, got: count });
  }
  return { kind: 'corners', spots };
}

/** Reads a design plane. Internal. */
export function readPlane(reader: Reader, fields: Readonly<Record<string, unknown>>): ReadPlane {
  refuseUnknown(reader, fields, ['design'], { z0: true, point: true, gradeX: true, gradeY: true });
  const grade = (name: 'gradeX' | 'gradeY') =>
    reader.quantity('slope', fields[name], ['design', name], SLOPE);
  const [gradeX, gradeY] = [grade('gradeX'), grade('gradeY')];
  if (fields['point'] === undefined) {
    const z0 = reader.quantity('length', fields['z0'], ['design', 'z0'], LEVEL_AT_ZERO);
    return { kind: 'plane', z0, gradeX, gradeY };
  }
  const path: FieldPath = ['design', 'point'];
  if (fields['z0'] !== undefined) {
    const choices = 'z0, point';
    reader.fail('CONFLICTING_FIELDS', ['design'], `give only one of ${choices}`, { choices });
  }
  const before = reader.faults();
  const { x, y, z } = spotHeight.read(reader, fields['point'], path);
  if (reader.faults() > before) return { kind: 'plane', z0: NO_LENGTH, gradeX, gradeY };
  const z0 = z.minus(x.times(gradeX)).minus(y.times(gradeY));
  return { kind: 'plane', z0, gradeX, gradeY };
}

/** The level of a plane far from its site can be any number. */
const LEVEL_AT_ZERO = PLACE;
