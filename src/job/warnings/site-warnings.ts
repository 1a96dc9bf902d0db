import { unitSuitability } from '../../materials/pavers/unit-suitability.js';
import { sum } from '../../units/aggregate.js';
import { length } from '../../units/construct.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { PavementPlan, PlanWarning, UtilityPlan } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { paverOf } from '../plan/materials.js';
import { warning } from './warning.js';

/**
 * A line this near below the bottom of a dig is within reach of bucket teeth and of the plate. Common
 * practice, no source; the minimum cover of its owner counts instead where it is given.
 */
const JUST_BELOW = /* #__PURE__ */ length(150, 'mm');

/** What lines and trees near a dig tell. Internal. */
export function nearbyWarnings(job: ReadJob, { name, nearby }: PavementPlan): PlanWarning[] {
  const lines = nearby.utilities.flatMap((line) =>
    line.handDigArea.isZero()
      ? []
      : [
          warning('UTILITY_IN_DIG', name, { line: line.id, area: line.handDigArea }),
          ...coverWarnings(job, name, line),
        ],
  );
  const trees = nearby.trees.flatMap(({ id, zone: { cut } }) => {
    if (cut === null || cut.area.isZero()) return [];
    const share = `${(cut.share * 100).toPrecision(2)}%`;
    return [warning('ROOTS_CUT', name, { tree: id, reach: cut.distance, share })];
  });
  return [...lines, ...trees];
}

/** A line that was found above, in or just below the bottom of the dig. */
function coverWarnings(
  { utilities = [] }: ReadJob,
  name: string,
  { id, left }: UtilityPlan,
): PlanWarning[] {
  if (left === null) return [];
  if (left.isNegative()) {
    return [warning('UTILITY_ABOVE_BOTTOM', name, { line: id, above: left.abs() })];
  }
  const least = utilities.find((line) => line.id === id)?.minimumCover ?? JUST_BELOW;
  if (left.compare(least) >= 0) return [];
  return [warning('UTILITY_COVER', name, { line: id, cover: left, least })];
}

/** Pavers whose shape does not suit the use. Internal. */
export function shapeWarnings(
  { materials }: ReadJob,
  pavement: Pavement,
  name: string,
): PlanWarning[] {
  const paver = paverOf(materials, pavement);
  if (paver === null) return [];
  const long = paver.length.compare(paver.width) >= 0 ? paver.length : paver.width;
  const thickness = sum(
    pavement.layers.filter(({ kind }) => kind === 'paver').map((layer) => layer.thickness),
  );
  return unitSuitability({ length: long, thickness, use: pavement.use })
    .findings.filter(({ verdict }) => verdict === 'fail')
    .map(({ note }) => warning('UNIT_SHAPE', name, { text: note }));
}
