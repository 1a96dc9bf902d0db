/**
 * Why text cannot be read as a measure: what `params.reason` of a `TEXT_UNREADABLE` fault may be, and
 * what each reason means. A reason is stable, like a code: an app may translate by it. The fault's
 * `params.position` is the place in the text, counted from 0.
 */
export const READING_REASONS = Object.freeze({
  EMPTY: 'nothing was typed',
  TOO_LONG: 'text too long to be a measure',
  NO_NUMBER: 'a unit without a number',
  TWO_NUMBERS: 'two numbers with no unit between them',
  RANGE: 'two numbers with a hyphen between: range, subtraction or feet and inches?',
  FRACTIONAL_MAJOR: 'a fraction of a larger unit followed by a smaller unit',
  MINOR_OVERFLOW: 'the smaller part reaches a whole larger unit',
  UNIT_ORDER: 'a smaller unit before a larger one',
  REPEATED_UNIT: 'the same unit twice',
  MIXED_METRIC: 'two metric units in one length',
  MIXED_SYSTEMS: 'two unit systems in one length',
  TRAILING_NUMBER: 'a number after the last unit',
  ZERO_DENOMINATOR: 'a fraction over zero',
  IMPROPER_FRACTION: 'a fraction of one or more by itself: is a space missing?',
  IMPROPER_MIXED: 'a mixed number whose fraction is one or more',
  DECIMAL_AND_FRACTION: 'a decimal and a fraction in one number',
  DENOMINATOR: 'a denominator that is on no tape',
  MALFORMED_FRACTION: 'a fraction that is not one whole number over another',
  TRAILING_POINT: 'a decimal point with no digit after it',
  POINT_AFTER_UNIT: 'a point right after a unit: decimals of the unit, or of inches?',
  TWO_POINTS: 'two decimal points in one number',
  EXPONENT: 'a power of ten in another form than JavaScript prints small numbers in',
  COMMA: 'a comma: decimal or grouping?',
  GROUPING: 'three digits after a decimal comma: are they thousands?',
  MARK_RUN: 'the same mark twice in a row',
  UNIT_RUN: 'two different units in a row',
  DOUBLE_HYPHEN: 'two hyphens in a row',
  HYPHEN_SIGN: 'a hyphen that may be a minus sign',
  DANGLING_HYPHEN: 'a hyphen with no number after it',
  SIGN_SPACE: 'a sign set apart from its number',
  SIGN_RUN: 'two signs in a row',
  PRODUCT: 'a product of two lengths',
  QUALIFIER: 'an approximation or a comparison sign',
  RATIO: 'a ratio instead of a length',
  RATE: 'a length per length instead of a length',
  SUPERSCRIPT: 'an area or volume unit instead of a length',
  CASE: 'an SI symbol in the wrong case',
  SURVEY_FOOT: 'the US survey foot without the option that allows it',
  NON_ASCII_DIGIT: 'a digit from another script',
  HIDDEN_CHARACTER: 'an invisible character',
  BAD_CHARACTER: 'a character that does not belong in a measure',
  RATIO_BELOW_ONE: 'a ratio that could be rise to run or run to rise',
  SLOPE_AMBIGUOUS: 'a ratio in which neither side is 1',
} as const);

/** A reason for which text cannot be read: a key of {@link READING_REASONS}. */
export type ReadingReason = keyof typeof READING_REASONS;
