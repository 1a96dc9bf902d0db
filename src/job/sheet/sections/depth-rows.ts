import { present } from '../../../invariant.js';
import type { BuildUp } from '../../../build-up/build-up.js';
import type { Length } from '../../../units/quantity.js';
import type {
  BetweenStringsPlan,
  DigPlan,
  LiftPlan,
  StakePlan,
  SurfacePlan,
} from '../../plan/plan.js';

// Depths are rounded once, to the marks of the tape. Every thickness, dig and remainder is worked out
// from the rounded depths of its own row, so that each printed row adds up.

/** Rounds a depth to the marks of the tape. Internal. */
export type ToTape = (depth: Length) => Length;

/** A layer below a string, as printed. Internal. */
export interface LayerRow {
  readonly name: string;
  readonly top: Length;
  readonly bottom: Length;
  /** Bottom less top. */
  readonly thickness: Length;
}

/** The layers of a build-up below a string, from the top down. Internal. */
export const layerRows = ({ layers }: BuildUp, height: Length, tape: ToTape): LayerRow[] =>
  layers.map(({ name, ...layer }) => {
    const top = tape(height.plus(layer.top));
    const bottom = tape(height.plus(layer.bottom));
    return { name, top, bottom, thickness: bottom.minus(top) };
  });

/** A lift below a string, as printed. Internal. */
export interface LiftRow {
  readonly lift: number;
  readonly layer: string;
  /** Its tops, as spread and compacted. */
  readonly looseTop: Length;
  readonly compactedTop: Length;
  /** Its thicknesses: the surface it lies on, less its tops. */
  readonly loose: Length;
  readonly compacted: Length;
}

/** The lifts below a string, from the subgrade up. Internal. */
export function liftRows(
  lifts: readonly LiftPlan[],
  {
    height,
    total,
    tape,
  }: { readonly height: Length; readonly total: Length; readonly tape: ToTape },
): LiftRow[] {
  let under = tape(height.plus(total));
  return lifts.map(({ lift, layer, loose, compacted, belowFinish }) => {
    const top = height.plus(belowFinish);
    const compactedTop = tape(top);
    const looseTop = tape(top.minus(loose.minus(compacted)));
    const row = {
      lift,
      layer,
      looseTop,
      compactedTop,
      loose: under.minus(looseTop),
      compacted: under.minus(compactedTop),
    };
    under = compactedTop;
    return row;
  });
}

/** Surfaces of a kind that are placed high, as printed: finished less placed is what they are high by. Internal. */
export const placedRows = (
  surfaces: readonly SurfacePlan[],
  kind: SurfacePlan['kind'],
  tape: ToTape,
) =>
  surfaces.flatMap((one) => {
    if (one.kind !== kind || one.placedBelowString === null) return [];
    const placed = tape(one.placedBelowString);
    return [{ placed, high: tape(one.belowString).minus(placed) }];
  });

/** A stake whose ground was measured, as printed. Internal. */
export interface GroundRow {
  readonly id: string;
  readonly station: Length;
  readonly ground: Length;
  /** Subgrade less ground; negative for fill. */
  readonly dig: Length;
  /** Old paving to strip. */
  readonly old: Length;
  /** Dig less old paving; negative for fill. */
  readonly soil: Length;
}

/** The stakes whose ground was measured. Internal. */
export const groundRows = (stakes: readonly StakePlan[], tape: ToTape): GroundRow[] =>
  stakes.flatMap(({ id, station, ground, subgrade, dig, soil }) => {
    if (ground === null) return [];
    const printed = {
      ground: tape(ground),
      old: tape(present(dig, 'dig').minus(present(soil, 'soil'))),
    };
    const toDig = tape(subgrade).minus(printed.ground);
    return [{ id, station, ...printed, dig: toDig, soil: toDig.minus(printed.old) }];
  });

/** The mean depth of a dig, as printed: old paving and soil make up the dig. Internal. */
export function digRow({ depth, soil }: DigPlan, tape: ToTape) {
  const dig = tape(depth);
  const old = tape(depth.minus(soil));
  return { dig, old, soil: dig.minus(old) };
}

/** Depths below a line between two strings, as printed: the subgrade is a build-up lower. Internal. */
export const betweenRows = (
  { rows }: BetweenStringsPlan,
  { total, tape }: { readonly total: Length; readonly tape: ToTape },
) =>
  rows.map(({ distance, toFinish }) => {
    const finish = tape(toFinish);
    return { distance, toFinish: finish, toSubgrade: finish.plus(tape(total)) };
  });
