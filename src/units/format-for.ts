import { fault } from '../errors.js';
import type { Dimension, Unit } from './catalogue.js';
import { isOneOf } from './check-options.js';
import { length } from './construct.js';
import { formatLength } from './format-length.js';
import { formatQuantity } from './format-quantity.js';
import { isQuantity, ownQuantity, type AnyQuantity, type Length } from './quantity.js';
import { roundTo } from './rounding.js';
import { shown } from './shown.js';

/** The two systems of a crew: feet and inches, or metres and millimetres. */
export type UnitSystem = 'us' | 'metric';

/** A unit with its decimal places, and the size from which it is used. */
type Form = readonly [unit: Unit, places: number, from: number];

const TIMES: readonly Form[] = [
  ['h', 1, 2],
  ['min', 1, 2],
  ['s', 0, 0],
];
const SLOPES: readonly Form[] = [['percent', 1, 0]];
const ANGLES: readonly Form[] = [['deg', 2, 0]];

/** How the sheets write each dimension, the largest unit first. */
const FORMS: Readonly<
  Record<UnitSystem, Readonly<Record<Exclude<Dimension, 'length'>, readonly Form[]>>>
> = {
  us: {
    area: [['ft2', 1, 0]],
    volume: [['yd3', 2, 0]],
    mass: [
      ['ton-us', 1, 1],
      ['lb', 1, 0],
    ],
    density: [['lb/yd3', 0, 0]],
    force: [['lbf', 1, 0]],
    'line-weight': [['lb/ft', 4, 0]],
    pressure: [['psi', 1, 0]],
    slope: SLOPES,
    angle: ANGLES,
    time: TIMES,
    speed: [['ft/min', 0, 0]],
    flow: [['gal-us/min', 1, 0]],
  },
  metric: {
    area: [['m2', 2, 0]],
    volume: [['m3', 2, 0]],
    mass: [
      ['t', 1, 1],
      ['kg', 1, 0],
    ],
    density: [['kg/m3', 0, 0]],
    force: [
      ['kN', 2, 1],
      ['N', 1, 0],
    ],
    'line-weight': [['g/m', 1, 0]],
    pressure: [
      ['MPa', 2, 1],
      ['kPa', 1, 0],
    ],
    slope: SLOPES,
    angle: ANGLES,
    time: TIMES,
    speed: [['m/min', 1, 0]],
    flow: [['l/min', 1, 0]],
  },
};

/** How the sheets write lengths: on the tape, and long ones. */
const LENGTHS = {
  us: { tape: 'in', step: '1/16 in', tapeFrom: '1/2 in', long: 'ft-in', nearest: '1/8 in' },
  metric: { tape: 'mm', step: '1 mm', tapeFrom: '10 mm', long: 'm', nearest: '0.001 m' },
} as const;
/** Lengths from this size count as long. */
const LONG = { us: '10 ft', metric: '3 m' } as const;

const isSystem = isOneOf(['us', 'metric'] satisfies UnitSystem[]);

/**
 * Prints a quantity the way the sheets do: unit and step are picked by dimension and size. Lengths
 * up to 10 ft (3 m) in sixteenths of an inch (millimetres), longer ones in feet and inches to 1/8
 * in (metres); areas in ft2 (m2), volumes in yd3 (m3), masses in short tons or pounds (tonnes or
 * kilograms), slopes in percent. A value too small for a step of the tape is printed in decimals.
 *
 * @param value - a quantity of any dimension
 * @param system - `us` or `metric`
 * @returns the number with its unit; rounded once
 * @throws `WRONG_TYPE`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`
 * @example
 * formatFor(length('692 mm'), 'us') //=> '27 1/4 in'
 * formatFor(length('24 ft'), 'us') //=> `24' 0"`
 * formatFor(length('24 ft'), 'metric') //=> '7.315 m'
 * formatFor(slope('1/4 in per ft'), 'us') //=> '2.1 %'
 */
export function formatFor(value: AnyQuantity, system: UnitSystem): string {
  if (!isQuantity(value)) {
    throw fault('WRONG_TYPE', `expected a quantity to print, got ${shown(value)}`);
  }
  const found = isSystem(system);
  if (found !== undefined) throw fault(found.code, found.message, found.params);
  const own: AnyQuantity = ownQuantity(value);
  return own.dimension === 'length'
    ? lengthFor(own as Length, system)
    : formFor(own, FORMS[system][own.dimension]);
}

function lengthFor(value: Length, system: UnitSystem): string {
  const { tape, step, tapeFrom, long, nearest } = LENGTHS[system];
  if (value.abs().atLeast(length(LONG[system]))) return formatLength(value, { as: long, nearest });
  const isOnTape =
    value.abs().atLeast(length(tapeFrom)) || roundTo(value, length(step)).equals(value);
  return isOnTape
    ? formatLength(value, { as: tape, nearest: step })
    : formFor(value, [[tape, system === 'us' ? 3 : 2, 0]]);
}

function formFor(value: AnyQuantity, forms: readonly Form[]): string {
  const last = forms.at(-1);
  const [unit, places] =
    forms.find(([name, , from]) => sizeIn(value, name) >= from) ?? last ?? NONE;
  const size = sizeIn(value, unit);
  // a value that would print as 0 gets two digits
  const isTiny = size > 0 && size < 10 ** -places;
  const shownPlaces = isTiny ? Math.min(12, 1 - Math.floor(Math.log10(size))) : places;
  const text = formatQuantity(value as Length, { as: unit as 'm', places: shownPlaces });
  return text.replace('ton-us', 'short tons');
}

const NONE: Form = ['m', 3, 0];

/** A value in units, approximately. */
const sizeIn = (value: AnyQuantity, unit: Unit): number =>
  Math.abs((value as Length).toNumber(unit as 'm'));
