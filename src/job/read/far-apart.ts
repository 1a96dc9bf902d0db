import type { Length } from '../../units/quantity.js';

/** Maximum distance of neighbours on a site [m]. Beyond it a coordinate has a wrong digit. */
const MOST = 10_000;

interface Place {
  readonly x?: Length | undefined;
  readonly y?: Length | undefined;
}

/** True for two readable points that are farther apart than neighbours on a site. Internal. */
export function areFarApart(a: Place | undefined, b: Place | undefined): boolean {
  if (a?.x === undefined || a.y === undefined || b?.x === undefined || b.y === undefined) {
    return false;
  }
  const [dx, dy] = [b.x.minus(a.x).toNumber('m'), b.y.minus(a.y).toNumber('m')];
  return Math.hypot(dx, dy) > MOST;
}

/** The message for points too far apart. Internal. */
export const farApart = (what: string): string =>
  `this ${what} is more than 10 km from the one before it. Check the digits, the unit and the axis`;
