import type { PlanPoint } from 'settline';

const MARGIN = 16;
const TALLEST = 300;

/** Draws straight outlines from above, the first as paving, the others as lines round it. */
export function drawOutlines(outlines: readonly (readonly PlanPoint[])[], width: number): string {
  const rings = outlines.map((ring) =>
    ring.map(({ x, y }): readonly [number, number] => [x.toNumber('m'), y.toNumber('m')]),
  );
  const xs = rings.flat().map(([x]) => x);
  const ys = rings.flat().map(([, y]) => y);
  const [left, bottom] = [Math.min(...xs), Math.min(...ys)];
  const across = Math.max(...xs) - left;
  const up = Math.max(...ys) - bottom;
  const scale = Math.min((width - 2 * MARGIN) / across, (TALLEST - 2 * MARGIN) / up);
  const height = up * scale + 2 * MARGIN;
  const place = ([x, y]: readonly [number, number]): string =>
    `${(MARGIN + (x - left) * scale).toFixed(2)},${(height - MARGIN - (y - bottom) * scale).toFixed(2)}`;
  const shapes = rings.map(
    (ring, index) =>
      `<polygon class="${index === 0 ? 'paving' : 'dig-line'}" points="${ring.map(place).join(' ')}"/>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" class="outlines" role="img" viewBox="0 0 ${width} ${height.toFixed(2)}" width="${width}" height="${height.toFixed(2)}"><title>Paving and dig line from above</title>${shapes.join('')}</svg>`;
}
