import { known } from '../../invariant.js';
import type { Outline } from '../../outline/ring.js';
import { isQuantity, ownQuantity, type Length } from '../../units/quantity.js';
import type { PlanPoint } from '../../units/vector.js';
import { digOutline } from '../plan/areas/in-dig.js';
import type { DigRing } from '../plan/plan.js';

/** Reads a number without a unit, or a text, by the name of its field. Internal. */
export type ReadNumber = (value: string | number, name: string) => unknown;

/**
 * A part of the plain form of a job, as it was read, by the name of its field; a list passes its name
 * on. Internal.
 */
export function restored(value: unknown, name: string, number: ReadNumber): unknown {
  if (typeof value === 'string' || typeof value === 'number') return number(value, name);
  if (typeof value !== 'object' || value === null) return value;
  if (name === 'outline') return restoredOutline(value as PlainOutline);
  if (isQuantity(value)) return ownQuantity(value);
  if (Array.isArray(value)) return value.map((part: unknown) => restored(part, name, number));
  const read: Record<string, unknown> = {};
  for (const [field, part] of Object.entries(value)) {
    if (part !== undefined) read[field] = restored(part, field, number);
  }
  return read;
}

/** A ring in the form that a plan writes; edges count from 1. */
interface PlainRing {
  readonly points: readonly PlanPoint[];
  readonly arcs?: readonly { readonly edge: number; readonly bulgeMiddleOrdinate: Length }[];
}
type PlainOutline = readonly PlanPoint[] | (PlainRing & { readonly holes?: readonly PlainRing[] });

const isPoints = (value: PlainOutline): value is readonly PlanPoint[] => Array.isArray(value);

/** How many edges an outline in the plain form has, those of its holes among them. Internal. */
export function edgesIn(outline: unknown): number {
  const value = outline as PlainOutline;
  const rings = isPoints(value) ? [{ points: value }] : [value, ...(value.holes ?? [])];
  return rings.reduce((sum, { points }) => sum + points.length, 0);
}

function restoredOutline(value: PlainOutline): Outline {
  const { holes = [], ...outer } = isPoints(value) ? { points: value } : value;
  const { x, y } = known(outer.points[0], 'point of an outline');
  return {
    ...digOutline({ outer: ringFrom(outer), holes: holes.map(ringFrom) }),
    origin: { x: ownQuantity(x), y: ownQuantity(y) },
  };
}

const ringFrom = ({ points, arcs = [] }: PlainRing): DigRing => ({
  points,
  arcs: arcs
    .filter(({ bulgeMiddleOrdinate }) => !ownQuantity(bulgeMiddleOrdinate).isZero())
    .map((arc) => ({ ...arc, edge: arc.edge - 1 })),
});
