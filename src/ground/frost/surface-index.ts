import { exactlyOne } from '../../input/exactly-one.js';
import { choice, float, optional } from '../../input/field.js';
import { SURFACE_FACTOR } from '../../input/ground-ranges.js';
import type { Reader } from '../../input/reader.js';
import type { FieldPath } from '../../errors.js';
import { FROST_SURFACES, SURFACE_FACTORS, type FrostSurface } from '../../sources/frost-figures.js';
import { formulaStep, given, published, type Step } from '../../working.js';
import { degreeDays, type DegreeDaysInput } from './thermal-units.js';

/** The cold of a winter and the surface it acts on. */
export interface SurfaceIndexOptions {
  /** Freezing index of the air; see {@link designFreezingIndex}. */
  readonly airIndex: DegreeDaysInput;
  /** Surface, for its factor of `SURFACE_FACTORS`. Give this or `surfaceFactor`. */
  readonly surface?: FrostSurface;
  /** Index of the surface over that of the air, 0 to 5. Give this or `surface`. */
  readonly surfaceFactor?: number | string;
}

/** The fields of {@link SurfaceIndexOptions}. Internal. */
export const SURFACE_INDEX_FIELDS = {
  airIndex: degreeDays,
  surface: optional(choice(FROST_SURFACES)),
  surfaceFactor: optional(float(SURFACE_FACTOR)),
} as const;

/** Refuses a surface that is given twice or not at all. Internal. */
export function checkSurface(
  reader: Reader,
  raw: Readonly<Record<string, unknown>>,
  path: FieldPath,
): void {
  exactlyOne(reader, raw, ['surface', 'surfaceFactor'], [...path, 'surface']);
}

/** The index of the surface, in C-days, and its factor. Internal. */
export function surfaceIndex(read: {
  readonly airIndex: number;
  readonly surface: FrostSurface | undefined;
  readonly surfaceFactor: number | undefined;
}): { readonly index: number; readonly factor: number; readonly step: Step } {
  const { airIndex, surface, surfaceFactor } = read;
  const factor =
    surface === undefined ? (surfaceFactor ?? 1) : Number(SURFACE_FACTORS[surface].value);
  const index = factor * airIndex;
  const step: Step = formulaStep({
    title: 'Freezing index of the surface',
    formula: 'F = n * I',
    given: [
      surface === undefined
        ? given('n', 'factor of the surface', factor)
        : published('n', 'factor of the surface', factor, 'surface-factors'),
      given('I', 'freezing index of the air, in C-days', airIndex),
    ],
    result: given('F', 'freezing index of the surface, in C-days', index),
    source: surface === undefined ? 'derived' : 'surface-factors',
  });
  return { index, factor, step };
}
