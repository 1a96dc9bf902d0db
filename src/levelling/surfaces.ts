// levelling stands on build-up: the surfaces that a rod is set on are those of a build-up
import type { BuildUp } from '../build-up/build-up.js';
import type { Lifts } from '../build-up/lifts.js';
import { requireBuildUp } from '../build-up/built-up.js';
import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import { isQuantity, type Length } from '../units/quantity.js';

/** A surface of a build-up and its depth below finished grade. Internal. */
export interface Surface {
  readonly surface: string;
  readonly depth: Length;
}

/**
 * Reads a build-up, and the lifts of its lowest layer if they are given, as surfaces from finished
 * grade down to the subgrade. Internal.
 */
export function readSurfaces(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
): readonly Surface[] {
  const buildUp = requireBuildUp(reader, fields['buildUp'], ['buildUp']);
  const lifts = fields['lifts'];
  const tops = lifts === undefined ? [] : readTops(reader, lifts, ['lifts']);
  const lowest = buildUp.layers.at(-1);
  const whole = tops.at(-1);
  if (whole !== undefined && lowest !== undefined && !whole.equals(lowest.thickness)) {
    const why = `make up ${whole.toString()}, but the lowest layer is ${lowest.thickness.toString()}`;
    reader.fail('OUT_OF_RANGE', ['lifts'], why);
  }
  return surfacesOf(buildUp, tops);
}

function surfacesOf({ layers, total }: BuildUp, tops: readonly Length[]): Surface[] {
  // the top lift ends at the top of its layer
  const lower = tops.slice(0, -1).map((top, k) => ({
    surface: `lift ${k + 1} top`,
    depth: total.minus(top),
  }));
  return [
    ...layers.map(({ name, top }, k) => ({
      surface: k === 0 ? 'finished grade' : `${name} top`,
      depth: top,
    })),
    ...lower.reverse(),
    { surface: 'subgrade', depth: total },
  ];
}

function readTops(reader: Reader, value: unknown, path: FieldPath): readonly Length[] {
  const tops = (value as Partial<Lifts> | null)?.tops;
  if (Array.isArray(tops) && tops.every(isLength)) return tops;
  reader.fail('WRONG_TYPE', path, 'expected what lifts({ ... }) of settline/build-up returns');
  return [];
}

const isLength = (value: unknown): value is Length =>
  isQuantity(value) && value.dimension === 'length';
