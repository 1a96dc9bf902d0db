import { printed, printedNumber } from './reference-value.js';

/**
 * Angle of repose of loose material, from flat to steep. Source: `production-handbook`, p. 30-2.
 */
export const REPOSE_ANGLES = Object.freeze({
  'earth, dry': range('20', '45'),
  'earth, moist': range('25', '45'),
  'earth, wet': range('25', '30'),
  gravel: range('30', '50'),
  'sand-clay gravel': range('20', '35'),
  'sand, dry': range('20', '30'),
  'sand, moist': range('30', '45'),
  'sand, wet': range('20', '45'),
});

function range(minimum: string, maximum: string) {
  return Object.freeze({
    minimum: printed(minimum, 'deg', 'production-handbook'),
    maximum: printed(maximum, 'deg', 'production-handbook'),
  });
}

/** Loose volume in a loader bucket over its rated volume. Source: `production-handbook`, p. 30-2. */
export const FILL_FACTORS = Object.freeze({
  'moist loam': share('1.00', '1.10'),
  'soil with boulders and roots': share('0.80', '1.00'),
  'mixed moist aggregate': share('0.95', '1.00'),
  'uniform aggregate, 12 to 20 mm': share('0.85', '0.90'),
  'rock and dirt': share('1.00', '1.20'),
});

function share(minimum: string, maximum: string) {
  return Object.freeze({
    minimum: printedNumber(minimum, 'production-handbook'),
    maximum: printedNumber(maximum, 'production-handbook'),
  });
}

/**
 * Pressure that soft ground carries under a wheel, over its undrained shear strength, for unpaved
 * aggregate roads. Source: `fm-5-430`.
 */
export const WHEEL_SCREEN = Object.freeze({
  plain: printedNumber('2.8', 'fm-5-430'),
  geotextile: printedNumber('5.0', 'fm-5-430'),
});
