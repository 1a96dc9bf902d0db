import type { Length } from '../../units/quantity.js';
import type { LiftPlan, PavementPlan } from './plan.js';

/** What a surface belongs to: limits and next actions go by it. */
export type SurfaceKind = 'subgrade' | 'lift' | 'sub-base' | 'base' | 'bedding' | 'pavers';

/** A surface of the work, and its depth below finished grade. Internal. */
export interface PlannedSurface {
  readonly surface: string;
  readonly kind: SurfaceKind;
  readonly depth: Length;
}

const KINDS = {
  paver: 'pavers',
  bedding: 'bedding',
  base: 'base',
  'sub-base': 'sub-base',
} as const;

/** The parts of a pavement that have surfaces. Internal. */
export type Surfaced = Pick<PavementPlan, 'buildUp' | 'lifts' | 'layerKinds'>;

/** The surfaces of a pavement from finished grade down to the subgrade. Internal. */
export function surfacesBelow({ buildUp, lifts, layerKinds }: Surfaced): PlannedSurface[] {
  const layers = buildUp.layers.map(({ name, top }, index): PlannedSurface => ({
    surface: index === 0 ? 'finished grade' : `${name} top`,
    kind: KINDS[layerKinds[index] ?? 'base'],
    depth: top,
  }));
  return [
    ...[...layers, ...liftTops(lifts, layers)].sort((a, b) => a.depth.compare(b.depth)),
    { surface: 'subgrade', kind: 'subgrade', depth: buildUp.total },
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
    }));
