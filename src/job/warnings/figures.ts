import { fromNumber } from '../../units/construct.js';
import type { Length, Slope } from '../../units/quantity.js';
import type { PlanPoint } from '../../units/vector.js';

/** A height or distance in metres as a figure of a warning: to a tenth of a millimetre. Internal. */
export const lengthFigure = (metres: number): Length =>
  fromNumber(Math.round(metres * 10_000) / 10_000, 'm');

/** A slope, rise over run, as a figure of a warning: to a thousandth of a percent. Internal. */
export const slopeFigure = (ratio: number): Slope =>
  fromNumber(Math.round(ratio * 100_000) / 1000, 'percent');

/** A place in metres, seen from an origin, as figures of a warning: to a millimetre. Internal. */
export const placeFigures = (
  origin: PlanPoint,
  { x, y }: Place,
): { readonly x: Length; readonly y: Length } => ({
  x: origin.x.plus(millimetres(x)),
  y: origin.y.plus(millimetres(y)),
});

const millimetres = (metres: number): Length => fromNumber(Math.round(metres * 1000), 'mm');

/** A place or vector in metres. Internal. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Where a place lies, seen from an origin. Internal. */
export const placeFrom = (origin: PlanPoint, { x, y }: PlanPoint): Place => ({
  x: x.minus(origin.x).toNumber('m'),
  y: y.minus(origin.y).toNumber('m'),
});
