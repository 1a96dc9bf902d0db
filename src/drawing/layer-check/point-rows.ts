import type { DrawStyle } from '../draw-options.js';
import { textMark } from '../frame/text-label.js';
import { element } from '../svg/element.js';
import { line, polygon, rectangle } from '../svg/shapes.js';
import { STRONG, wrapText } from '../svg/text-width.js';
import type { CheckedPoint } from './checked-points.js';

/** The scale of all rows: numbers across the picture. Internal. */
export interface RowScale {
  readonly left: number;
  readonly right: number;
  readonly to: (at: number) => number;
}

const MARK = 7;
const ROOM = 20;
const GAP = 10;

/** One scale for all points, with room at both sides of the farthest. Internal. */
export function rowScale(points: readonly CheckedPoint[], style: DrawStyle): RowScale {
  const { margin, width, isNarrow } = style;
  const left = isNarrow ? margin + ROOM : width * 0.54;
  const right = width - margin - ROOM;
  const all = points.flatMap(({ at, minimum, maximum }) => [at, minimum ?? at, maximum ?? at]);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const range = most - least;
  return {
    left: left - ROOM / 2,
    right: right + ROOM / 2,
    to: (at) => (range === 0 ? (left + right) / 2 : left + ((at - least) / range) * (right - left)),
  };
}

/** One row: words on the left, or above on a phone, and the point on its line. Internal. */
export function pointRow(
  point: CheckedPoint,
  top: number,
  {
    scale,
    zero,
    style,
  }: { readonly scale: RowScale; readonly zero: number | null; readonly style: DrawStyle },
): { readonly marks: readonly string[]; readonly bottom: number } {
  const { margin, size, small, width, isNarrow } = style;
  const room = isNarrow ? width - 2 * margin : scale.left - margin - GAP;
  const marks: string[] = [];
  let y = top;
  const write = (text: string, of: { readonly size: number; readonly style?: string }) => {
    const free = of.style === undefined ? room : room / STRONG;
    for (const one of wrapText(text, of.size, free)) {
      y += of.size * 1.3;
      marks.push(textMark({ text: one, x: margin, y, ...of }));
    }
  };
  write(point.words, { size, style: 'strong point' });
  for (const text of point.lines) write(text, { size: small });
  const middle = isNarrow ? y + 16 : Math.max((top + y) / 2 + 3, top + MARK + 3);
  const bottom = Math.max(y, middle + MARK) + GAP;
  return {
    marks: [
      line('leader', [margin, bottom], [width - margin, bottom]),
      ...scaleMarks(point, middle, scale),
      ...(zero === null
        ? []
        : [line('tick', [scale.to(zero), middle - 11], [scale.to(zero), middle + 11])]),
      pointMark(point, [scale.to(point.at), middle]),
      ...marks,
    ],
    bottom,
  };
}

/** The line of a row, and on it what is allowed. */
function scaleMarks({ minimum, maximum }: CheckedPoint, y: number, scale: RowScale): string[] {
  const from = minimum === null ? scale.left : scale.to(minimum);
  const to = maximum === null ? scale.right : scale.to(maximum);
  return [
    line('dimension', [scale.left, y], [scale.right, y]),
    line('allowed', [from, y], [Math.max(to, from + 1), y]),
    ...(minimum === null ? [] : [line('dimension', [from, y - 9], [from, y + 9])]),
    ...(maximum === null ? [] : [line('dimension', [to, y - 9], [to, y + 9])]),
  ];
}

/** A ring passes, a square is too close to tell, a full triangle is out: up where high, down where low. Internal. */
export function pointMark(
  { verdict, isLow }: Pick<CheckedPoint, 'verdict' | 'isLow'>,
  [x, y]: readonly [number, number],
): string {
  if (verdict === 'pass') return element('circle', { class: 'stake', cx: x, cy: y, r: MARK - 1 });
  if (verdict === 'unclear') {
    return rectangle('stake', { x: x - MARK, y: y - MARK, width: 2 * MARK, height: 2 * MARK });
  }
  const tip = isLow ? y + MARK : y - MARK;
  const foot = isLow ? y - MARK : y + MARK;
  return polygon('solid', [
    [x, tip],
    [x - MARK, foot],
    [x + MARK, foot],
  ]);
}
