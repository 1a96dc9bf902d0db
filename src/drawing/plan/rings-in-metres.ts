import { entry, lastOf } from '../../invariant.js';
import { chordsOf, isOutwardRight } from '../../outline/chords.js';
import { ringsOf, type Outline, type Ring } from '../../outline/ring.js';
import type { PlanPoint } from '../../units/vector.js';
import { roughNumber } from '../../units/ratio.js';

/** A place in plan: x and y [m]. Internal. */
export type Place = readonly [x: number, y: number];

/** A point of a job in metres. Internal. */
export const inMetres = ({ x, y }: PlanPoint): Place => [x.toNumber('m'), y.toNumber('m')];

/** An edge of a ring. Internal. */
export interface EdgeInMetres {
  /** From its first corner to the next, chords for an arc. */
  readonly points: readonly Place[];
  readonly isArc: boolean;
  /** The direction away from the figure in the middle of the edge, of length 1. */
  readonly outward: Place;
}

/** A ring in metres. Internal. */
export interface RingInMetres {
  readonly corners: readonly Place[];
  readonly edges: readonly EdgeInMetres[];
  /** The whole line, chords for its arcs. */
  readonly points: readonly Place[];
}

/** Angle of a chord: at 400 pixels of radius it is off by a fifth of a pixel. */
const STEP = 0.06;

/** The rings of an outline in metres: the outer one, then its holes. Internal. */
export const ringsInMetres = (outline: Outline): RingInMetres[] =>
  ringsOf(outline).map((ring, index) => ringFrom(ring, outline, index > 0));

function ringFrom(ring: Ring, { origin }: Outline, isHole: boolean): RingInMetres {
  const [x0, y0] = inMetres(origin);
  const { points, edgeOf } = chordsOf(ring, isHole, STEP);
  const places = points.map(({ x, y }): Place => [x0 + roughNumber(x), y0 + roughNumber(y)]);
  const isRight = isOutwardRight(ring, isHole);
  const closed = [...places, ...places.slice(0, 1)];
  const edges = ring.points.map((_, edge): EdgeInMetres => {
    const line = closed.slice(edgeOf.indexOf(edge), edgeOf.lastIndexOf(edge) + 2);
    return {
      points: line,
      isArc: ring.bulges?.[edge] !== undefined,
      outward: outwardOf(line, isRight),
    };
  });
  return { corners: edges.flatMap((edge) => edge.points.slice(0, 1)), edges, points: places };
}

/** Square to the chord from end to end. */
function outwardOf(line: readonly Place[], isRight: boolean): Place {
  const [a, b] = [entry(line, 0), lastOf(line)];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = Math.sqrt(dx * dx + dy * dy);
  if (long === 0) return [0, -1];
  return isRight ? [dy / long, -dx / long] : [-dy / long, dx / long];
}

/** The place halfway along a line. Internal. */
export function middleOf(line: readonly Place[]): Place {
  const before = entry(line, Math.floor((line.length - 1) / 2));
  const after = entry(line, Math.ceil((line.length - 1) / 2));
  return [(before[0] + after[0]) / 2, (before[1] + after[1]) / 2];
}
