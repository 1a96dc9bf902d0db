import type { FieldPath } from '../../errors.js';
import { excavationGates } from '../../site/excavation/excavation-gates.js';
import type { DrawnHandDig } from '../../site/utilities/across-drawn-dig.js';
import { handDig } from '../../site/utilities/hand-dig.js';
import { rootZone, type RootZone } from '../../site/trees/root-zone.js';
import { utilityCover } from '../../site/utilities/utility-cover.js';
import { max } from '../../units/aggregate.js';
import type { Length } from '../../units/quantity.js';
import { NO_AREA } from '../../units/zero.js';
import type { Step, Worked } from '../../working.js';
import type { DigPlan, DigRing, EarthworkPlan, NearbyPlan, TreePlan, UtilityPlan } from './plan.js';
import { inField } from '../read/in-field.js';
import { withoutGaps } from './without-gaps.js';
import type { ReadJob } from '../schema/job-shape.js';

/** The dig of a pavement, as lines, trees and rules see it. Internal. */
export interface NearbyBasis {
  readonly rings: { readonly outer: DigRing; readonly holes: readonly DigRing[] };
  readonly dig: DigPlan;
  readonly measured: readonly Length[];
  readonly earthwork: EarthworkPlan | null;
}

/** What lies near a dig, and the working behind it. Internal. */
export interface PlannedNearby {
  readonly plan: NearbyPlan;
  readonly steps: () => readonly Step[];
}

const NONE: PlannedNearby = {
  plan: { utilities: [], handDig: null, trees: [], gates: null },
  steps: () => [],
};

/** Marked lines, trees and the rules of open digs near the dig of a pavement. Internal. */
export function planNearby(job: ReadJob, basis: NearbyBasis): PlannedNearby {
  const { utilities = [], trees = [], excavation } = job;
  const depth = deepest(basis);
  // nothing is dug where the ground is filled
  if (depth.isNegative() || depth.isZero()) return NONE;
  if (utilities.length + trees.length === 0 && excavation === undefined) return NONE;
  const worked: Worked[] = [];
  const keep = <T extends Worked>(result: T): T => {
    worked.push(result);
    return result;
  };
  const { outer, holes } = basis.rings;
  const outline = { ...outer, holes };
  const byHand = utilities.length === 0 ? null : keep(handDigFor(utilities, outline, depth));
  const plan: NearbyPlan = {
    utilities: utilities.map((line, index): UtilityPlan => {
      const cover = coverOf(line, depth, index);
      return {
        id: line.id,
        handDigArea: byHand?.zones.find((zone) => zone.id === line.id)?.area ?? NO_AREA,
        cover: cover && keep(cover),
      };
    }),
    handDig: byHand,
    trees: trees.map((tree, index): TreePlan => {
      const zone = inField(
        () => zoneOf(tree, outline),
        (path) => ['trees', index, ...treePath(path)],
      );
      return { id: tree.id, zone: keep(zone) };
    }),
    gates:
      excavation === undefined
        ? null
        : keep(
            inField(
              () => excavationGates({ depth, ...withoutGaps(excavation) }),
              (path) => ['excavation', ...path],
            ),
          ),
  };
  return { plan, steps: () => worked.flatMap(({ working }) => working) };
}

type DrawnDig = DigRing & { readonly holes: readonly DigRing[] };

function handDigFor(
  utilities: NonNullable<ReadJob['utilities']>,
  outline: DrawnDig,
  depth: Length,
): DrawnHandDig {
  const lines = utilities.map(({ id, path, width, tolerance }) => ({ id, path, width, tolerance }));
  return inField(
    () => handDig({ outline, depth, lines }),
    ([first, ...rest]) => (first === 'lines' ? ['utilities', ...rest] : ['utilities']),
  );
}

type Line = NonNullable<ReadJob['utilities']>[number];

/** Cover left over a line; null where it was not found, or its owner names no least cover. */
function coverOf(
  { found, leastCover }: Line,
  depth: Length,
  index: number,
): ReturnType<typeof utilityCover> | null {
  if (found === undefined || leastCover === undefined) return null;
  return inField(
    () => utilityCover({ found, dig: depth, minimumCover: leastCover }),
    ([first]) => [
      'utilities',
      index,
      ...(first === 'minimumCover' ? ['leastCover'] : [first ?? 'found']),
    ],
  );
}

type Tree = NonNullable<ReadJob['trees']>[number];

function zoneOf(
  { x, y, trunkDiameter, radiusPerDiameter, leastRadius }: Tree,
  outline: DrawnDig,
): RootZone {
  const rule = {
    radiusPerDiameter: radiusPerDiameter.toString(),
    ...withoutGaps({ minimumRadius: leastRadius }),
  };
  return rootZone({ trunkDiameter, rule, dig: { outline, trunk: { x, y } } });
}

/** Where a fault of the root zone stands in a tree of the job. */
const treePath = (path: FieldPath): FieldPath => {
  const last = path.at(-1);
  if (path[0] === 'dig') return last === 'x' || last === 'y' ? [last] : [];
  return last === 'minimumRadius' ? ['leastRadius'] : path.slice(-1);
};

/** The deepest dig that is known: lines and rules go by it, not by the mean. */
const deepest = ({ dig, measured, earthwork }: NearbyBasis): Length =>
  max([dig.depth, ...measured, ...(earthwork?.deepestCut ? [earthwork.deepestCut.depth] : [])]);
