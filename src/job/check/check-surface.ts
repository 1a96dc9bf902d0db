import { checkLevels, type CheckedLevel, type LevelCheck } from '../../checks/check-levels.js';
import { checkThickness, type ThicknessCheck } from '../../checks/check-thickness.js';
import { entry, known } from '../../invariant.js';
import { belowString } from '../../string-line/below-string.js';
import type { Length } from '../../units/quantity.js';
import { worstVerdict, type Verdict } from '../../verdict.js';
import type { Worked } from '../../working.js';
import type { JobPlan, PavementPlan } from '../plan/plan.js';
import type { SurfaceKind } from '../plan/surface-kind.js';
import { surfacesBelow, type PlannedSurface } from '../plan/surfaces.js';
import { withoutGaps } from '../plan/without-gaps.js';
import { inField } from '../read/in-field.js';
import type { JobReading } from './check-readings.js';
import type { ReadReadings } from './read-job-readings.js';

/** A stake of a checked surface. */
export interface CheckedStake extends CheckedLevel {
  /** Id of the string that depths count from. */
  readonly string: string;
  /** Planned below the string. */
  readonly plannedBelowString: Length;
  /** Measured below the string. */
  readonly measuredBelowString: Length;
  /** Loose stone to spread where compacted stone is missing; null elsewhere. */
  readonly looseToAdd: Length | null;
}

/** What is to be done next on a surface. */
export interface NextStep {
  /** What to do. */
  readonly step: 'correct' | 'measure-again' | 'measure-rest' | 'go-on';
  /** The stakes it is about. */
  readonly stakes: readonly string[];
  /** The surface to build next; null where this was the last, or must wait. */
  readonly surface: string | null;
  /** How thick to spread it loose, for stone; null elsewhere. */
  readonly spread: Length | null;
}

/** One surface of one pavement against the plan. */
export interface SurfaceCheck {
  /** Name of the pavement. */
  readonly pavement: string;
  /** Id of the pavement. */
  readonly pavementId: string;
  /** Name of the surface. */
  readonly surface: string;
  /** What the surface belongs to. */
  readonly kind: SurfaceKind;
  /** The worst verdict of level and thickness. */
  readonly verdict: Verdict;
  /** Levels measured against the plan. */
  readonly level: Omit<LevelCheck, 'working' | 'readings' | 'outOfTolerance'> & {
    /** Ids of the stakes that do not pass. */
    readonly outOfTolerance: readonly string[];
  };
  /** Each stake that was read. */
  readonly stakes: readonly CheckedStake[];
  /** Stakes of the pavement with no reading on this surface. */
  readonly missing: readonly string[];
  /** Thickness of the layer under this surface; null where it was not read or not asked for. */
  readonly thickness: Omit<ThicknessCheck, 'working'> | null;
  /** What to do next. */
  readonly next: NextStep;
}

/** True for the same surface of a pavement. Internal. */
export const isSame = (a: PlannedSurface, b: PlannedSurface): boolean => a.surface === b.surface;

/** What the check of a surface is made from. Internal. */
export interface SurfaceBasis {
  readonly pavement: PavementPlan;
  readonly surface: PlannedSurface;
  /** Readings on this surface. */
  readonly own: readonly JobReading[];
  readonly given: ReadReadings;
  readonly worked: Worked[];
}

/** Checks one surface of one pavement. Internal. */
export function checkSurface(plan: JobPlan, basis: SurfaceBasis): SurfaceCheck {
  const { pavement, surface, own, worked } = basis;
  const { kind } = surface;
  const level = levelsOf(basis);
  worked.push(level);
  const { readings: levels, ...rest } = level;
  const thickness = thicknessOf(basis);
  if (thickness !== null) worked.push(thickness);
  const lines = plan.stringLines.filter(({ pavement: id }) => id === pavement.id);
  // a stake where two strings meet is measured once
  const ids = [...new Set(lines.flatMap(({ stakes: all }) => all.map(({ id }) => id)))];
  const missing = ids.filter((id) => own.every(({ stake }) => stake.id !== id));
  const stakes = own.map((reading, index) =>
    atStake(plan, entry(levels, index), { reading, surface, pavement }),
  );
  const verdict = worstVerdict([level.verdict, thickness?.verdict ?? 'pass']);
  const parts = {
    stakes,
    missing,
    thickness,
    verdict,
    surfaces: surfacesBelow(pavement),
    surface,
    pavement,
  };
  return {
    pavement: pavement.name,
    pavementId: pavement.id,
    surface: surface.surface,
    kind,
    verdict,
    level: { ...rest, outOfTolerance: rest.outOfTolerance.map(({ id }) => id) },
    stakes,
    missing,
    thickness,
    next: nextStep(parts),
  };
}

