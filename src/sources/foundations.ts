import {
  printed,
  printedNumber,
  type ReferenceNumber,
  type ReferenceValue,
} from './reference-value.js';

/** Roads that the table of foundations tells apart. */
export const FOUNDATION_ROADS = Object.freeze([
  'residential-access',
  'shared-surface',
  'industrial',
] as const);
/** A road of {@link FOUNDATION_ROADS}. */
export type FoundationRoad = (typeof FOUNDATION_ROADS)[number];

/** Capping and sub-base on soil from a bearing ratio up. */
export interface FoundationRow {
  /** Bearing ratio in percent from which the row holds, down to the next. */
  readonly from: ReferenceNumber;
  /** Thickness of capping by road; null where none is printed. */
  readonly capping: Readonly<Record<FoundationRoad, ReferenceValue | null>>;
}

const row = (
  from: string,
  ...[access, shared, industrial]: readonly [string | null, string | null, string | null]
): FoundationRow => {
  const thickness = (value: string | null) =>
    value === null ? null : printed(value, 'mm', 'county-foundations');
  return Object.freeze({
    from: printedNumber(from, 'county-foundations'),
    capping: Object.freeze({
      'residential-access': thickness(access),
      'shared-surface': thickness(shared),
      industrial: thickness(industrial),
    }),
  });
};

/**
 * Capping and sub-base of one county under residential and industrial roads, by bearing ratio; a
 * ratio between two rows goes down to the weaker. It is a table of foundations under roads, not of
 * drives. Below 2% the county asks for a submitted design. No frost-susceptible material within
 * `frostFree` of the surface. Source: `county-foundations`.
 */
export const COUNTY_FOUNDATIONS = Object.freeze({
  rows: Object.freeze([
    row('0', '550', '500', '600'),
    row('2', '400', '350', '450'),
    row('3', '300', '250', '350'),
    row('4', '250', '200', '300'),
    row('5', '200', '200', '250'),
    row('15', null, null, null),
  ]),
  subBase: Object.freeze({
    'residential-access': printed('200', 'mm', 'county-foundations'),
    'shared-surface': printed('250', 'mm', 'county-foundations'),
    industrial: printed('150', 'mm', 'county-foundations'),
  }),
  designBelow: printedNumber('2', 'county-foundations'),
  frostFree: printed('450', 'mm', 'county-foundations'),
});
