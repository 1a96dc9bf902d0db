import { fault } from '../errors.js';
import type { Dimension, Unit } from './catalogue.js';
import { isOneOf } from './check-options.js';
import { anyEntryOf } from './find-unit.js';
import { formatQuantity } from './format-quantity.js';
import { partOf } from './part-of.js';
import { printLength } from './print-length.js';
import { exactOf, isQuantity, ownQuantity, type AnyQuantity, type Length } from './quantity.js';
import { multiplyRatios, type Ratio } from './ratio.js';
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

/** How a system writes lengths: marks of the tape, and from a size on the long form. */
interface LengthMarks {
  readonly tape: 'in' | 'mm';
  readonly step: Length;
  readonly tapeFrom: Length;
  readonly long: 'ft-in' | 'm';
  readonly nearest: Length;
  readonly longFrom: Length;
}

const LENGTHS: Readonly<Record<UnitSystem, LengthMarks>> = {
  us: {
    tape: 'in',
    step: partOf(1, 16, 'in'),
    tapeFrom: partOf(1, 2, 'in'),
    long: 'ft-in',
    nearest: partOf(1, 8, 'in'),
    longFrom: partOf(10, 1, 'ft'),
  },
  metric: {
    tape: 'mm',
    step: partOf(1, 1, 'mm'),
    tapeFrom: partOf(10, 1, 'mm'),
    long: 'm',
    nearest: partOf(1, 1, 'mm'),
    longFrom: partOf(3, 1, 'm'),
  },
};

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
 * formatFor(slope('1/4 in per ft'), 'us') //=> '2.1%'
 */
export function formatFor(value: AnyQuantity, system: UnitSystem): string {
  if (!isQuantity(value)) {
    throw fault('WRONG_TYPE', `expected a quantity to print, got ${shown(value)}`);
  }
  const found = isSystem(system);
  if (found !== undefined) throw fault(found.code, found.message, found.params);
  return printFor(ownQuantity(value), system).text;
}

/** A quantity as printed, with what the print says exactly. Internal. */
export interface Printed {
  readonly text: string;
  /** The unit of the number; inches where it is feet and inches. */
  readonly unit: Unit;
  /** The step that the value was rounded to, in SI units. */
  readonly step: Ratio;
}

/** Prints a quantity as `formatFor` does, and says to which step. Internal. */
export function printFor(value: AnyQuantity, system: UnitSystem): Printed {
  return value.dimension === 'length'
    ? lengthFor(value as Length, system)
    : formFor(value, FORMS[system][value.dimension]);
}

function lengthFor(value: Length, system: UnitSystem): Printed {
  const { tape, step, tapeFrom, long, nearest, longFrom } = LENGTHS[system];
  if (value.abs().atLeast(longFrom)) {
    const unit = long === 'ft-in' ? 'in' : long;
    return { text: printLength(value, { as: long, nearest }), unit, step: exactOf(nearest) };
  }
  const isOnTape = value.abs().atLeast(tapeFrom) || roundTo(value, step).equals(value);
  if (!isOnTape) return formFor(value, [[tape, system === 'us' ? 3 : 2, 0]]);
  const text = printLength(value, { as: tape, nearest: step });
  return { text, unit: tape, step: exactOf(step) };
}

function formFor(value: AnyQuantity, forms: readonly Form[]): Printed {
  const last = forms.at(-1);
  const [unit, places] =
    forms.find(([name, , from]) => sizeIn(value, name) >= from) ?? last ?? NONE;
  const amount = sizeIn(value, unit);
  // a value that would print as 0 gets two digits
  const isTiny = amount > 0 && amount < 10 ** -places;
  const shownPlaces = isTiny ? Math.min(12, 1 - Math.floor(Math.log10(amount))) : places;
  const text = formatQuantity(value as Length, { as: unit as 'm', places: shownPlaces });
  const { exact } = anyEntryOf(unit);
  const step = multiplyRatios(exact, { n: 1, d: 10 ** shownPlaces });
  return { text: text.replace('ton-us', 'short tons'), unit, step };
}

const NONE: Form = ['m', 3, 0];

/** A value in units, approximately. */
const sizeIn = (value: AnyQuantity, unit: Unit): number =>
  Math.abs((value as Length).toNumber(unit as 'm'));
