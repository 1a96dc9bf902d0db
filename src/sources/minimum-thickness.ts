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

const byUse = (
  inches: string,
  millimetres: string,
  sources: Readonly<Record<PavementUse, SourceId>>,
): Readonly<Record<PavementUse, TwoEditions>> =>
  Object.freeze({
    pedestrian: added(inches, millimetres, sources.pedestrian),
    'residential-driveway': added(inches, millimetres, sources['residential-driveway']),
    'parking-or-residential-street': added(
      inches,
      millimetres,
      sources['parking-or-residential-street'],
    ),
  });

const everyUse = (source: SourceId): Readonly<Record<PavementUse, SourceId>> => ({
  pedestrian: source,
  'residential-driveway': source,
  'parking-or-residential-street': source,
});

/** The clause stands with walks and drives; that it holds for streets too is common practice. */
const WALKS_AND_DRIVES: Readonly<Record<PavementUse, SourceId>> = {
  ...everyUse('wet-base-clause'),
  'parking-or-residential-street': 'common-practice',
};

/**
 * Base added on poor ground, on top of the published minimum, by reason and use.
 *
 * - Clay: no text was found that gives an addition for clay alone. Common practice, no source.
 * - Wet or weak ground: the upper end of "at least 2 to 4 in" of the trade association
 *   (`wet-base-clause`); for streets the same, common practice.
 * - Frost: a walk gets 6 in where it has 4 in elsewhere, a driveway 10 in where it has 6 in
 *   (`frost-base-page`); a street gets as much as a driveway, common practice.
 *
 * That they add up is common practice too. Have the subgrade checked before you rely on it.
 */
export const BASE_ADJUSTMENT: Readonly<
  Record<BaseAdjustmentReason, Readonly<Record<PavementUse, TwoEditions>>>
> = Object.freeze({
  clay: byUse('2', '50', everyUse('common-practice')),
  'wet-or-weak': byUse('4', '100', WALKS_AND_DRIVES),
  frost: Object.freeze({
    pedestrian: added('2', '50', 'frost-base-page'),
    'residential-driveway': added('4', '100', 'frost-base-page'),
    'parking-or-residential-street': added('4', '100', 'common-practice'),
  }),
});

/**
 * Base that most contractors use in colder climates, by use; {@link BASE_ADJUSTMENT} has what that is
 * over the published minimum. Source: `frost-base-page`.
 */
export const FROST_BASE = Object.freeze({
  pedestrian: added('6', '150', 'frost-base-page'),
  'residential-driveway': added('10', '250', 'frost-base-page'),
});
