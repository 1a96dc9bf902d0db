import { SOIL } from '../frame/grain-hatches.js';
import { FILL, hatched, OLD_PAVING } from '../frame/hatches.js';
import { line, polyline, rectangle, type Point } from '../svg/shapes.js';
import type { SectionFigures } from './section-figures.js';
import type { SectionFrame } from './section-frame.js';

/** Depth of ground drawn below the lowest surface, in pixels. Internal. */
export const UNDER = 26;

/** The ground, the dig and what is stripped. Internal. */
export function groundMarks(figures: SectionFigures, frame: SectionFrame): string[] {
  const { left, right } = frame;
  const low = frame.bottom + UNDER;
  const under = frame.y(figures.needsFill ? groundOf(figures) : figures.subgrade);
  const side: Point[] = figures.isBounded ? [[left, under]] : digSide(figures, frame);
  const soil: Point[] = [
    [left, side[0]?.[1] ?? under],
    ...side,
    [right, under],
    [right, low],
    [left, low],
  ];
  return [
    hatched('bare', soil, SOIL),
    ...(figures.isBounded ? boundaryMarks(figures, frame) : pavingMarks(figures, frame)),
    ...fillMarks(figures, frame),
  ];
}

/** The ground once it is stripped. */
const groundOf = ({ stripped, old }: SectionFigures): number => stripped?.soil.from ?? old;

/** What stands at the edge already: the picture does not know what it looks like. */
function boundaryMarks({ finish, subgrade }: SectionFigures, frame: SectionFrame): string[] {
  const { left, edge, y } = frame;
  const box = { x: left, y: y(finish), width: edge - left, height: y(subgrade) - y(finish) };
  return [rectangle('stake', box)];
}

/** From the existing surface down the side of the dig; where fill is needed the ground stays as it is. */
function digSide(figures: SectionFigures, frame: SectionFrame): [Point, ...Point[]] {
  const { edge, old, subgrade } = figures;
  const y = frame.y(old);
  if (old >= subgrade)
    return [
      [frame.x(edge.dig.toNumber('m')), y],
      [frame.right, y],
    ];
  return [
    [frame.x(edge.top.toNumber('m')), y],
    [frame.x(edge.dig.toNumber('m')), frame.y(subgrade)],
  ];
}

/** Old paving that stays beside the dig. */
function pavingMarks({ stripped, edge }: SectionFigures, frame: SectionFrame): string[] {
  if (stripped === null) return [];
  const [from, to] = [frame.y(stripped.paving.from), frame.y(stripped.paving.to)];
  const x = frame.x(edge.top.toNumber('m'));
  const corners: Point[] = [
    [frame.left, from],
    [x, from],
    [x, to],
    [frame.left, to],
  ];
  return [hatched('area', corners, OLD_PAVING)];
}

/** What is filled up to the subgrade. */
function fillMarks(figures: SectionFigures, frame: SectionFrame): string[] {
  const ground = groundOf(figures);
  if (!figures.needsFill) return [];
  const x = frame.x(figures.edge.dig.toNumber('m'));
  const [from, to] = [frame.y(figures.subgrade), frame.y(ground)];
  const corners: Point[] = [
    [x, from],
    [frame.right, from],
    [frame.right, to],
    [x, to],
  ];
  return [hatched('area', corners, FILL)];
}

/** The existing surface across the picture, and the edge of the dig. Internal. */
export function digMarks(figures: SectionFigures, frame: SectionFrame): string[] {
  const y = frame.y(figures.old);
  const side = digSide(figures, frame);
  return [
    line('old', [figures.isBounded ? frame.edge : frame.left, y], [frame.right, y]),
    ...(figures.old >= figures.subgrade
      ? []
      : [polyline('dig', [...side, [frame.right, frame.y(figures.subgrade)]])]),
  ];
}
