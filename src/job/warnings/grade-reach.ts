import { chordsOf } from '../../outline/chords.js';
import { roughNumber } from '../../units/ratio.js';
import { pointFrom } from '../../units/vector.js';
import type { LaidOut } from '../plan/lay-out.js';
import type { PlanWarning } from '../plan/plan.js';
import { lengthFigure, placeFigures, placeFrom, type Place } from './figures.js';
import { nearestOnSide } from './finish-mesh.js';
import { warning } from './warning.js';

/** How far a place lies past the levels of a grade, and how far it may, in metres. */
interface Beyond {
  readonly place: Place;
  readonly far: number;
  readonly limit: number;
}

/** Float noise [metres]. */
const NOISE = 1e-6;

/**
 * Corners of the paving where finished grade is extended far past the levels that it is laid through: by
 * more than the levels are apart in that direction, a slip in one of them comes out more than threefold.
 * The fourth corner of a rectangle lies just so far past the other three. Common practice, no source.
 * Internal.
 */
export function reachWarnings({ pavement, grade }: LaidOut): PlanWarning[] {
  if (grade === null) return [];
  const { outline } = pavement;
  const levels = grade.plan.levels.map((level) => placeFrom(outline.origin, level));
  const measure = grade.plan.kind === 'line' ? beyondLine : beyondAll;
  const [farthest] = chordsOf(outline, false)
    .points.filter((point) => grade.surface(pointFrom(outline.origin, point)).extrapolated)
    .map(({ x, y }) => measure(levels, { x: roughNumber(x), y: roughNumber(y) }))
    .filter(({ far, limit }) => far > limit + NOISE)
    .sort((a, b) => b.far - b.limit - (a.far - a.limit));
  if (farthest === undefined) return [];
  const { place, far, limit } = farthest;
  return [
    warning('GRADE_EXTENDED', pavement.name ?? pavement.id, {
      far: lengthFigure(far),
      farLimit: lengthFigure(limit),
      ...placeFigures(outline.origin, place),
    }),
  ];
}

/** Before the first level of a line or beyond its last, against the length of its end. */
function beyondLine(levels: readonly Place[], place: Place): Beyond {
  const ends = [levels.slice(0, 2), levels.slice(-2).reverse()];
  const [nearer] = ends
    .flatMap(([end, next]) => {
      if (end === undefined || next === undefined) return [];
      const [x, y] = [end.x - next.x, end.y - next.y];
      const limit = Math.hypot(x, y);
      return [{ place, far: ((place.x - end.x) * x + (place.y - end.y) * y) / limit, limit }];
    })
    .filter(({ far }) => far > 0)
    .sort((a, b) => a.far - b.far);
  return nearer ?? { place, far: 0, limit: 0 };
}

/** Outside of all levels, against how wide they lie in that direction. */
function beyondAll(levels: readonly Place[], place: Place): Beyond {
  const [nearest] = levels
    .flatMap((a, k) => levels.slice(k + 1).map((b) => nearestOnSide(a, b, place)))
    .map((on) => ({ x: place.x - on.x, y: place.y - on.y }))
    .sort((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
  if (nearest === undefined) return { place, far: 0, limit: 0 };
  const far = Math.hypot(nearest.x, nearest.y);
  const along = levels.map(({ x, y }) => (x * nearest.x + y * nearest.y) / far);
  return { place, far, limit: Math.max(...along) - Math.min(...along) };
}
