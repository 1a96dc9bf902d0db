import { printed, printedNumber, type ReferenceNumber } from './reference-value.js';

/** Surfaces with a factor between the index of the air and their own. */
export const FROST_SURFACES = Object.freeze([
  'snow',
  'concrete',
  'asphalt',
  'bare-soil',
  'shaded',
  'turf',
  'trees',
] as const);
/** A surface of {@link FROST_SURFACES}. */
export type FrostSurface = (typeof FROST_SURFACES)[number];

const factor = (value: string): ReferenceNumber => printedNumber(value, 'surface-factors');

/**
 * Freezing index of a surface over that of the air, without snow and without heat from a building.
 * Pavers are not in the table: concrete is the nearest. Source: `surface-factors`.
 */
export const SURFACE_FACTORS: Readonly<Record<FrostSurface, ReferenceNumber>> = Object.freeze({
  snow: factor('1.0'),
  concrete: factor('0.75'),
  asphalt: factor('0.7'),
  'bare-soil': factor('0.7'),
  shaded: factor('0.9'),
  turf: factor('0.5'),
  trees: factor('0.3'),
});

/**
 * Heat of water and soil: latent heat of water [Btu/lb] and its density; heat capacity of dry soil
 * over that of water, and the share of the water's that frozen and unfrozen soil have on average.
 * Sources: `latent-heat`, `frost-depth-coefficient`.
 */
export const SOIL_HEAT = Object.freeze({
  latentPerPound: printedNumber('144', 'latent-heat'),
  water: printed('62.4', 'lb/ft3', 'latent-heat'),
  drySoil: printedNumber('0.17', 'frost-depth-coefficient'),
  ofWater: printedNumber('0.75', 'frost-depth-coefficient'),
});

/** Soils that the conductivity equations tell apart. */
export const THERMAL_SOILS = Object.freeze(['sandy', 'silt-clay'] as const);
/** A soil of {@link THERMAL_SOILS}. */
export type ThermalSoil = (typeof THERMAL_SOILS)[number];

/** The figures of one equation of conductivity. */
export type ConductivityFigures = Readonly<Record<'a' | 'b' | 'c' | 'd', ReferenceNumber>>;

const figures = (a: string, b: string, c: string, d: string): ConductivityFigures => {
  const inEquation = (value: string) => printedNumber(value, 'conductivity-equations');
  return Object.freeze({
    a: inEquation(a),
    b: inEquation(b),
    c: inEquation(c),
    d: inEquation(d),
  });
};

/**
 * Conductivity of soil [Btu in / (h ft2 F)] by moisture w [percent] and dry density g [lb/ft3]:
 * unfrozen `(a log10 w + b) 10^(c g)` (d is not used), frozen
 * `a 10^(b g) + c 10^(d g) w`. From memory (`conductivity-equations`). The readings of
 * `conductivity-table` come out within 0.1 Btu/(h ft F), but for one (0.2).
 */
export const CONDUCTIVITY: Readonly<
  Record<ThermalSoil, Readonly<Record<'frozen' | 'unfrozen', ConductivityFigures>>>
> = Object.freeze({
  sandy: Object.freeze({
    frozen: figures('0.076', '0.013', '0.032', '0.0146'),
    unfrozen: figures('0.7', '0.4', '0.01', '0'),
  }),
  'silt-clay': Object.freeze({
    frozen: figures('0.01', '0.022', '0.085', '0.008'),
    unfrozen: figures('0.9', '-0.2', '0.01', '0'),
  }),
});

/**
 * Moisture from which the conductivity equations hold, as a fraction, and the dry densities of the
 * readings. Sources: `conductivity-equations` (moisture, from memory), `conductivity-table`.
 */
export const CONDUCTIVITY_RANGE = Object.freeze({
  sandy: Object.freeze({
    moisture: printedNumber('0.01', 'conductivity-equations'),
    minimumDryDensity: printed('120', 'lb/ft3', 'conductivity-table'),
    maximumDryDensity: printed('130', 'lb/ft3', 'conductivity-table'),
  }),
  'silt-clay': Object.freeze({
    moisture: printedNumber('0.07', 'conductivity-equations'),
    minimumDryDensity: printed('90', 'lb/ft3', 'conductivity-table'),
    maximumDryDensity: printed('120', 'lb/ft3', 'conductivity-table'),
  }),
});

