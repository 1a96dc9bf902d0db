import { fromUnit, type Quantity } from '../units/quantity.js';
import { wholeRatio } from '../units/ratio.js';
import type { Dimension, UnitOf } from '../units/catalogue.js';
import type { NumberRule, QuantityRule, Sign } from './reader.js';

/**
 * The one table of input ranges, for functions and the job file. A value outside its range has a
 * wrong digit or unit. Each range has an example that messages show. Internal.
 */
export interface QuantityRange<D extends Dimension> extends QuantityRule<D> {
  readonly dimension: D;
  readonly most: Quantity<D>;
  readonly example: string;
}

/** A quantity with a sign and a limit. Internal. */
export function upTo<D extends Dimension>(
  dimension: D,
  sign: Sign,
  [most, unit]: readonly [number, UnitOf<D>],
  example: string,
): QuantityRange<D> {
  let limit: Quantity<D> | undefined;
  return Object.freeze({
    dimension,
    sign,
    example,
    // built on first use: an app reads few of these
    get most() {
      return (limit ??= fromUnit(dimension, wholeRatio(most), unit));
    },
  });
}

type Named<D extends Dimension> = (sign: Sign, most: number, example: string) => QuantityRange<D>;

const metres: Named<'length'> = (sign, most, example) => upTo('length', sign, [most, 'm'], example);
const cubicMetres = (sign: Sign, most: number): QuantityRange<'volume'> =>
  upTo('volume', sign, [most, 'm3'], '"10 yd3" or "8 m3"');
const tonnes: Named<'mass'> = (sign, most, example) => upTo('mass', sign, [most, 't'], example);
const ratio = (sign: Sign, most: number): QuantityRange<'slope'> =>
  upTo('slope', sign, [most, 'ratio'], '"2%", "1:48" or "1/4 in per ft"');
const degrees: Named<'angle'> = (sign, most, example) =>
  upTo('angle', sign, [most, 'deg'], example);
const hours = (sign: Sign): QuantityRange<'time'> =>
  upTo('time', sign, [10_000, 'h'], '"22 s" or "1.5 h"');

// ---- layers, digs and levels

/** A compacted layer of a pavement. */
export const THICKNESS = /* #__PURE__ */ metres('positive', 5, '"5 in" or "125 mm"');
/** A layer, lift or strip that may be 0. */
export const THICKNESS_OR_NONE = /* #__PURE__ */ metres('not-negative', 5, '"5 in" or "125 mm"');
/** A string above finished grade, or at it. */
export const STRING_HEIGHT = /* #__PURE__ */ metres('not-negative', 5, '"15 in" or "400 mm"');
/** A dig, a cover, the depth of a footing. */
export const DEPTH = /* #__PURE__ */ metres('positive', 50, '"18 in" or "450 mm"');
/** A depth that may be 0. */
export const DEPTH_OR_NONE = /* #__PURE__ */ metres('not-negative', 50, '"18 in" or "450 mm"');
/** A difference of level, up or down. */
export const LEVEL_DIFFERENCE = /* #__PURE__ */ metres('any', 20, '"3 1/2 in" or "-90 mm"');
/** A rise, a step, the clearance of a vehicle. */
export const RISE = /* #__PURE__ */ metres('positive', 100, '"6 in" or "150 mm"');
/** An elevation above any datum. */
export const ELEVATION = /* #__PURE__ */ metres('any', 10000, '"98.40 ft" or "30.00 m"');
/** A reading on a rod. */
export const ROD_READING = /* #__PURE__ */ metres('not-negative', 20, '"4.37 ft" or "1.332 m"');

/** A rod at full length. */
export const ROD_LENGTH = /* #__PURE__ */ metres('positive', 20, '"13 ft" or "4 m"');

// ---- in plan

