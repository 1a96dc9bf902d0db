import { fault } from '../errors.js';
import { unitsOf, type LengthUnit } from './catalogue.js';
import { readOption, type OptionCheck } from './check-options.js';
import { parseLength } from './parse-length.js';
import { quantityOf, type Length } from './quantity.js';
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

const DEFAULT_STEP: Readonly<Record<LengthForm, string>> = {
  'ft-in': '1/16 in',
  in: '1/16 in',
  ft: '0.01 ft',
  yd: '0.01 yd',
  'ft-us': '0.01 us-ft',
  mm: '1 mm',
  cm: '0.1 cm',
  m: '0.001 m',
  km: '0.001 km',
  mi: '0.001 mi',
};

const TAPE_PARTS: readonly number[] = [1, 2, 4, 8, 16, 32, 64, 128];
const MOST_STYLES = 100;
const styles = new Map<string, FormatStyle>();

/** Works out, and caches, how lengths print in a form to the nearest step. Internal. */
export function formatStyle(form: LengthForm, nearest: string | Length | undefined): FormatStyle {
  if (nearest !== undefined && typeof nearest !== 'string') {
    return readOption('nearest', () => styleOf(form, quantityOf('length', nearest)));
  }
  const key = `${form} ${nearest ?? ''}`;
  const known = styles.get(key);
  if (known !== undefined) return known;
  const style = readOption('nearest', () => styleOf(form, parseStep(form, nearest)));
  if (styles.size < MOST_STYLES) styles.set(key, style);
  return style;
}

/** A printed form of a length as an option. Internal. */
export const isLengthForm: OptionCheck = (form) => {
  if (typeof form === 'string' && Object.hasOwn(DEFAULT_STEP, form)) return undefined;
  const choices = `ft-in, ${unitsOf('length').join(', ')}`;
  const message = `${shown(form)} is not a form of a length. Use one of ${choices}`;
  return { code: 'UNIT_UNKNOWN', message, params: { choices } };
};

function parseStep(form: LengthForm, nearest: string | undefined): Length {
  return parseLength(nearest ?? DEFAULT_STEP[form], { surveyFoot: true });
}

function styleOf(form: LengthForm, step: Length): FormatStyle {
  if (step.isZero() || step.isNegative()) {
    throw fault(
      'INCREMENT_NOT_POSITIVE',
      'the step is not greater than zero. Write a positive step, such as "1/16 in"',
    );
  }
  if (form === 'ft-in' || form === 'in') {
    const partsPerInch = TAPE_PARTS.find((parts) => step.times(parts).to('in').eq(1));
    if (partsPerInch !== undefined) return { kind: 'fraction', step, partsPerInch };
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
