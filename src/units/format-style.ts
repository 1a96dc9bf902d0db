import { fault } from '../errors.js';
import { unitsOf, type LengthUnit } from './catalogue.js';
import type { OptionCheck } from './check-options.js';
import { partOf } from './part-of.js';
import type { Length } from './quantity.js';
import type { LengthForm } from './quantity-types.js';
import { shown } from './shown.js';

/**
 * How a printed length shows its steps: as fractions of an inch, or as decimal places of a unit.
 */
export type FormatStyle =
  | {
      /** Feet and inches, or inches, with a fraction. */
      readonly kind: 'fraction';
      /** The step to round to. */
      readonly step: Length;
      /** Steps in an inch, a power of two. */
      readonly partsPerInch: number;
      /** True for inches alone, without feet. */
      readonly isInches: boolean;
    }
  | {
      /** One unit with decimal places. */
      readonly kind: 'decimal';
      /** The step to round to. */
      readonly step: Length;
      /** The unit that is printed. */
      readonly unit: LengthUnit;
      /** Decimal places of that unit. */
      readonly places: number;
      /** One step in units of the last place printed. */
      readonly lastPlaces: number;
      /** True for feet and inches with decimals of an inch. */
      readonly hasFeet: boolean;
    };

/** Parts of a unit in a step. */
const DEFAULT_STEP: Readonly<Record<LengthForm, readonly [parts: number, unit: LengthUnit]>> = {
  'ft-in': [16, 'in'],
  in: [16, 'in'],
  ft: [100, 'ft'],
  yd: [100, 'yd'],
  'ft-us': [100, 'ft-us'],
  mm: [1, 'mm'],
  cm: [10, 'cm'],
  m: [1000, 'm'],
  km: [1000, 'km'],
  mi: [1000, 'mi'],
};

const TAPE_PARTS: readonly number[] = [1, 2, 4, 8, 16, 32, 64, 128];
const styles = new Map<LengthForm, FormatStyle>();
const stepStyles = new WeakMap<Length, Map<LengthForm, FormatStyle>>();

/** How lengths print in a form to the nearest step; worked out once. Internal. */
export function formatStyle(form: LengthForm, nearest?: Length): FormatStyle {
  if (nearest !== undefined) return styleOfStep(form, nearest);
  const known = styles.get(form);
  if (known !== undefined) return known;
  const [parts, unit] = DEFAULT_STEP[form];
  const style = styleOf(form, partOf(1, parts, unit));
  styles.set(form, style);
  return style;
}

function styleOfStep(form: LengthForm, step: Length): FormatStyle {
  const own = stepStyles.get(step) ?? new Map<LengthForm, FormatStyle>();
  const known = own.get(form);
  if (known !== undefined) return known;
  const style = styleOf(form, step);
  stepStyles.set(step, own.set(form, style));
  return style;
}

/** A printed form of a length as an option. Internal. */
export const isLengthForm: OptionCheck = (form) => {
  if (typeof form === 'string' && Object.hasOwn(DEFAULT_STEP, form)) return undefined;
  const choices = `ft-in, ${unitsOf('length').join(', ')}`;
  const message = `${shown(form)} is not a form of a length. Use one of ${choices}`;
  return { code: 'UNIT_UNKNOWN', message, params: { choices } };
};

function styleOf(form: LengthForm, step: Length): FormatStyle {
  if (step.isZero() || step.isNegative()) {
    throw fault(
      'INCREMENT_NOT_POSITIVE',
      'the step is not greater than zero. Write a positive step, such as "1/16 in"',
    );
  }
  if (form === 'ft-in' || form === 'in') {
    const partsPerInch = TAPE_PARTS.find((parts) => step.times(parts).to('in').eq(1));
    if (partsPerInch !== undefined) {
      return { kind: 'fraction', step, partsPerInch, isInches: form === 'in' };
    }
  }
  const unit = form === 'ft-in' ? 'in' : form;
  const places = placesOf(step, unit);
  if (places === undefined) {
    throw fault(
      'INCREMENT_UNSUITABLE',
      `lengths in ${unit} cannot be rounded to ${step.toString()}. Write a step in ${unit}, or print in another unit`,
      { unit, step: step.toString() },
    );
  }
  const lastPlaces = step
    .to(unit)
    .times(10 ** places)
    .toNumber();
  return { kind: 'decimal', step, unit, places, lastPlaces, hasFeet: form === 'ft-in' };
}

/** Decimal places that show every multiple of the step exactly, up to 9. */
function placesOf(step: Length, unit: LengthUnit): number | undefined {
  const places = step.to(unit).decimalPlaces();
  return places <= 9 ? places : undefined;
}
