import type { PavementUse } from './minimum-thickness.js';
import { printed, type ReferenceValue } from './reference-value.js';

/** The guides that limit the shape of a paver. */
export const UNIT_SHAPE_GUIDES = Object.freeze(['interlocking', 'permeable'] as const);
/** A guide of {@link UNIT_SHAPE_GUIDES}. */
export type UnitShapeGuide = (typeof UNIT_SHAPE_GUIDES)[number];

const ratio = (value: string, source: 'paver-tolerances' | 'permeable-tolerances') =>
  printed(value, 'ratio', source);

/**
 * Maximum length over thickness of a paver, by guide and use. Sources: `paver-tolerances`,
 * `permeable-tolerances` (which puts a driveway with streets).
 */
export const UNIT_SHAPE_LIMITS: Readonly<
  Record<UnitShapeGuide, Readonly<Record<PavementUse, ReferenceValue>>>
> = Object.freeze({
  interlocking: Object.freeze({
    pedestrian: ratio('4', 'paver-tolerances'),
    'residential-driveway': ratio('4', 'paver-tolerances'),
    'parking-or-residential-street': ratio('3', 'paver-tolerances'),
  }),
  permeable: Object.freeze({
    pedestrian: ratio('4', 'permeable-tolerances'),
    'residential-driveway': ratio('3', 'permeable-tolerances'),
    'parking-or-residential-street': ratio('3', 'permeable-tolerances'),
  }),
});

/**
 * Minimum cut pieces. Under vehicles: a third of a paver (`paver-tolerances`); one contract requires
 * a quarter (`laying-clause`). Elsewhere a width (`paver-tolerances`).
 */
export const CUT_UNIT_LIMITS = Object.freeze({
  vehicularShare: printed('1/3', 'ratio', 'paver-tolerances'),
  closureShare: printed('0.25', 'ratio', 'laying-clause'),
  otherWidth: printed('0.375', 'in', 'paver-tolerances'),
});
