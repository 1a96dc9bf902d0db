import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import type { LengthUnit } from '../units/catalogue.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { ELEVATION, GRADE, PLACE } from './limits.js';
import { readSpots, type SpotHeight, type Spots, type SpotsInput } from './read-spots.js';

/** A design plane: by its elevation at x = y = 0, or by any point of it (as `planeThrough` gives it). */
export type SitePlaneInput =
  | { readonly z0: LengthInput; readonly gradeX: SlopeInput; readonly gradeY: SlopeInput }
  | { readonly point: SpotHeight; readonly gradeX: SlopeInput; readonly gradeY: SlopeInput };

/** A design surface: a plane, spot heights, or four corners in order with straight lines between. */
export type SiteDesignInput =
  | SitePlaneInput
  | SpotsInput
  | {
      readonly unit: LengthUnit;
      readonly corners: Exclude<SpotsInput, readonly unknown[]>['points'];
    }
  | { readonly corners: readonly SpotHeight[] };

/** A plane that has been read, from its elevation at x = y = 0. Internal. */
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
export function readSiteDesign(reader: Reader, value: unknown): ReadDesign {
  const path = ['design'];
  if (Array.isArray(value)) return { kind: 'spots', spots: readSpots(reader, value, { path }) };
  const fields = reader.object(value, path);
  const kinds = ['gradeX', 'corners', 'points'].filter((name) => fields[name] !== undefined);
  if (kinds.length > 1) {
    const choices = kinds.join(', ');
    reader.fail('ONE_OF', path, `a design is one surface: give only one of ${choices}`, {
      choices,
    });
  }
  if (fields['gradeX'] !== undefined || fields['z0'] !== undefined)
    return readPlane(reader, fields);
  if (fields['corners'] === undefined) {
    return { kind: 'spots', spots: readSpots(reader, value, { path }) };
  }
  const at = [...path, 'corners'];
  const spots =
    fields['unit'] === undefined
      ? readSpots(reader, fields['corners'], { path: at })
      : readSpots(reader, fields, { path, list: 'corners' });
  const count = spots.spots.length;
  if (count > 0 && count !== 4) {
    reader.fail('WRONG_TYPE', at, `expected four corners, got ${count}`, { got: count });
  }
  return { kind: 'corners', spots };
}

/** Reads a design plane. Internal. */
export function readPlane(reader: Reader, fields: Readonly<Record<string, unknown>>): ReadPlane {
  const grade = (name: 'gradeX' | 'gradeY') =>
    reader.quantity('slope', fields[name], ['design', name], GRADE);
  const [gradeX, gradeY] = [grade('gradeX'), grade('gradeY')];
  if (fields['point'] === undefined) {
    const z0 = reader.quantity('length', fields['z0'], ['design', 'z0'], LEVEL_AT_ZERO);
    return { kind: 'plane', z0, gradeX, gradeY };
  }
  const path: FieldPath = ['design', 'point'];
  if (fields['z0'] !== undefined) {
    reader.fail('ONE_OF', ['design'], 'give only one of z0, point', { choices: 'z0, point' });
  }
  const point = reader.object(fields['point'], path);
  const read = (name: 'x' | 'y' | 'z', rule: typeof PLACE) =>
    reader.quantity('length', point[name], [...path, name], rule);
  const [x, y, z] = [read('x', PLACE), read('y', PLACE), read('z', ELEVATION)];
  const z0 = z.minus(x.times(gradeX)).minus(y.times(gradeY));
  return { kind: 'plane', z0, gradeX, gradeY };
}

/** The level of a plane far from its site may be anything. */
const LEVEL_AT_ZERO = PLACE;
