import type { FlatnessCheck } from '../../checks/check-flatness.js';
import { entry, lastOf } from '../../invariant.js';
import type { DrawStyle } from '../draw-options.js';
import { roundFactor } from '../frame/scale.js';
import type { Point } from '../svg/shapes.js';
import type { EdgeReading } from './edge-readings.js';

/** Where a profile under a straightedge stands in the picture. Internal. */
export interface EdgeFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly pixelsPerMetre: number;
  /** Heights over the scale along the line. */
  readonly factor: number;
  /** Pixels of a height. */
  readonly down: number;
  /** A station and a height [m]. */
  readonly to: (station: number, height: number) => Point;
}

/** The largest gap or the tolerance is drawn this high at least, and the whole line no higher. */
const LEAST_GAP = 34;
const TALLEST = 240;
const GUTTER = 30;
const ABOVE = 46;
const BELOW = 62;

/** Lays out a profile from a height down. Internal. */
export function edgeFrame(
  { limits, greatestGap }: FlatnessCheck,
  readings: readonly EdgeReading[],
  { top, style }: { readonly top: number; readonly style: DrawStyle },
): EdgeFrame {
  const heights = readings.map(({ height }) => height);
  const maximum = limits.maximum.toNumber('m');
  const [high, low] = [maxOf(heights), -maxOf(heights.map((height) => -height)) - maximum];
  const first = entry(readings, 0).station;
  const long = lastOf(readings).station - first;
  const left = style.margin + GUTTER;
  const right = style.width - style.margin - GUTTER;
  const pixelsPerMetre = (right - left) / long;
  const gap = Math.max(greatestGap.toNumber('m'), maximum);
  const most = TALLEST / ((high - low) * pixelsPerMetre);
  const least = LEAST_GAP / (gap * pixelsPerMetre);
  const isTight = most < least;
  const wish =
    gap === 0 || high === low ? 1 : roundFactor(isTight ? most : least, isTight ? 'down' : 'up');
  const factor = isTight ? wish : Math.max(1, wish);
  const down = pixelsPerMetre * factor;
  return {
    left,
    right,
    top,
    bottom: top + ABOVE + (high - low) * down + BELOW,
    pixelsPerMetre,
    factor,
    down,
    to: (station, height) => [
      left + (station - first) * pixelsPerMetre,
      top + ABOVE + (high - height) * down,
    ],
  };
}

const maxOf = (values: readonly number[]): number =>
  values.reduce((most, value) => (value > most ? value : most), -Infinity);
