import type { FieldPath } from '../../errors.js';
import { oldPaving, type RemovedPaving } from '../../site/old-paving/old-paving.js';
import { areaOf } from '../../outline/outline-area.js';
import type { Outline } from '../../outline/ring.js';
import type { Area, Length, Volume } from '../../units/quantity.js';
import { sum } from '../../units/aggregate.js';
import { NO_LENGTH, NO_VOLUME } from '../../units/zero.js';
import { inField } from '../read/in-field.js';
import { numberText } from '../read/normal-job.js';
import type { ReadJob } from '../schema/job-shape.js';
import { insideOf } from './areas/in-dig.js';
import type { OldPavingPlan } from './plan.js';
import { areaOfRegions, within, type SignedOutline } from './areas/regions.js';
import type { Stake } from './stake-grounds.js';
import { withoutGaps } from './without-gaps.js';

/** Old paving as the job gives it. Internal. */
export type OldPavingOfJob = NonNullable<ReadJob['oldPaving']>[number];

/** Old paving in the dig of a pavement, or over a share of it. Internal. */
export interface LaidOldPaving {
  readonly old: OldPavingOfJob;
  readonly thickness: Length;
  /** Its outline; null if a share of the dig is given. */
  readonly outline: Outline | null;
  /** Share of the outline or of the dig, as the digits of a fraction. */
  readonly share: string;
  readonly path: FieldPath;
}

/** The old paving that may be in the dig of a pavement. Internal. */
export const oldPavingOf = (job: ReadJob, id: string): LaidOldPaving[] =>
  (job.oldPaving ?? []).flatMap((old, index): LaidOldPaving[] => {
    if (old.pavement !== undefined && old.pavement !== id) return [];
    const path = ['oldPaving', index];
    const { thickness, outline = null } = old;
    const share = old.share === undefined ? '1' : numberText(old.share);
    return [{ old, thickness, outline, share: outline === null ? share : '1', path }];
  });

/**
 * Thickness of old paving under the ground that was measured at a stake. It is zero on soil. If the
 * stake does not say, it is that of the pieces there, by their outline or over the whole dig. Internal.
 */
export function strippedAt({ groundOn, ...place }: Stake, laid: readonly LaidOldPaving[]): Length {
  if (groundOn === 'soil') return NO_LENGTH;
  const there = laid.filter(({ outline, share }) =>
    outline === null ? share === '1' : insideOf(outline)(place),
  );
  // measured on old paving, but outside every outline: take the first piece
  const meant = there.length === 0 && groundOn === 'old-paving' ? laid.slice(0, 1) : there;
  return sum([NO_LENGTH, ...meant.map(({ thickness }) => thickness)]);
}

/** Mean thickness stripped from a whole dig. Internal. */
export function meanStripped(dig: Outline, laid: readonly LaidOldPaving[]): Length | null {
  if (laid.length === 0) return null;
  const whole: readonly SignedOutline[] = [{ outline: dig, sign: 1 }];
  const volume = laid.reduce(
    (total, one) => total.plus(areaIn(whole, one).times(one.thickness)),
    NO_VOLUME,
  );
  return volume.dividedBy(areaOf(dig));
}

/** Area of a piece inside outlines. Internal. */
export const areaIn = (
  regions: readonly SignedOutline[],
  { outline, share }: LaidOldPaving,
): Area =>
  outline === null ? areaOfRegions(regions).times(share) : areaOfRegions(within(regions, outline));

/** A piece of old paving in a dig. Internal. */
export interface FoundPaving {
  readonly one: LaidOldPaving;
  readonly removed: RemovedPaving;
}

/** Plans the old paving to strip from a dig, by volume and mass. Internal. */
export function planOldPaving(
  regions: readonly SignedOutline[],
  laid: readonly LaidOldPaving[],
): {
  readonly plans: readonly OldPavingPlan[];
  readonly inPlace: Volume;
  /** What is worked out of each piece. */
  readonly found: readonly FoundPaving[];
} {
  const found = laid.flatMap((one) => {
    const area = areaIn(regions, one);
    if (area.isZero()) return [];
    const { material, thickness, density } = one.old;
    const layer = { material, area, thickness, ...withoutGaps({ inPlaceDensity: density }) };
    const removed = inField(
      () => oldPaving({ layers: [layer] }),
      () => one.path,
    );
    return [{ removed, material, one }];
  });
  const plans = found.flatMap(({ removed: { layers }, material }) =>
    layers.map(
      ({ thickness, inPlaceDensity: density, area, inPlace, loose, mass }): OldPavingPlan => ({
        material,
        thickness,
        density,
        area,
        inPlace,
        loose,
        mass,
      }),
    ),
  );
  return {
    plans,
    inPlace: plans.reduce((total, { inPlace }) => total.plus(inPlace), NO_VOLUME),
    found,
  };
}