/** A plan coordinate on any grid. */
export const PLACE = /* #__PURE__ */ metres('any', 100_000_000, `"7' 3 5/8\\"" or "2.225 m"`);
/** A place along a line. */
export const STATION = /* #__PURE__ */ metres('any', 100_000, '"24 ft" or "7.50 m"');
/** A distance in plan. */
export const DISTANCE = /* #__PURE__ */ metres('positive', 100_000, '"24 ft" or "7.50 m"');
/** A distance or run that may be 0. */
export const DISTANCE_OR_NONE = /* #__PURE__ */ metres(
  'not-negative',
  100_000,
  '"24 ft" or "7.50 m"',
);
/** The distance that a rule for misclosures counts by. */
export const COUNTED_DISTANCE = /* #__PURE__ */ metres('positive', 100_000, '"set-up" or "1 km"');
/** A measure on a site: a side, a chord, a string, a straightedge. */
export const SITE_LENGTH = /* #__PURE__ */ metres('positive', 10000, '"24 ft" or "7.50 m"');
/** A measure on a site that may be 0. */
export const SITE_LENGTH_OR_NONE = /* #__PURE__ */ metres(
  'not-negative',
  10000,
  '"24 ft" or "7.50 m"',
);
/** A measure on a site, to either side. */
export const SITE_OFFSET = /* #__PURE__ */ metres('any', 10000, '"24 ft" or "-7.50 m"');
/** A set-back, a move outward, a clearance, a lap or an upturn. */
export const SET_BACK = /* #__PURE__ */ metres('not-negative', 100, '"18 in" or "450 mm"');
/** A zone around a marked line or a tree: what a law or an owner sets is never 0. */
export const ZONE = /* #__PURE__ */ metres('positive', 100, '"24 in" or "600 mm"');
/** A radius: flat arcs have large ones. */
export const RADIUS = /* #__PURE__ */ metres('positive', 1_000_000, '"12 ft" or "3.60 m"');

// ---- small measures

/** A tolerance or an uncertainty. */
export const TOLERANCE = /* #__PURE__ */ metres('not-negative', 10, '"1/4 in" or "6 mm"');
/** A tolerance that must not be 0. */
export const TOLERANCE_OF_SOME = /* #__PURE__ */ metres('positive', 10, '"1/4 in" or "6 mm"');
/** An error of either sign. */
export const ERROR = /* #__PURE__ */ metres('any', 10, '"1/4 in" or "-6 mm"');
/** A lip, a gap, a settlement. */
export const SMALL = /* #__PURE__ */ metres('not-negative', 1, '"1/8 in" or "3 mm"');
/** A lip up or down. */
export const LIP = /* #__PURE__ */ metres('any', 1, '"1/8 in" or "-3 mm"');
/** A joint that may be closed. */
export const JOINT = /* #__PURE__ */ metres('not-negative', 0.1, '"1/8 in" or "3 mm"');
/** A joint that is filled. */
export const OPEN_JOINT = /* #__PURE__ */ metres('positive', 0.1, '"1/8 in" or "3 mm"');
/** The opening of a sieve. */
export const SIEVE = /* #__PURE__ */ upTo('length', 'positive', [200, 'mm'], '"1.18 mm"');
/** A side or the thickness of a paver, an edging or a board. */
export const UNIT_SIDE = /* #__PURE__ */ metres('positive', 5, '"7 7/8 in" or "200 mm"');

/** A piece of edging, the width of a roll of fabric, a spacing of spikes. */
export const PIECE = /* #__PURE__ */ metres('positive', 100, '"8 ft" or "2.4 m"');
/** A measure of a machine: a wheel, a wheelbase, a plate. */
export const MACHINE_PART = /* #__PURE__ */ metres('positive', 50, '"16 in" or "400 mm"');
/** A measure of a machine that may be 0. */
export const MACHINE_PART_OR_NONE = /* #__PURE__ */ metres(
  'not-negative',
  50,
  '"34 in" or "850 mm"',
);
/** Diameter of a trunk. */
export const TRUNK = /* #__PURE__ */ metres('positive', 20, '"14 in" or "350 mm"');

// ---- areas, volumes, masses

