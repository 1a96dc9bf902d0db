import { formatQuantity } from '../../../units/format-quantity.js';
import type {
  AnyQuantity,
  Area,
  Length,
  Mass,
  Slope,
  Time,
  Volume,
} from '../../../units/quantity.js';
import { slopeText } from './in-words.js';
import type { SheetUnits } from '../layout/units-of-sheet.js';

/** A quantity in the units of the sheet; a length as a depth if nothing else is said. Internal. */
export function quantityText(
  value: AnyQuantity,
  units: SheetUnits,
  lengthText: (value: Length) => string = units.depthWithUnit,
): string {
  switch (value.dimension) {
    case 'length':
      return lengthText(value as Length);
    case 'area':
      return units.area(value as Area);
    case 'volume':
      return units.volume(value as Volume);
    case 'mass':
      return units.mass(value as Mass);
    case 'slope':
      return slopeText(value as Slope);
    case 'time':
      return timeText(value as Time);
    default:
      return value.toString();
  }
}

/** Short times in minutes, so that none prints as nothing. */
export const timeText = (time: Time): string =>
  time.toNumber('h') < 1
    ? formatQuantity(time, { as: 'min', places: 0, rounding: 'up' })
    : formatQuantity(time, { as: 'h', places: 1 });
