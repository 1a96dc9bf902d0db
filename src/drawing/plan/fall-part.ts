import { slopeText } from '../../job/sheet/words/in-words.js';
import type { Slope } from '../../units/quantity.js';
import { textWidth } from '../svg/text-width.js';
import { arrow } from '../frame/arrow.js';
import { along } from '../frame/box.js';
import type { Point } from '../svg/shapes.js';
import { innerPoint, isInRings } from './inner-point.js';
import { ringInView } from './outline-part.js';
import { joined, type PlanPart, type PlanPen } from './parts.js';
import type { PlanScene, ScenePavement } from './plan-scene.js';
import { inMetres, type Place } from './rings-in-metres.js';

const LONG = 46;
const BESIDE = 12;
const INSIDE = 26;
const FARTHEST = 160;
const STEP = 4;
const LEAST_DEEP = 12;

type Rings = readonly (readonly Point[])[];

/** A slope from one place to another; down where it is negative. */
type Fall = readonly [from: Place | undefined, to: Place | undefined, slope: Slope];

/** Arrows down the fall of a pavement: by its grade, else between the stakes of its strings. Internal. */
export function fallPart(pavement: ScenePavement, scene: PlanScene, pen: PlanPen): PlanPart {
  const { grade, id, name } = pavement.plan;
  const rings = pavement.paving.map((ring) => ringInView(ring, pen));
  const downhill = grade?.downhillAzimuth?.toNumber('rad');
  if (grade !== null && downhill !== undefined) {
    const at = clearOfName(name, rings, pen);
    return fallArrow(at, [Math.sin(downhill), -Math.cos(downhill)], grade.steepest, pen);
  }
  const falls =
    grade?.kind === 'line'
      ? between(
          grade.levels.map(inMetres),
          grade.stretches.map((one) => one.grade),
        )
      : stringFalls(id, scene);
  return joined(falls.map((fall) => besideFall(fall, rings, pen)));
}

/** The slopes from each place to the next. */
const between = (places: readonly (Place | undefined)[], slopes: readonly Slope[]): Fall[] =>
  slopes.map((slope, index) => [places[index], places[index + 1], slope]);

/** One arrow, its middle at a point, down a direction of length 1. */
function fallArrow(at: Point, [dx, dy]: Point, fall: Slope, { style }: PlanPen): PlanPart {
  const [x, y] = [(dx * LONG) / 2, (dy * LONG) / 2];
  const text = style.label('fall-percent', { fall: slopeText(fall.abs()) });
  const [wide, high] = [Math.abs(x) + 2, Math.abs(y) + 2];
  return {
    marks: arrow('fall', [at[0] - x, at[1] - y], [at[0] + x, at[1] + y]),
    labels: [{ text, at, toward: Math.PI / 2, rank: 5 }],
    taken: [{ x: at[0] - wide, y: at[1] - high, width: 2 * wide, height: 2 * high }],
  };
}

/** Clear of the name of the pavement, which stands in its middle. */
function clearOfName(name: string, rings: Rings, { style }: PlanPen): Point {
  const [x, y] = innerPoint(rings);
  const half = textWidth(name, style.size) / 3;
  return innerPoint(rings, [
    [x, y],
    [x - half, y],
    [x + half, y],
  ]);
}

/** Along the strings of a pavement: one for a string that falls alike all along. */
function stringFalls(pavement: string, { stringLines, stakes }: PlanScene): Fall[] {
  const own = stringLines.filter((one) => one.pavement === pavement);
  return own.flatMap(({ slopes: all, stakes: row }): Fall[] => {
    const places = row.map(({ id }) => stakes.get(id));
    const slopes = all.map(({ slope }) => slope);
    if (slopes.length !== row.length - 1) return [];
    return new Set(slopes.map(slopeText)).size === 1
      ? between([places[0], places.at(-1)], slopes.slice(0, 1))
      : between(places, slopes);
  });
}

/** An arrow beside the middle between two places; none where it is level. */
function besideFall([from, to, slope]: Fall, rings: Rings, pen: PlanPen): PlanPart {
  if (from === undefined || to === undefined || slope.isZero()) return {};
  const [a, b] = [pen.view.to(from), pen.view.to(to)];
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]) * (slope.isNegative() ? 1 : -1);
  if (Math.abs(long) < LONG) return {};
  const way: Point = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  return fallArrow(besideString(along(a, b, 0.5), way, rings), way, slope, pen);
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