/** Levels of a surface: as elevations where all stakes have one, else above finished grade. */
function levelsOf({ surface, own, given }: SurfaceBasis): LevelCheck {
  const finishes = own.map(({ stake }) => stake.finishElevation);
  const isLevelled = finishes.every((finish) => finish !== null);
  const { kind } = surface;
  const { tolerances, uncertainty } = given;
  return inField(
    () =>
      checkLevels({
        layer: kind,
        readings: own.map(({ stake, height }, index) => {
          const datum = isLevelled ? entry(finishes, index) : null;
          const planned = surface.depth.negated();
          return {
            id: stake.id,
            plan: datum?.plus(planned) ?? planned,
            measured: datum?.plus(height) ?? height,
          };
        }),
        // each kind that was read has its tolerance
        tolerance: known(tolerances?.[kind], 'tolerance'),
        ...withoutGaps({ uncertainty }),
      }),
    ([, at]) => ['readings', own[Number(at)]?.index ?? 0],
  );
}

/** Thickness from this surface down to the bottom of its layer, where that was read too. */
function thicknessOf(basis: SurfaceBasis): ThicknessCheck | null {
  const { pavement, surface, own, given } = basis;
  const { readings, uncertainty } = given;
  const { kind } = surface;
  if (kind === 'pavers' || kind === 'subgrade' || kind === 'lift') return null;
  const tolerance = given.thickness?.[kind];
  const layer = pavement.buildUp.layers.find(({ top }) => top.equals(surface.depth));
  if (tolerance === undefined || layer === undefined) return null;
  const below = readings.filter(
    (one) => one.pavement === pavement && one.surface.depth.equals(layer.bottom),
  );
  const pairs = own.flatMap(({ stake, height, index }) => {
    const under = below.find((one) => one.stake.id === stake.id);
    return under === undefined ? [] : [{ id: stake.id, top: height, bottom: under.height, index }];
  });
  if (pairs.length === 0) return null;
  return inField(
    () =>
      checkThickness({
        layer: kind,
        design: layer.thickness,
        readings: pairs.map(({ id, top, bottom }) => ({ id, top, bottom })),
        tolerance,
        ...withoutGaps({ uncertainty }),
      }),
    ([, at]) => ['readings', pairs[Number(at)]?.index ?? 0],
  );
}

function atStake(
  plan: JobPlan,
  level: CheckedLevel,
  {
    reading,
    surface,
    pavement,
  }: {
    readonly reading: JobReading;
    readonly surface: PlannedSurface;
    readonly pavement: PavementPlan;
  },
): CheckedStake {
  const { line } = reading;
  const plannedBelowString = belowString(line.stringHeight, surface.depth);
  const isStone = surface.kind !== 'bedding' && surface.kind !== 'pavers';
  const { move } = level;
  return {
    ...level,
    string: line.id,
    plannedBelowString,
    measuredBelowString: plannedBelowString.minus(level.value),
    looseToAdd:
      isStone && move?.action === 'add' && move.by !== null
        ? move.by.dividedBy(compactedPerLoose(plan, pavement, surface))
        : null,
  };
}

/** Of the stone that a surface is made of: that of the layer it tops or lies in, or of the lowest. */
function compactedPerLoose(
  { job }: JobPlan,
  { buildUp, stones }: PavementPlan,
  surface: PlannedSurface,
): string {
  const layer = buildUp.layers.find(
    ({ top, bottom }) => surface.depth.atLeast(top) && surface.depth.lessThan(bottom),
  );
  const laid = stones.filter(({ layer: name }) => name !== 'fill');
  const id = (laid.find(({ layer: name }) => name === layer?.name) ?? laid.at(-1))?.material;
  return String(job.materials.stones.find((stone) => stone.id === id)?.compactedPerLoose ?? 1);
}

function nextStep({
  stakes,
  missing,
  thickness,
  verdict,
  surfaces,
  surface,
  pavement,
}: Pick<SurfaceCheck, 'stakes' | 'missing' | 'thickness' | 'verdict'> & {
  readonly surfaces: readonly PlannedSurface[];
  readonly surface: PlannedSurface;
  readonly pavement: PavementPlan;
}): NextStep {
  const waits = { surface: null, spread: null };
  const of = (wanted: Verdict): string[] => {
    const found = [...stakes, ...(thickness?.readings ?? [])];
    return [...new Set(found.filter((one) => one.verdict === wanted).map(({ id }) => id))];
  };
  if (verdict === 'fail') return { step: 'correct', stakes: of('fail'), ...waits };
  if (verdict === 'unclear') return { step: 'measure-again', stakes: of('unclear'), ...waits };
  if (missing.length > 0) return { step: 'measure-rest', stakes: missing, ...waits };
  const above = surfaces[surfaces.findIndex((one) => isSame(one, surface)) - 1];
  const lift = pavement.lifts.find(
    ({ belowFinish }) => above !== undefined && belowFinish.equals(above.depth),
  );
  return {
    step: 'go-on',
    stakes: [],
    surface: above?.surface ?? null,
    spread: lift?.loose ?? null,
  };
}
