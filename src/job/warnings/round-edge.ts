import type { Place } from './figures.js';

/** An arc as a part of a circle. Internal. */
export interface Round {
  readonly centre: Place;
  readonly radius: number;
  /** Start and sweep in radians, + counter-clockwise. */
  readonly start: number;
  readonly sweep: number;
}

/** The circle of an arc; its middle ordinate + to the right of travel. Internal. */
export function roundOf(from: Place, to: Place, height: number): Round {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(x, y);
  const signed = (chord * chord) / 8 / height + height / 2;
  // from the middle of the chord to the centre, + to the right
  const off = height - signed;
  const centre = {
    x: (from.x + to.x) / 2 + (y / chord) * off,
    y: (from.y + to.y) / 2 - (x / chord) * off,
  };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  // an arc to the right of travel turns to the left, counter-clockwise
  const sweep = 4 * Math.atan((2 * height) / chord);
  return { centre, radius: Math.abs(signed), start, sweep };
}