/**
 * Percent by mass finer than 0.02 mm that makes soil frost-susceptible: from `possible` on it may
 * be, from `susceptible` on it is; uniform sand only above `uniformSand`. Source:
 * `frost-susceptibility`. In gravel, about `finerPerFines` of what passes 0.075 mm is finer than
 * 0.02 mm, while less than `maximumFines` percent passes. Source: `frost-fines`.
 */
export const FROST_FINES = Object.freeze({
  possible: printedNumber('1.5', 'frost-susceptibility'),
  susceptible: printedNumber('3', 'frost-susceptibility'),
  uniformSand: printedNumber('10', 'frost-susceptibility'),
  finerPerFines: printedNumber('0.5', 'frost-fines'),
  maximumFines: printedNumber('18', 'frost-fines'),
});

/** Frost groups, in the order of the table: the later, the weaker in a thaw. */
export const FROST_GROUPS = Object.freeze([
  'NFS',
  'PFS',
  'S1',
  'S2',
  'F1',
  'F2',
  'F3',
  'F4',
] as const);
/** A group of {@link FROST_GROUPS}. */
export type FrostGroup = (typeof FROST_GROUPS)[number];

/** Soils that the frost groups tell apart. */
export const FROST_SOILS = Object.freeze([
  'gravel',
  'sand',
  'very-fine-silty-sand',
  'silt',
  'clay',
  'varved-clay',
] as const);
/** A soil of {@link FROST_SOILS}. */
export type FrostSoil = (typeof FROST_SOILS)[number];

/** A frost group, and the percent finer than 0.02 mm up to which a soil is in it. */
export interface FrostGroupLimit {
  /** The group. */
  readonly group: FrostGroup;
  /** Percent finer than 0.02 mm, no more than this; null for no end. */
  readonly upTo: ReferenceNumber | null;
}

const upTo = (group: FrostGroup, value: string | null): FrostGroupLimit =>
  Object.freeze({ group, upTo: value === null ? null : printedNumber(value, 'frost-groups') });

/**
 * Frost groups of gravel and sand by percent finer than 0.02 mm. Source: `frost-groups`, from
 * memory. Silt and varved clay are F4; clay is F3 with a plasticity index above `clayIndex`, else F4.
 */
export const FROST_GROUP_LIMITS = Object.freeze({
  gravel: Object.freeze([
    upTo('NFS', '1.5'),
    upTo('PFS', '3'),
    upTo('S1', '6'),
    upTo('F1', '10'),
    upTo('F2', '20'),
    upTo('F3', null),
  ]),
  sand: Object.freeze([upTo('NFS', '3'), upTo('S2', '6'), upTo('F2', '15'), upTo('F3', null)]),
  'very-fine-silty-sand': Object.freeze([
    upTo('NFS', '3'),
    upTo('S2', '6'),
    upTo('F2', '15'),
    upTo('F4', null),
  ]),
  clayIndex: printedNumber('12', 'frost-groups'),
});

/**
 * Support index of frost-susceptible soil, used in place of the bearing ratio. It is a mean over the
 * year that no test measures. Source: `frost-support`.
 */
export const FROST_SUPPORT = Object.freeze({
  S1: printedNumber('9.0', 'frost-support'),
  F1: printedNumber('9.0', 'frost-support'),
  S2: printedNumber('6.5', 'frost-support'),
  F2: printedNumber('6.5', 'frost-support'),
  F3: printedNumber('3.5', 'frost-support'),
  F4: printedNumber('3.5', 'frost-support'),
});

/**
 * Rule that lets frost into the subgrade by no more than a quarter of the base: the base is then
 * `c / (1 + r / 4)`, r being the moisture of the subgrade over that of the base, no more than
 * `maximumRatio`. The chart is not read; the line through its printed readings is. Source:
 * `frost-penetration-limit`.
 */
export const FROST_PENETRATION = Object.freeze({
  allowedShare: printedNumber('0.25', 'frost-penetration-limit'),
  maximumRatio: printedNumber('2.0', 'frost-penetration-limit'),
});
