import { formatFor, type UnitSystem } from '../units/format-for.js';
import { formatLength, type FormatLengthOptions } from '../units/format-length.js';
import { formatQuantity } from '../units/format-quantity.js';
import { length, slope } from '../units/construct.js';
import {
  isQuantity,
  type AnyQuantity,
  type Density,
  type Length,
  type Slope,
} from '../units/quantity.js';
import { roundTo } from '../units/rounding.js';
import type { StepItem, StepValue } from '../working.js';

/** How a report is written: feet and inches, or metres and millimetres. */
export type ReportSystem = UnitSystem;

type Step = FormatLengthOptions & { readonly nearest: string };

const step = (as: 'in' | 'ft' | 'mm' | 'm', nearest: string): Step =>
  Object.freeze({ as, nearest });

/** Steps of the tape, the coarsest first. */
const TAPE: Readonly<Record<ReportSystem, readonly Step[]>> = {
  us: [step('in', '1/16 in'), step('in', '1/64 in')],
  metric: [step('mm', '1 mm'), step('mm', '0.1 mm')],
};

/** Decimal places, if no step of the tape will do. */
const FINEST: Readonly<Record<ReportSystem, Step>> = {
  us: step('in', '0.001 in'),
  metric: step('mm', '0.001 mm'),
};

/** The step of the tape to which moves are printed. Internal. */
export const tapeOf = (system: ReportSystem): FormatLengthOptions => ({
  as: system === 'us' ? 'in' : 'mm',
});

/**
 * A length to the coarsest step of the tape for which `holds` is true, such as a step at which a
 * reading out of limits still reads as out. Internal.
 */
export function tapeText(
  value: Length,
  system: ReportSystem,
  holds: (rounded: Length) => boolean,
): string {
  const fit = TAPE[system].find(({ nearest }) => holds(roundTo(value, length(nearest))));
  return formatLength(value, fit ?? FINEST[system]);
}

/** A limit in full, in the system that prints it without rounding. Internal. */
export function limitText(value: Length, system: ReportSystem): string {
  const [tape, other] = [TAPE[system], TAPE[system === 'us' ? 'metric' : 'us']];
  // in tape marks of both systems first, then in decimals
  const forms = [...tape, ...other].sort(
    (a, b) => Number(isDecimalStep(a)) - Number(isDecimalStep(b)),
  );
  return formatLength(value, forms.find(isExactFor(value)) ?? FINEST[system]);
}

const isDecimalStep = ({ nearest }: Step): boolean => nearest.startsWith('0');

const SPANS = [step('ft', '1 ft'), step('m', '1 m'), step('ft', '0.01 ft'), step('m', '0.001 m')];

/** The length of a straightedge or string in full. Internal. */
export const spanText = (value: Length): string =>
  formatLength(value, SPANS.find(isExactFor(value)) ?? step('m', '0.001 m'));

const isExactFor =
  (value: Length) =>
  ({ nearest }: Step): boolean =>
    roundTo(value, length(nearest)).equals(value);

/** A station, to a hundredth of a foot or to a millimetre. Internal. */
export const stationText = (value: Length, system: ReportSystem): string =>
  formatLength(value, { as: system === 'us' ? 'ft' : 'm' });

/** A slope in percent, to the fewest places for which `holds` is true. Internal. */
export function slopeText(value: Slope, holds: (rounded: Slope) => boolean): string {
  const places = PLACES.find((count) => holds(roundTo(value, slope(`1e-${count}`, 'percent'))));
  return formatQuantity(value, { as: 'percent', places: places ?? 4 });
}

const PLACES = [1, 2, 3] as const;

/** A slope limit in full, to four places. Internal. */
export const slopeLimitText = (value: Slope): string =>
  `${value.to('percent').toDecimalPlaces(4).toString()}%`;

/** A density in the units of the crew's paperwork. Internal. */
export const densityText = (value: Density, system: ReportSystem): string =>
  formatQuantity(value, { as: system === 'us' ? 'lb/ft3' : 'kg/m3', places: 1 });

/** A value of the working. Internal. */
export const workingText = (value: StepValue, system: ReportSystem): string =>
  isList(value) ? value.map((item) => itemText(item, system)).join(', ') : itemText(value, system);

const isList = (value: StepValue): value is readonly StepItem[] => Array.isArray(value);

function itemText(value: StepItem, system: ReportSystem): string {
  if (isQuantity(value)) return quantityText(value, system);
  return typeof value === 'number' ? String(Number(value.toPrecision(8))) : value;
}

/** As the sheets write it, but finer where a reading is judged against a limit. */
function quantityText(value: AnyQuantity, system: ReportSystem): string {
  switch (value.dimension) {
    case 'length':
      return workingLength(value as Length, system === 'us');
    case 'slope':
      return formatQuantity(value as Slope, { as: 'percent', places: 4 });
    case 'density':
      return densityText(value as Density, system);
    default:
      return formatFor(value, system);
  }
}

const LONG = length(3, 'm');

function workingLength(value: Length, isUs: boolean): string {
  if (value.abs().compare(LONG) < 0) {
    return isUs
      ? formatLength(value, { as: 'in', nearest: '0.001 in' })
      : formatLength(value, { as: 'mm', nearest: '0.01 mm' });
  }
  return isUs
    ? formatLength(value, { as: 'ft', nearest: '0.0001 ft' })
    : formatLength(value, { as: 'm', nearest: '0.0001 m' });
}
