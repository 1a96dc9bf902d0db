import type { JobCheck } from '../../check/check-job.js';
import type { PavementCheck } from '../../check/check-pavement.js';
import type { SurfaceCheck } from '../../check/check-surface.js';
import type { SurfaceKind } from '../../plan/surface-kind.js';
import { readingsOf, type SheetCheck, type SheetReading } from '../words/check-words.js';
import { stakeAction } from '../words/describe-check.js';
import type { SheetSystem } from '../layout/lengths-of-sheet.js';

/** A check that was made, at the stakes or between them. Internal. */
export interface MadeCheck {
  /** Name of the pavement. */
  readonly pavement: string;
  readonly surface: string;
  readonly kind: SurfaceKind;
  /** Null at the stakes. */
  readonly place: string | null;
  readonly check: SheetCheck;
  readonly readings: readonly SheetReading[];
}

/** Every check of a pavement: at the stakes from the subgrade up, then between them. Internal. */
export const madeChecks = (
  { surfaces }: JobCheck,
  { id, name, checks }: PavementCheck,
  system: SheetSystem,
): MadeCheck[] => [
  ...surfaces
    .filter(({ pavementId }) => pavementId === id)
    .flatMap((surface) => [levelOf(surface, system), ...thicknessOf(surface, system)]),
  ...checks.map(({ place, surface, kind, check }) => ({
    pavement: name,
    surface,
    kind,
    place,
    check,
    readings: readingsOf(check, system),
  })),
];

function levelOf({ pavement, surface, kind, level, stakes }: SurfaceCheck, system: SheetSystem) {
  const check: SheetCheck = { ...level, readings: stakes };
  const readings = readingsOf(check, system).map((reading, index): SheetReading => {
    const stake = stakes[index];
    if (stake === undefined || reading.action === null) return reading;
    return { ...reading, action: stakeAction(stake, { kind, system }) };
  });
  return { pavement, surface, kind, place: null, check, readings };
}

function thicknessOf(
  { pavement, surface, kind, thickness }: SurfaceCheck,
  system: SheetSystem,
): MadeCheck[] {
  if (thickness === null) return [];
  const readings = readingsOf(thickness, system);
  return [{ pavement, surface, kind, place: null, check: thickness, readings }];
}
