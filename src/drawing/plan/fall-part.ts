import type { GradePlan, StringLinePlan } from '../../job/plan/plan.js';
import { slopeText } from '../../job/sheet/in-words.js';
import type { Slope } from '../../units/quantity.js';
import { textWidth } from '../svg/text-width.js';
import { arrow } from '../frame/arrow.js';
import type { Point } from '../svg/shapes.js';
import { innerPoint, isInRings } from './inner-point.js';
import { ringInView } from './outline-part.js';
import { joined, NO_PART, type PlanPart, type PlanPen } from './parts.js';
import type { PlanScene, ScenePavement } from './plan-scene.js';
import type { Place } from './rings-in-metres.js';

const LONG = 46;
const BESIDE = 12;
const INSIDE = 26;
const FARTHEST = 160;
const STEP = 4;
const LEAST_DEEP = 12;

type Rings = readonly (readonly Point[])[];

/** Arrows down the fall of a pavement: by its grade, else between the stakes of its strings. Internal. */
export function fallPart(pavement: ScenePavement, scene: PlanScene, pen: PlanPen): PlanPart {
  const { grade, id } = pavement.plan;
  if (grade !== null && grade.downhillAzimuth !== null) return planeFall(pavement, grade, pen);
  const rings = pavement.paving.map((ring) => ringInView(ring, pen));
  if (grade?.kind === 'line') return lineFalls(grade, rings, pen);
  const own = scene.plan.stringLines.filter((one) => one.pavement === id);
  return joined(own.map((one) => stringFalls(one, scene, { rings, pen })));
}

/** One arrow, its middle at a point, down a direction of length 1. */
function fallArrow(at: Point, [dx, dy]: Point, fall: Slope, { style }: PlanPen): PlanPart {
  const from: Point = [at[0] - (dx * LONG) / 2, at[1] - (dy * LONG) / 2];
  const to: Point = [at[0] + (dx * LONG) / 2, at[1] + (dy * LONG) / 2];
  const text = style.label('fall-percent', { fall: slopeText(fall.abs()) });
  return {
    marks: arrow('fall', from, to),
    labels: [{ text, size: style.small, at, clearance: 5, toward: Math.PI / 2, rank: 5 }],
    taken: [
      {
        x: Math.min(from[0], to[0]) - 2,
        y: Math.min(from[1], to[1]) - 2,
        width: Math.abs(to[0] - from[0]) + 4,
        height: Math.abs(to[1] - from[1]) + 4,
      },
    ],
  };
}

/** Clear of the name of the pavement, which stands in its middle. */
function planeFall({ paving, plan }: ScenePavement, grade: GradePlan, pen: PlanPen): PlanPart {
  const turn = grade.downhillAzimuth?.toNumber('rad') ?? 0;
  const rings = paving.map((ring) => ringInView(ring, pen));
  const name = innerPoint(rings);
  const half = textWidth(plan.name, pen.style.size) / 3;
  const near = [name, [name[0] - half, name[1]], [name[0] + half, name[1]]] as const;
  return fallArrow(innerPoint(rings, near), [Math.sin(turn), -Math.cos(turn)], grade.steepest, pen);
}

function lineFalls({ levels, stretches }: GradePlan, rings: Rings, pen: PlanPen): PlanPart {
  const places = levels.map(({ x, y }): Place => [x.toNumber('m'), y.toNumber('m')]);
  return joined(
    stretches.map(({ grade }, index) =>
      between(places[index], places[index + 1], { slope: grade, pen, rings }),
    ),
  );
}

/** One arrow for a string that falls alike all along. */
function stringFalls(
  { slopes, stakes }: StringLinePlan,
  scene: PlanScene,
  { rings, pen }: { readonly rings: Rings; readonly pen: PlanPen },
): PlanPart {
  const places = stakes.map(({ id }) => scene.stakes.get(id));
  const drawn = (from: number, to: number, slope: Slope) =>
    between(places[from], places[to], { slope, pen, rings });
  const [first] = slopes;
  if (first === undefined || slopes.length !== stakes.length - 1) return NO_PART;
  const texts = new Set(slopes.map(({ slope }) => slopeText(slope)));
  if (texts.size === 1) return drawn(0, stakes.length - 1, first.slope);
  return joined(slopes.map(({ slope }, index) => drawn(index, index + 1, slope)));
}

/** An arrow beside the middle between two places; none where it is level. */
function between(
  a: Place | undefined,
  b: Place | undefined,
  { slope, pen, rings }: { readonly slope: Slope; readonly pen: PlanPen; readonly rings: Rings },
): PlanPart {
  if (a === undefined || b === undefined || slope.isZero()) return NO_PART;
  const [from, to] = slope.isNegative()
    ? [pen.view.to(a), pen.view.to(b)]
    : [pen.view.to(b), pen.view.to(a)];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = Math.hypot(dx, dy);
  if (long < LONG) return NO_PART;
  const way: Point = [dx / long, dy / long];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return fallArrow(besideString(middle, way, rings), way, slope, pen);
}

/** Square to a line, just inside the paving that it serves; beside the line where that is far off. */
function besideString([x, y]: Point, [dx, dy]: Point, rings: Rings): Point {
  const at = (off: number): Point => [x - dy * off, y + dx * off];
  for (let off = 0; off <= FARTHEST; off += STEP) {
    for (const side of [1, -1]) {
      let deep = 0;
      while (deep < 2 * INSIDE && isInRings(rings, at(side * (off + deep + STEP)))) deep += STEP;
      if (deep >= LEAST_DEEP) return at(side * (off + (deep + STEP) / 2));
    }
  }
  return at(BESIDE);
}
