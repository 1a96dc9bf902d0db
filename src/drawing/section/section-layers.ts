import { known } from '../../invariant.js';
import { hatched } from '../frame/hatches.js';
import { line, polyline, rectangle, type Point } from '../svg/shapes.js';
import type { LayerMark } from '../surface-rows.js';
import type { SectionFigures } from './section-figures.js';
import type { SectionFrame } from './section-frame.js';

/** The layers, their lifts and the edge restraint. Internal. */
export function sectionLayerMarks(figures: SectionFigures, frame: SectionFrame): string[] {
  return [
    ...figures.layers.map((layer) => layerMark(layer, { figures, frame })),
    ...figures.lifts.map((depth) =>
      line(
        'lift',
        [frame.x(reachAt(depth, figures)), frame.y(depth)],
        [frame.right, frame.y(depth)],
      ),
    ),
    ...restraintMarks(figures, frame),
    line('finish', [frame.edge, frame.y(figures.finish)], [frame.right, frame.y(figures.finish)]),
    breakLine(figures, frame),
  ];
}

const isStone = ({ layer }: LayerMark): boolean => layer === 'base' || layer === 'sub-base';

function layerMark(
  layer: LayerMark,
  { figures, frame }: { readonly figures: SectionFigures; readonly frame: SectionFrame },
): string {
  const { top, bottom, hatch } = layer;
  const [high, low] = isStone(layer) ? [reachAt(top, figures), reachAt(bottom, figures)] : [0, 0];
  const corners: Point[] = [
    [frame.x(high), frame.y(top)],
    [frame.right, frame.y(top)],
    [frame.right, frame.y(bottom)],
    [frame.x(low), frame.y(bottom)],
  ];
  return hatched('area', corners, hatch);
}

/** How far stone reaches beyond the paving at a depth: all of it, or along its taper. */
function reachAt(
  depth: number,
  { edge, restraint, isTapered, layers, subgrade }: SectionFigures,
): number {
  const base = edge.base.toNumber('m');
  const top = known(layers.find(isStone), 'stone').top;
  if (!isTapered || subgrade <= top) return base;
  return restraint + ((base - restraint) * (depth - top)) / (subgrade - top);
}

/** The edge restraint on the base, a little below finished grade. */
function restraintMarks(
  { restraint, finish, layers }: SectionFigures,
  frame: SectionFrame,
): string[] {
  const [paver] = layers;
  const foot = layers.find(isStone)?.top ?? paver?.bottom;
  if (restraint <= 0 || paver === undefined || foot === undefined) return [];
  const y = frame.y(finish + (paver.bottom - paver.top) / 4);
  const x = frame.x(restraint);
  return [rectangle('stake', { x, y, width: frame.edge - x, height: frame.y(foot) - y })];
}

/** Where the picture breaks off inside the paving. */
function breakLine(
  { finish, subgrade }: SectionFigures,
  { right, y, top, bottom }: SectionFrame,
): string {
  const middle = (y(finish) + y(subgrade)) / 2;
  const from = Math.min(y(0), top);
  return polyline('dimension', [
    [right, from],
    [right, middle - 10],
    [right - 5, middle - 4],
    [right + 5, middle + 4],
    [right, middle + 10],
    [right, bottom + 20],
  ]);
}
