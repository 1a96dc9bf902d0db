import { fromNumber } from '../units/construct.js';
import type { Angle, Length } from '../units/quantity.js';

/** Half axes of an ellipse. */
export interface EllipseAxes {
  /** Half the long axis [length]. */
  readonly semiMajor: Length;
  /** Half the short axis [length]. */
  readonly semiMinor: Length;
}

/** Uncertainty of a point, from the standard uncertainties of the lengths that fix it. */
export interface ErrorEllipse extends EllipseAxes {
  /** Standard uncertainty in the direction where it is largest [length]. */
  readonly semiMajor: Length;
  /** Standard uncertainty square to that, where it is smallest [length]. */
  readonly semiMinor: Length;
  /** Direction of the major axis, clockwise from +y [angle], from 0 to less than 180 degrees. */
  readonly azimuth: Angle;
  /** Root of the sum of both squares [length]. */
  readonly position: Length;
  /** The ellipse that contains the point in 95 of 100 cases. */
  readonly within95: EllipseAxes;
}

/** A length taped along a line, and its standard uncertainty [metres]. Internal. */
export interface TapedLine {
  /** From the fixed point to the point; not zero. */
  readonly along: readonly [number, number];
  readonly uncertainty: number;
}

/** `sqrt(-2 ln 0.05)`: normal errors in two directions. */
const WITHIN_95 = Math.sqrt(-2 * Math.log(0.05));

/** Below this sine the direction of a tape is lost in the rounding of floats. */
const NO_CROSSING = 1e-14;

/**
 * The error ellipse of a point fixed by two lengths: small errors da and db move it by
 * `(da p - db q) / sin A`, p and q square to the second and the first tape. In floats; null if the
 * tapes cross so flat that floats cannot tell the angle. Internal.
 */
export function ellipseOf([first, second]: readonly [TapedLine, TapedLine]): ErrorEllipse | null {
  const [ax, ay] = unit(first.along);
  const [bx, by] = unit(second.along);
  const sine = ax * by - ay * bx;
  if (!(Math.abs(sine) > NO_CROSSING)) return null;
  const [a, b] = [(first.uncertainty / sine) ** 2, (second.uncertainty / sine) ** 2];
  const [xx, xy, yy] = [
    a * by * by + b * ay * ay,
    -a * bx * by - b * ax * ay,
    a * bx * bx + b * ax * ax,
  ];
  const spread = Math.hypot(xx - yy, 2 * xy);
  const [most, least] = [(xx + yy + spread) / 2, Math.max((xx + yy - spread) / 2, 0)];
  const major = Math.atan2(2 * xy, yy - xx) / 2;
  const metres = (value: number): Length => fromNumber(value, 'm');
  const [semiMajor, semiMinor] = [Math.sqrt(most), Math.sqrt(least)];
  return {
    semiMajor: metres(semiMajor),
    semiMinor: metres(semiMinor),
    azimuth: fromNumber((major + Math.PI) % Math.PI, 'rad'),
    position: metres(Math.sqrt(most + least)),
    within95: {
      semiMajor: metres(WITHIN_95 * semiMajor),
      semiMinor: metres(WITHIN_95 * semiMinor),
    },
  };
}

function unit([x, y]: readonly [number, number]): readonly [number, number] {
  const size = Math.hypot(x, y);
  return [x / size, y / size];
}
