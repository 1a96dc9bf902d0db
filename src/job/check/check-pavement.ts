import type { BuildUp } from '../../build-up/build-up.js';
import type { CheckKind } from '../../checks/layer-check.js';
import type { PavementUse, Subgrade } from '../../sources/minimum-thickness.js';
import type { Area } from '../../units/quantity.js';
import { worstVerdict, type Verdict } from '../../verdict.js';
import type { PavementPlan } from '../plan/plan.js';
import { surfacesBelow, type PlannedSurface } from '../plan/surfaces.js';
import type { SurfaceCheck } from './check-surface.js';
import type { PlacedCheck } from './placed-check.js';
import type { PlacedReading } from './placed-readings.js';

/** A kind of check that nobody made on a surface. */
export interface NotChecked {
  /** Kind of check. */
  readonly check: CheckKind;
  /** Names of the surfaces, from the ground up. */
  readonly surfaces: readonly string[];
}

/** One pavement as built: what was planned, what was checked, what was not. */
export interface PavementCheck {
  /** Id of the pavement. */
  readonly id: string;
  /** Name of the pavement. */
  readonly name: string;
  /** What it was planned for. */
  readonly use: PavementUse;
  /** What it is built on. */
  readonly subgrade: Subgrade;
  /** Layers as planned, from finished grade down. */
  readonly buildUp: Omit<BuildUp, 'working'>;
  /** Area of the paving. */
  readonly area: Area;
  /** The worst verdict of all that was measured on it; null if nothing was. */
  readonly verdict: Verdict | null;
  /** Checks between the stakes, from the ground up. */
  readonly checks: readonly PlacedCheck[];
  /** What was not checked; stakes that were left out are in `surfaces`. */
  readonly notChecked: readonly NotChecked[];
}

/** Puts together what was checked on a pavement. Internal. */
export function checkPavement(
  plan: PavementPlan,
  {
    surfaces,
    placed,
  }: { readonly surfaces: readonly SurfaceCheck[]; readonly placed: readonly PlacedReading[] },
): PavementCheck {
  const { id, name, use, subgrade, buildUp, areas } = plan;
  const checks = placed.map(({ place, surface, kind, check }): PlacedCheck => ({
    place,
    surface,
    kind,
    check,
  }));
  const verdicts = [
    ...surfaces.map(({ verdict }) => verdict),
    ...checks.map(({ check }) => check.verdict),
  ];
  return {
    id,
    name,
    use,
    subgrade,
    buildUp: { layers: buildUp.layers, total: buildUp.total },
    area: areas.paving,
    verdict: verdicts.length === 0 ? null : worstVerdict(verdicts),
    checks,
    notChecked: notChecked(surfacesBelow(plan).reverse(), surfaces, checks),
  };
}

/** Which surfaces each kind of check is for. */
const MEANT: Readonly<Record<CheckKind, (surface: PlannedSurface) => boolean>> = {
  level: () => true,
  thickness: ({ kind }) => kind === 'sub-base' || kind === 'base' || kind === 'bedding',
  compaction: ({ kind }) => kind !== 'bedding' && kind !== 'pavers' && kind !== 'lift',
  flatness: ({ kind }) => kind === 'base' || kind === 'pavers',
  fall: ({ kind }) => kind === 'pavers',
  lippage: ({ kind }) => kind === 'pavers',
  'joint-width': ({ kind }) => kind === 'pavers',
  'bond-line': ({ kind }) => kind === 'pavers',
};

function notChecked(
  planned: readonly PlannedSurface[],
  surfaces: readonly SurfaceCheck[],
  checks: readonly PlacedCheck[],
): NotChecked[] {
  const made = new Set([
    ...surfaces.map(({ surface }) => `level ${surface}`),
    ...surfaces
      .filter(({ thickness }) => thickness !== null)
      .map(({ surface }) => `thickness ${surface}`),
    ...checks.map(({ surface, check }) => `${check.check} ${surface}`),
  ]);
  return (Object.keys(MEANT) as CheckKind[]).flatMap((check) => {
    const left = planned
      .filter((surface) => MEANT[check](surface) && !made.has(`${check} ${surface.surface}`))
      .map(({ surface }) => surface);
    return left.length === 0 ? [] : [{ check, surfaces: left }];
  });
}
