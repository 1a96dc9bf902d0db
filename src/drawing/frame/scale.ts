import { entry, known } from '../../invariant.js';
import { line, type Point } from '../svg/shapes.js';
import { textMark } from './text-label.js';
import { fitText } from '../svg/text-width.js';
import type { DrawStyle } from '../draw-options.js';
import { length } from '../../units/construct.js';

const STEPS = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** A round factor next to a number, no less or no more than it: 1, 1.5, 2, 2.5 ... 10, 15. Internal. */
export function roundFactor(of: number, way: 'up' | 'down'): number {
  const power = 10 ** Math.floor(Math.log10(of));
  const steps = STEPS.map((step) => Number((step * power).toPrecision(3)));
  const found =
    way === 'up'
      ? steps.find((step) => step >= of * (1 - 1e-9))
      : [...steps].reverse().find((step) => step <= of * (1 + 1e-9));
  return known(found, 'factor');
}

/** Round lengths of a scale bar: short ones in the small unit, others in the large one. */
const BARS = {
  us: [
    ['in', [1, 2, 6]],
    ['ft', [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 5000]],
  ],
  metric: [
    ['mm', [20, 50, 100, 200, 500]],
    ['m', [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000]],
  ],
} as const;

/** A scale bar of a round length, no longer than `most` pixels where one is short enough. Internal. */
export function scaleBar(
  pixelsPerMetre: number,
  {
    at: [x, y],
    most,
    name = (bar) => bar,
  }: { readonly at: Point; readonly most: number; readonly name?: (bar: string) => string },
  { system, small, width, margin }: DrawStyle,
): string[] {
  const bars = BARS[system].flatMap(([unit, sizes]) => sizes.map((size) => `${size} ${unit}`));
  const long = (bar: string): number => length(bar).toNumber('m') * pixelsPerMetre;
  const bar = [...bars].reverse().find((one) => long(one) <= most) ?? entry(bars, 0);
  const right = x + long(bar);
  const text = fitText(name(bar), small, width - margin - right - 6);
  return [
    line('edge', [x, y], [right, y]),
    line('edge', [x, y - 4], [x, y + 4]),
    line('edge', [right, y - 4], [right, y + 4]),
    textMark({ text, x: right + 6, y: y + small * 0.35, size: small, style: 'scale' }),
  ];
}
