import { line, polygon, type Point } from '../svg/shapes.js';

const LONG = 9;
const HALF = 4;

/** A line with a head at its end. Internal. */
export function arrow(style: string, from: Point, to: Point): string[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [dx, dy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  const wing = (half: number): Point => [
    to[0] - dx * LONG - dy * half,
    to[1] - dy * LONG + dx * half,
  ];
  return [line(style, from, to), polygon('solid', [to, wing(HALF), wing(-HALF)])];
}
