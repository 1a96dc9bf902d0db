import {
  printed,
  printedNumber,
  type ReferenceNumber,
  type ReferenceValue,
} from './reference-value.js';

/** A published rule for the root zone of a tree. */
export interface RootZoneRule {
  /** Feet of radius per inch of trunk, as printed. */
  readonly feetPerInch: ReferenceNumber;
  /** The same without units: radius over trunk diameter. */
  readonly radiusPerDiameter: string;
}

const rule = (feetPerInch: ReferenceNumber, radiusPerDiameter: string): RootZoneRule =>
  Object.freeze({ feetPerInch, radiusPerDiameter });

/**
 * Root-zone rules in use, all different, by the radius in trunk diameters. For information, not a
 * default: follow the ordinance where the tree is. Others require more than a factor:
 * `tree-county-code` for 1.5 ft an inch, at least 15 ft and 5 ft outside the drip line,
 * `tree-austin` for 1 ft an inch with half of the zone undisturbed.
 */
export const ROOT_ZONE_RULES: Readonly<Record<string, RootZoneRule>> = Object.freeze({
  'twelve-diameters': rule(printedNumber('1', 'tree-code'), '12'),
  'fifteen-diameters': rule(printedNumber('1.25', 'tree-extension'), '15'),
  'eighteen-diameters': rule(printedNumber('1.5', 'tree-city-page'), '18'),
});

/** Minimum radius of a root zone in one of the sources. Source: `tree-council`. */
export const LEAST_ROOT_ZONE: ReferenceValue = printed('6', 'ft', 'tree-council');

/** Marks for cuts near a tree. */
export const ROOT_CUT_MARKS = Object.freeze({
  /**
   * No more of the roots inside the drip line than this share is disturbed. Source:
   * `tree-stormwater`. The library applies it to the circle around the trunk, because no drip line
   * is given. That is common practice, no source.
   */
  share: printedNumber('0.25', 'tree-stormwater'),
  /** Minimum distance of a straight trench, in trunk diameters. Source: `tree-trench-study`. */
  diameters: printedNumber('3', 'tree-trench-study'),
});
