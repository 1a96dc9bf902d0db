import { entry, known, present } from '../../invariant.js';
import { excavationGates } from '../../site/excavation/excavation-gates.js';
import type { DrawnHandDig } from '../../site/utilities/across-drawn-dig.js';
import { handDig } from '../../site/utilities/hand-dig.js';
import { rootZone, type RootZone } from '../../site/trees/root-zone.js';
import { utilityCover } from '../../site/utilities/utility-cover.js';
import { max } from '../../units/aggregate.js';
import type { Length } from '../../units/quantity.js';
import type { NearbyWorked } from './working/nearby-steps.js';
import type { DigPlan, DigRing, NearbyPlan, TreePlan, UtilityPlan } from './plan.js';
import { depthAlong } from './earth/depth-along.js';
import { digOutline } from './areas/in-dig.js';
import type { PlanPoint } from '../../units/vector.js';
import { inField } from '../read/in-field.js';
import { withoutGaps } from './without-gaps.js';
import { numberText } from '../read/normal-job.js';
import type { ReadJob } from '../schema/job-shape.js';

/** The dig of a pavement, for checks of lines, trees and rules. Internal. */
export interface NearbyBasis {
  readonly rings: { readonly outer: DigRing; readonly holes: readonly DigRing[] };
  readonly dig: DigPlan;
  readonly measured: readonly Length[];
  /** Deepest dig from spot heights; null if they do not give it. */
  readonly deepest: Length | null;
  /** Depth of dig at a place; null where levels do not reach. */
  readonly depthAt: (place: PlanPoint) => Length | null;
}

/** Lines, trees and rules near a dig, with the working. Internal. */
export interface PlannedNearby {
  readonly plan: NearbyPlan;
  /** Results that carry the working. */
  readonly made: NearbyWorked;
}

const NONE: PlannedNearby = {
  plan: { utilities: [], handDig: null, trees: [], gates: null },
  made: { handDig: null, covers: [], zones: [], gates: null },
};

/** Plans marked lines, trees and excavation rules near the dig of a pavement. Internal. */
export function planNearby(job: ReadJob, basis: NearbyBasis): PlannedNearby {
  const { utilities = [], trees = [], excavation } = job;
  const depth = deepestOf(basis);
  // ground that is filled is not dug
  if (depth.isNegative() || depth.isZero()) return NONE;
  if (utilities.length + trees.length === 0 && excavation === undefined) return NONE;
  const { outer, holes } = basis.rings;
  const outline = { ...outer, holes };
  const byHand = utilities.length === 0 ? null : handDigFor(utilities, outline, depth);
  const covers: (ReturnType<typeof utilityCover> | null)[] = [];
  const zones = trees.map((tree, index) =>
    inField(
      () => zoneOf(tree, outline),
      () => ['trees', index],
    ),
  );
  const gates =
    excavation === undefined
      ? null
      : inField(
          () => excavationGates({ depth, ...withoutGaps(excavation) }),
          (path) => ['excavation', ...path],
        );
  const plan: NearbyPlan = {
    utilities: utilities.map((line): UtilityPlan => {
      const { area: handDigArea } = known(
        present(byHand, 'hand dig').zones.find((zone) => zone.id === line.id),
        'zone',
      );
      const isNear = line.found !== undefined && !handDigArea.isZero();
      const dug = isNear ? depthAlong(line.path, digOutline(basis.rings), basis) : null;
      const cover = dug === null ? null : coverOf(line, dug);
      covers.push(cover);
      return {
        id: line.id,
        handDigArea,
        left: dug === null ? null : known(line.found, 'depth of a line').minus(dug),
        cover,
      };
    }),
    handDig: byHand,
    trees: trees.map(({ id }, index): TreePlan => ({ id, zone: entry(zones, index) })),
    gates,
  };
  return { plan, made: { handDig: byHand, covers, zones, gates } };
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

/** Cover left over a line; null where it was not found, its owner names no least cover, or nothing is dug. */
function coverOf(
  { found, minimumCover }: Line,
  depth: Length,
): ReturnType<typeof utilityCover> | null {
  if (found === undefined || minimumCover === undefined) return null;
  if (depth.isZero() || depth.isNegative()) return null;
  return utilityCover({ found, dig: depth, minimumCover });
}

type Tree = NonNullable<ReadJob['trees']>[number];

function zoneOf(
  { x, y, trunkDiameter, radiusPerDiameter, minimumRadius }: Tree,
  outline: DrawnDig,
): RootZone {
  const rule = {
    radiusPerDiameter: numberText(radiusPerDiameter),
    ...withoutGaps({ minimumRadius }),
  };
  return rootZone({ trunkDiameter, rule, dig: { outline, trunk: { x, y } } });
}

/** The deepest known dig. Lines and rules depend on it, not on the mean. */
const deepestOf = ({ dig, measured, deepest }: NearbyBasis): Length =>
  max([dig.depth, ...measured, ...(deepest === null ? [] : [deepest])]);
