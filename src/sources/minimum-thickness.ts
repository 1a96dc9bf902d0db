import type { SourceId } from './catalogue.js';
import { printed, type ReferenceValue } from './reference-value.js';

/** Uses of a pavement. */
export const PAVEMENT_USES = Object.freeze([
  'pedestrian',
  'residential-driveway',
  'parking-or-residential-street',
] as const);
/** A use of {@link PAVEMENT_USES}. */
export type PavementUse = (typeof PAVEMENT_USES)[number];

/** Soils below a pavement. */
export const SUBGRADES = Object.freeze(['well-drained', 'clay', 'wet-or-weak'] as const);
/** A subgrade of {@link SUBGRADES}. */
export type Subgrade = (typeof SUBGRADES)[number];

/** A figure that one table prints in inches and in millimetres, rounded separately. */
export interface TwoEditions {
  /** As printed in inches. */
  readonly in: ReferenceValue;
  /** As printed in millimetres. */
  readonly mm: ReferenceValue;
}

const both = (inches: string, millimetres: string): TwoEditions =>
  Object.freeze({
    in: printed(inches, 'in', 'paver-tolerances'),
    mm: printed(millimetres, 'mm', 'paver-tolerances'),
  });

/**
 * Minimum compacted thicknesses on well-drained ground, by use. Source: `paver-tolerances`; the
 * paver thicknesses are in `paver-construction` too.
 */
export const MINIMUM_THICKNESS: Readonly<
  Record<PavementUse, Readonly<Record<'paver' | 'bedding' | 'base', TwoEditions>>>
> = Object.freeze({
  pedestrian: Object.freeze({
    paver: both('2.375', '60'),
    bedding: both('1', '25'),
    base: both('4', '100'),
  }),
  'residential-driveway': Object.freeze({
    paver: both('2.375', '60'),
    bedding: both('1', '25'),
    base: both('6', '150'),
  }),
  'parking-or-residential-street': Object.freeze({
    paver: both('3.125', '80'),
    bedding: both('1', '25'),
    base: both('8', '200'),
  }),
});

/** Why base is added to the published minimum. */
export type BaseAdjustmentReason = 'clay' | 'wet-or-weak' | 'frost';

const added = (inches: string, millimetres: string, source: SourceId): TwoEditions =>
  Object.freeze({
    in: printed(inches, 'in', source),
    mm: printed(millimetres, 'mm', source),
  });

const byPractice = (
  inches: string,
  millimetres: string,
): Readonly<Record<PavementUse, TwoEditions>> =>
  Object.freeze({
    pedestrian: added(inches, millimetres, 'common-practice'),
    'residential-driveway': added(inches, millimetres, 'common-practice'),
    'parking-or-residential-street': added(inches, millimetres, 'common-practice'),
  });

/**
 * Base added on poor ground, on top of the published minimum, by reason and use. In frost a walk gets
 * 6 in where it has 4 in elsewhere (`frost-base-page`). The rest is common practice, no source: "50 to
 * 100 mm more on wet or weak clay or in frost". Have the subgrade checked before you rely on it.
 */
export const BASE_ADJUSTMENT: Readonly<
  Record<BaseAdjustmentReason, Readonly<Record<PavementUse, TwoEditions>>>
> = Object.freeze({
  clay: byPractice('2', '50'),
  'wet-or-weak': byPractice('4', '100'),
  frost: Object.freeze({
    ...byPractice('2', '50'),
    pedestrian: added('2', '50', 'frost-base-page'),
  }),
});

/**
 * Base that most contractors use in colder climates, by use. A driveway gets 4 in more there than the
 * published minimum, twice what {@link BASE_ADJUSTMENT} adds. Source: `frost-base-page`.
 */
export const FROST_BASE = Object.freeze({
  pedestrian: added('6', '150', 'frost-base-page'),
  'residential-driveway': added('10', '250', 'frost-base-page'),
});
