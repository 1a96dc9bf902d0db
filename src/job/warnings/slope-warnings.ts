import { referenceQuantity } from '../../reference-quantity.js';
import type { PavementUse } from '../../sources/minimum-thickness.js';
import { DRIVE_GRADIENTS, SLOPE_LIMITS } from '../../sources/slope-limits.js';
import { fromNumber } from '../../units/construct.js';
import { insideOf } from '../plan/areas/in-dig.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { Slope } from '../../units/quantity.js';
import type { LaidOut } from '../plan/lay-out.js';
import type { PavementPlan, PlanWarning, StringLinePlan } from '../plan/plan.js';
import { slopeFigure, type Place } from './figures.js';
import { finishedMesh, type Facet } from './finish-mesh.js';
import { warning } from './warning.js';

interface SteepestSlope {
  readonly most: Slope;
  /** What the limit is published for. */
  readonly purpose: string;
}

/**
 * The steepest slope for a use: of an accessible route where people walk, of a private drive where cars
 * go; null for parking and streets, of which no limit was read. Sources: `route-slope`, `nhbc-drives`.
 */
function steepestFor(use: PavementUse): SteepestSlope | null {
  const route = SLOPE_LIMITS['accessible-route'].maximum;
  const drive = DRIVE_GRADIENTS.maximum;
  if (use === 'pedestrian' && route !== undefined) {
    return { most: referenceQuantity('slope', route), purpose: 'an accessible route' };
  }
  if (use !== 'residential-driveway') return null;
  return { most: referenceQuantity('slope', drive), purpose: 'a private drive' };
}

/** Levels of a surface are rounded: over some metres that is so much slope. */
const ROUNDING = 5e-4;

/** Finished grade that is steeper than its use allows, by fixed levels or finished levels. Internal. */
export function steepSurfaces(
  { pavement }: LaidOut,
  { name, use, grade }: PavementPlan,
): PlanWarning[] {
  const limit = steepestFor(use);
  if (limit === null) return [];
  const { most } = limit;
  if (pavement.finishedLevels !== undefined) {
    const steepest = steepestIn(pavement, most.toNumber('ratio'));
    if (steepest === null) return [];
    return [warning('SLOPE_TOO_STEEP', name, { slope: slopeFigure(steepest), ...limit })];
  }
  if (grade === null || grade.steepest.compare(most) <= 0) return [];
  return [warning('SLOPE_TOO_STEEP', name, { slope: grade.steepest, ...limit })];
}

/** Spans of a string that are steeper than the use of its pavement allows. Internal. */
export function steepSpans(
  line: StringLinePlan,
  { use }: Pick<PavementPlan, 'use'>,
): PlanWarning[] {
  const limit = steepestFor(use);
  if (limit === null) return [];
  const { most } = limit;
  return line.slopes
    .filter(({ slope }) => slope.abs().compare(most) > 0)
    .map(({ from, to, slope }) =>
      warning('SLOPE_TOO_STEEP', `string ${line.id}, ${from} to ${to}`, {
        slope: slope.abs(),
        ...limit,
      }),
    );
}

/** The steepest triangle of levels in the paving; null where none is steeper than a limit. */
function steepestIn(pavement: Pavement, most: number): number | null {
  const { outline } = pavement;
  const steep = (finishedMesh(pavement)?.facets ?? [])
    .map((facet) => ({ facet, slope: Math.hypot(facet.gradeX, facet.gradeY) }))
    .filter(({ slope }) => slope > most + ROUNDING)
    .sort((a, b) => b.slope - a.slope);
  if (steep.length === 0) return null;
  const isInside = insideOf(outline);
  const { x, y } = outline.origin;
  const found = steep.find(({ facet: { corners } }) =>
    middlesOf(corners).some((place) =>
      isInside({ x: x.plus(fromNumber(place.x, 'm')), y: y.plus(fromNumber(place.y, 'm')) }),
    ),
  );
  return found?.slope ?? null;
}

/** The middle of a triangle, and of its thirds toward the corners. */
function middlesOf(corners: Facet['corners']): Place[] {
  const [a, b, c] = corners;
  const middle = { x: (a.x + b.x + c.x) / 3, y: (a.y + b.y + c.y) / 3 };
  return [
    middle,
    ...corners.map(({ x, y }) => ({ x: (2 * x + middle.x) / 3, y: (2 * y + middle.y) / 3 })),
  ];
}