/** A plan area. */
export const AREA = /* #__PURE__ */ upTo('area', 'positive', [1000, 'ha'], '"320 ft2" or "30 m2"');
/** A plan area that may be 0. */
export const AREA_OR_NONE = /* #__PURE__ */ upTo(
  'area',
  'not-negative',
  [1000, 'ha'],
  '"320 ft2" or "30 m2"',
);
/** A volume of soil, stone or sand. */
export const VOLUME = /* #__PURE__ */ cubicMetres('positive', 10_000_000);
/** A volume that may be 0. */
export const VOLUME_OR_NONE = /* #__PURE__ */ cubicMetres('not-negative', 10_000_000);
/** A truck box, a bucket, a pack. */
export const BOX = /* #__PURE__ */ cubicMetres('positive', 1000);
/** A mass of material. */
export const MASS = /* #__PURE__ */ tonnes('positive', 1_000_000, '"13 t" or "26000 lb"');
/** A mass that may be 0. */
export const MASS_OR_NONE = /* #__PURE__ */ tonnes(
  'not-negative',
  1_000_000,
  '"13 t" or "26000 lb"',
);
/** A payload, an axle, a delivery. */
export const PAYLOAD = /* #__PURE__ */ tonnes('positive', 10000, '"13 t" or "26000 lb"');
/** A bag or a pallet. */
export const BAG = /* #__PURE__ */ tonnes('positive', 100, '"25 kg" or "50 lb"');
/** A density of soil, stone, sand or paving. */
export const DENSITY = /* #__PURE__ */ upTo(
  'density',
  'positive',
  [5, 't/m3'],
  '"3700 lb/yd3" or "2200 kg/m3"',
);

// ---- slopes and angles

/** A slope of either direction. */
export const SLOPE = /* #__PURE__ */ ratio('any', 10);
/** A slope that must not be 0. */
export const SLOPE_OF_SOME = /* #__PURE__ */ ratio('positive', 10);
/** A slope, or the margin of one, that may be 0. */
export const SLOPE_OR_NONE = /* #__PURE__ */ ratio('not-negative', 10);
/** A grade of paving, of either direction: up to 1 in 1. */
export const GRADE = /* #__PURE__ */ ratio('any', 1);
/** A fall or a limit of slope that may be 0: up to 1 in 1. */
export const FALL = /* #__PURE__ */ ratio('not-negative', 1);
/** A limit of slope that must not be 0: up to 1 in 1. */
export const FALL_OF_SOME = /* #__PURE__ */ ratio('positive', 1);
/** A direction: up to ten whole turns either way. */
export const AZIMUTH = /* #__PURE__ */ degrees('any', 3600, '"45 deg"');
/** A turn from one straight to the next, less than 180 degrees. */
export const TURN = /* #__PURE__ */ degrees('positive', 179, '"90 deg"');
/** An angle between flat and plumb. */
export const STEEPNESS = /* #__PURE__ */ degrees('positive', 89, '"45 deg"');
/** An angle at which two lines cross: less than half a turn. */
export const CROSSING = /* #__PURE__ */ degrees('positive', 180, '"60 deg"');
/** Angle by which a beam may be off level. */
export const BEAM_ANGLE = /* #__PURE__ */ degrees('not-negative', 1, '"10 arcsec"');
/** Angle of an instrument off its line. */
export const HEADING = /* #__PURE__ */ degrees('any', 90, '"3 deg"');
/** Lean of a rod. */
export const TILT = /* #__PURE__ */ degrees('any', 45, '"2 deg"');

// ---- the rest

/** A length of time. */
export const TIME = /* #__PURE__ */ hours('positive');
/** A length of time that may be 0. */
export const TIME_OR_NONE = /* #__PURE__ */ hours('not-negative');
/** The speed of a plate or roller. */
export const SPEED = /* #__PURE__ */ upTo(
  'speed',
  'positive',
  [50, 'km/h'],
  '"20 m/min" or "1 mph"',
);
/** A flow of water or soil. */
export const FLOW = /* #__PURE__ */ upTo(
  'flow',
  'positive',
  [1000, 'm3/s'],
  '"120 l/min" or "30 gal-us/min"',
);
/** A force: a pull, a wheel. */
export const FORCE = /* #__PURE__ */ upTo(
  'force',
  'positive',
  [10_000, 'kN'],
  '"13 lbf" or "60 N"',
);
/** The weight of a string per length. */
export const LINE_WEIGHT = /* #__PURE__ */ upTo(
  'line-weight',
  'positive',
  [1000, 'N/m'],
  '"1.2 g/m" or "0.0008 lb/ft"',
);
/** A pressure of a tyre or on the ground. */
export const PRESSURE = /* #__PURE__ */ upTo(
  'pressure',
  'positive',
  [100_000, 'MPa'],
  '"35 psi" or "240 kPa"',
);

