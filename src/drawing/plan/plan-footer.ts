import type { DrawStyle } from '../draw-options.js';
import { arrow } from '../frame/arrow.js';
import { scaleBar } from '../frame/scale.js';
import { textMark } from '../frame/text-label.js';
import type { Point } from '../svg/shapes.js';
import type { PlanView } from './plan-view.js';

const LONG = 30;
const HIGH = 48;

/** Below a plan: the axes of the job and a scale bar. Internal. */
export function planFooter(
  { pixelsPerMetre, bottom }: PlanView,
  style: DrawStyle,
): { readonly marks: readonly string[]; readonly bottom: number } {
  const { margin, small, label, width } = style;
  const corner: Point = [margin + 6, bottom + HIGH - 8];
  const bar = scaleBar(
    pixelsPerMetre,
    { at: [margin + 100, corner[1]], most: (width - 2 * margin) / 3 },
    style,
  );
  const [x, y] = corner;
  return {
    marks: [
      ...arrow('edge', corner, [x + LONG, y]),
      ...arrow('edge', corner, [x, y - LONG]),
      textMark({ text: label('axis-x'), x: x + LONG + 6, y: y + 5, size: small }),
      textMark({ text: label('axis-y'), x: x + 8, y: y - LONG + 8, size: small }),
      ...bar,
    ],
    bottom: bottom + HIGH,
  };
}
