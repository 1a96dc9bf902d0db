import { contains } from '../../outline/contains.js';
// a drawn dig is an outline
import type { Outline } from '../../outline/read-outline.js';
import { forEachEdge } from '../../outline/ring.js';
import { Decimal40 } from '../../units/decimal.js';
import { fromSI, type Length } from '../../units/quantity.js';
import {
  divideRatios,
  multiplyRatios,
  signOfRatio,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import { squareRoot } from '../../units/root.js';
import {
  between,
  cross,
  dot,
  minus,
  norm,
  squared,
  type PlanPoint,
  type Vector,
} from '../../units/vector.js';
import { NO_LENGTH } from '../../units/zero.js';
import { given, procedureStep } from '../../working.js';
import { floatsOf, ringsOfDig } from '../drawn-dig.js';
import { circleInRing } from '../../geometry/ring/circle-in-ring.js';
import type { DigAtTree } from './dig-at-tree.js';

/** A drawn dig beside a tree. Internal. */
export function drawnDigAtTree(dig: Outline, trunk: PlanPoint): DigAtTree {
  return {
    cut: (radius) => {
      const middle = between(dig.origin, trunk);
      const seen = ringsOfDig(dig).map((ring) => ring.map((point) => minus(point, middle)));
      const share = shareInDig(seen, radius.toNumber('m'));
      return { distance: distanceToDig(seen), share: new Decimal40(share) };
    },
    steps: (radius, area) => [
      procedureStep({
        title: 'Root zone that the dig cuts',
        procedure: 'rootZone',
        method:
          'Cuts the circle of radius R about the trunk along the edges of the dig, and returns the area of the part in the dig.',
        given: [given('R', 'radius', radius)],
        result: given('A', 'area cut', area),
        source: 'derived',
      }),
    ],
  };
}

/** The rings of a dig relative to the trunk, the outer one first. */
type SeenRings = readonly (readonly Vector[])[];

/**
 * Share of the circle in the dig, rounded to 1e-12, the accuracy of the floats; 0 if the dig is
 * outside the zone.
 */
function shareInDig(seen: SeenRings, radius: number): number {
  const [outer = 0, ...holes] = seen.map((ring) => circleInRing(floatsOf(ring), radius));
  const area = holes.reduce((rest, hole) => rest - hole, outer);
  return Math.round((area / (Math.PI * radius * radius)) * 1e12) / 1e12 + 0;
}

const TRUNK: Vector = Object.freeze({ x: ZERO_RATIO, y: ZERO_RATIO });

/** Distance from the middle of the trunk to the dig; 0 if the dig runs under it. */
function distanceToDig(seen: SeenRings): Length {
  const [outer = [], ...holes] = seen;
  const isUnder = contains(outer, TRUNK) && !holes.some((hole) => contains(hole, TRUNK));
  if (isUnder) return NO_LENGTH;
  const { a, b } = nearestEdge(seen);
  return fromSI('length', distanceToEdge(a, b));
}

/** Floats find the nearest edge; its distance is then worked out exactly. */
function nearestEdge(seen: SeenRings): { readonly a: Vector; readonly b: Vector } {
  let nearest = { a: TRUNK, b: TRUNK, distance: Infinity };
  for (const ring of seen) {
    forEachEdge(ring, (a, b) => {
      const distance = floatDistance(a, b);
      if (distance < nearest.distance) nearest = { a, b, distance };
    });
  }
  return nearest;
}

function floatDistance(a: Vector, b: Vector): number {
  const [ax = 0, ay = 0, bx = 0, by = 0] = floatsOf([a, b]);
  const [dx, dy] = [bx - ax, by - ay];
  const share = Math.min(1, Math.max(0, -(ax * dx + ay * dy) / (dx * dx + dy * dy)));
  return Math.hypot(ax + share * dx, ay + share * dy);
}

/**
 * Distance from the origin to an edge: to its line if the foot is on the edge, else to its nearer
 * end.
 */
function distanceToEdge(a: Vector, b: Vector): Ratio {
  const along = minus(b, a);
  if (signOfRatio(dot(a, along)) >= 0) return norm(a);
  if (signOfRatio(dot(b, along)) <= 0) return norm(b);
  const off = cross(a, along);
  return squareRoot(divideRatios(multiplyRatios(off, off), squared(along)));
}