// ---- plain numbers

const numbers = <R extends NumberRule & { readonly example: string }>(rule: R): Readonly<R> =>
  Object.freeze(rule);

/** Waste, moisture, breakage: a fraction, not a percentage. */
export const FRACTION = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 1,
  example: '0.05 for 5%',
});
/** A share, more than 0 and at most 1. */
export const SHARE = /* #__PURE__ */ numbers({
  sign: 'positive',
  most: 1,
  example: '0.75 for 75%',
});
/** A share that may be 0. */
export const SHARE_OR_NONE = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 1,
  example: '0.9 for 90%',
});
/** The share of rain that runs off ground or a roof. */
export const RUNOFF = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 1,
  example: '0.9 for a roof',
});
/** The share of a lane that a plate covers twice. */
export const OVERLAP = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 0.9,
  example: '0.1 for 10%',
});
/** Loose volume in a bucket over its rated volume. */
export const FILL_FACTOR = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 0.3,
  most: 1.5,
  example: '0.9',
});
/** A percentage that must be reached: a fraction is caught. */
export const PERCENT = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 50,
  most: 110,
  example: '95 for 95%',
});
/** Percent by which a figure may be off. */
export const PERCENT_OFF = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 20,
  example: '2 for 2%',
});
/** Batter of a side, horizontal over vertical: vertical to ten to one. */
export const BATTER = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 10,
  example: '1.5 for 1 1/2 to 1',
});
/** Loose over bank volume. */
export const LOOSE_PER_BANK = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 0.9,
  most: 3,
  example: '1.25',
});
/** Compacted over bank volume. */
export const COMPACTED_PER_BANK = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 0.4,
  most: 2,
  example: '0.9',
});
/** Compacted over loose thickness or volume. */
export const COMPACTED_PER_LOOSE = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 0.5,
  most: 1,
  example: '0.8',
});
/** The chance of blaming a good reading. A test that is wrong half the time is no test. */
export const SIGNIFICANCE = /* #__PURE__ */ numbers({
  sign: 'positive',
  most: 0.5,
  example: '0.05 for 5%',
});
/** A count: at least one. */
export const COUNT = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 1_000_000,
  example: '3',
});
/** Axles of a group. */
export const AXLES = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 2,
  most: 20,
  example: '3',
});
/** Trucks of a fleet. */
export const TRUCKS = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 100,
  example: '4',
});
/** Passes of a plate over a lift, or lifts. */
export const PASSES = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 50,
  example: '4',
});
/** Working days of notice. */
export const NOTICE_DAYS = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 60,
  example: '2',
});
/** Days that locate marks are valid. */
export const MARK_DAYS = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 400,
  example: '14',
});
/** Radius of a root zone over trunk diameter. */
export const ROOT_ZONE_FACTOR = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 40,
  example: '12',
});
/** A number of packs that may be 0. */
export const PACKS = /* #__PURE__ */ numbers({ sign: 'not-negative', most: 1000, example: '2' });
/** Pieces in a pack. */
export const PIECES_IN_PACK = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 1_000_000,
  example: '40',
});
/** A count: none or more. */
export const COUNT_OR_NONE = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 1_000_000,
  example: '3',
});
/** Standard deviations that an uncertainty covers. */
export const COVERAGE = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 5,
  example: '2',
});
/** Share of the curvature of the earth that refraction offsets. */
export const REFRACTION = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 0.99,
  example: '0.14',
});
/** Pavers of a whole site. */
export const PAVERS = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 1_000_000_000,
  example: '3129',
});
/** Percent by mass that passes a sieve. */
export const PERCENT_PASSING = /* #__PURE__ */ numbers({
  sign: 'not-negative',
  most: 100,
  example: '94 for 94%',
});
/** Maximum of delivered over expected: 1 or more. */
export const AT_MOST_RATIO = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 1,
  most: 100,
  example: '1.1',
});
/** Characters in a line of a sheet. */
export const SHEET_WIDTH = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 40,
  most: 120,
  example: '48',
});
/** Width of a drawing in pixels. */
export const DRAWING_WIDTH = /* #__PURE__ */ numbers({
  sign: 'positive',
  least: 320,
  most: 2400,
  example: '720',
});
