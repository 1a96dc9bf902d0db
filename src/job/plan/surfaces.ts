import { entry, known } from '../../invariant.js';
import { belowString } from '../../string-line/below-string.js';
import type { Length } from '../../units/quantity.js';
import type { LiftPlan, PavementPlan, SurfacePlan } from './plan.js';
import type { SurfaceKind } from './surface-kind.js';

/** A surface of the work, and its depth below finished grade. Internal. */
export interface PlannedSurface {
  readonly surface: string;
  readonly kind: SurfaceKind;
  readonly depth: Length;
  /** Depth as placed, before the plate; null if it is not known or nothing is placed. */
  readonly placed: Length | null;
}

const KINDS = {
  paver: 'pavers',
  bedding: 'bedding',
  base: 'base',
  'sub-base': 'sub-base',
} as const;

/** The parts of a pavement that have surfaces. Internal. */
export type Surfaced = Pick<PavementPlan, 'buildUp' | 'lifts' | 'layerKinds' | 'settlement'>;

/** The surfaces of a pavement from finished grade down to the subgrade. Internal. */
export function surfacesBelow(pavement: Surfaced): PlannedSurface[] {
  const { buildUp, lifts, layerKinds, settlement } = pavement;
  const layers = buildUp.layers.map(({ name, top }, index): PlannedSurface => {
    const kind = KINDS[entry(layerKinds, index)];
    const isSet = kind === 'pavers' || kind === 'bedding';
    return {
      surface: index === 0 ? 'finished grade' : `${name} top`,
      kind,
      depth: top,
      // pavers and screed are set high by the settlement of the bedding
      placed: isSet ? (settlement?.negated().plus(top) ?? null) : spreadTop(lifts, top),
    };
  });
  return [
    ...[...layers, ...liftTops(lifts, layers)].sort((a, b) => a.depth.compare(b.depth)),
    { surface: 'subgrade', kind: 'subgrade', depth: buildUp.total, placed: null },
  ];
}

/** Tops of the lifts that are not the top of a layer. */
const liftTops = (
  lifts: readonly LiftPlan[],
  layers: readonly PlannedSurface[],
): PlannedSurface[] =>
  lifts
    .filter(({ belowFinish }) => layers.every(({ depth }) => !depth.equals(belowFinish)))
    .map(({ lift, belowFinish }) => ({
      surface: `lift ${lift} top`,
      kind: 'lift',
      depth: belowFinish,
      placed: spreadTop(lifts, belowFinish),
    }));

/** The loose top of a lift, from its compacted top. */
function spreadTop(lifts: readonly LiftPlan[], top: Length): Length {
  const { loose, compacted } = known(
    lifts.find(({ belowFinish }) => belowFinish.equals(top)),
    'lift',
  );
  return top.minus(loose.minus(compacted));
}

/** The surfaces of a pavement below a string. Internal. */
export const surfacesBelowString = (pavement: Surfaced, height: Length): SurfacePlan[] =>
  surfacesBelow(pavement).map(({ surface, kind, depth, placed }) => ({
    surface,
    kind,
    belowFinish: depth,
    belowString: belowString(height, depth),
    placedBelowString: placed === null ? null : belowString(height, placed),
  }));
