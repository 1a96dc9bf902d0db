import { fault, isSettlineError, type SettlineError } from '../errors.js';
import { unitsOf, type SlopeUnit } from './catalogue.js';
import { isFootMark, isInchMark, isLetter, isSpace, skipSpaces } from './characters.js';
import { lengthWord } from './length-words.js';
import { parseLength } from './parse-length.js';
import { MEASURE_CHECKS, parseMeasure, type ParseMeasureOptions } from './parse-measure.js';
import { exactOf, fromSI, fromUnit, type Angle, type Length, type Slope } from './quantity.js';
import {
  compareRatios,
  divideRatios,
  ONE_RATIO,
  roughNumber,
  signOfRatio,
  type Ratio,
} from './ratio.js';
import { readingFault, unitMissing, unitUnknown } from './reading-fault.js';
import type { ReadingReason } from './reading-reasons.js';
import { scanAmount, startsAmount } from './scan-amount.js';
import { startOfNumber, startOfText } from './start-of-text.js';
import { shownText } from '../shown-text.js';
import { shown } from './shown.js';
import { slopeOfAngle } from './slope-angle.js';

const SLOPE_WORDS: Readonly<Record<string, SlopeUnit>> = {
  '%': 'percent',
  percent: 'percent',
  'per cent': 'percent',
  pct: 'percent',
  ratio: 'ratio',
};

/**
 *
 * Reads a slope from text. The result is exact unless the text is an angle.
 *
 * Forms: `2%`, `2 percent`, `2 per cent`; `1:48` (rise 1 in a run of 48), `1 in 48`, and `2:1` (a
 * batter, run 2 to a rise of 1): one side must be 1 and the other no less; `1/4 in per ft`,
 * `1/4" / ft`, `6 in in 10 ft`, `1 in 12 ft` (an inch in twelve feet), `20 mm/m`; `1.2 deg`. A sign
 * in front is kept: you choose which way is down.
 *
 * @param text - up to 120 characters
 * @returns rise over run
 * @param options - see {@link ParseMeasureOptions}
 * @throws `UNIT_MISSING` for a bare number; `TEXT_UNREADABLE` with `params.reason`, one of
 *   {@link READING_REASONS}, such as `SLOPE_AMBIGUOUS` for a ratio of 3:4; `UNIT_UNKNOWN`,
 *   `OUT_OF_RANGE` for the vertical, `UNKNOWN_FIELD`, `WRONG_TYPE`
 * @example
 * parseSlope('1/4 in per ft').equals(parseSlope('1:48')) //=> true
 * parseSlope('-2%').to('mm/m').toString() //=> '-20'
 */
export function parseSlope(text: string, options: ParseMeasureOptions = {}): Slope {
  const start = startOfText(text, { what: 'a slope', options, checks: MEASURE_CHECKS });
  const { isNegative, from } = startOfNumber(text, start, options.decimalComma);
  const slope = readUnsigned(text, from, options);
  return isNegative ? slope.negated() : slope;
}

function readUnsigned(text: string, from: number, options: ParseMeasureOptions): Slope {
  const division = findDivision(text, from, options.decimalComma);
  if (division !== undefined) return readRiseOverRun(text, from, division, options);
  const amount = scanAmount(text, from, { ...options, finest: 128 });
  const at = skipSpaces(text, amount.end);
  if (text[at] === ':') return readRatio(text, amount.value, at, options);
  const name = text.slice(at).trim().toLowerCase().replace(/\s+/g, ' ');
  if (name === '') throw unitMissing('slope', text, at);
  if (Object.hasOwn(SLOPE_WORDS, name)) {
    return fromUnit('slope', amount.value, SLOPE_WORDS[name] ?? 'ratio');
  }
  if (/^(?:deg|degrees?|°)$/.test(name)) {
    const angle: Angle = parseMeasure('angle', text.slice(from), options);
    return slopeOfAngle(angle);
  }
  throw fault(
    'UNIT_UNKNOWN',
    `${shown(name)} is not a slope. Write 2%, 1:48, 1/4 in per ft, 20 mm/m or 1.2 deg`,
    { text: shownText(text), position: at, choices: unitsOf('slope').join(', ') },
  );
}

interface Sides {
  readonly first: Ratio;
  readonly second: Ratio;
}

/** `1:n` (rise 1) or `n:1` (run n, as batters are written): the same slope, 1 / n. */
function readRatio(text: string, first: Ratio, colon: number, options: ParseMeasureOptions): Slope {
  const at = skipSpaces(text, colon + 1);
  const second = readSecond(text, at, options);
  const n = isOne(first) ? second : isOne(second) ? first : undefined;
  if (n === undefined) throw ambiguous('SLOPE_AMBIGUOUS', text, colon, { first, second });
  return oneIn(text, n, colon, { first, second });
}

/** `1 in 48`: the rise is 1, never the run. */
function readOneIn(text: string, from: number, at: number, options: ParseMeasureOptions): Slope {
  const { value: first } = scanAmount(text, from, { ...options, finest: 128 });
  const second = readSecond(text, at, options);
  if (isOne(first)) return oneIn(text, second, at, { first, second });
  const reason = isOne(second) ? 'RATIO_BELOW_ONE' : 'SLOPE_AMBIGUOUS';
  throw ambiguous(reason, text, at, { first, second });
}

/** The second number of a ratio, to the end of the text. */
function readSecond(text: string, at: number, options: ParseMeasureOptions): Ratio {
  if (!startsAmount(text, at, options.decimalComma)) throw readingFault('NO_NUMBER', text, at);
  const { value, end } = scanAmount(text, at, { ...options, finest: 128 });
  if (skipSpaces(text, end) < text.length) throw readingFault('BAD_CHARACTER', text, end);
  return value;
}

/** One in n. Below one it would be steeper than 100%: 0.02:1 was meant the other way round. */
function oneIn(text: string, n: Ratio, position: number, sides: Sides): Slope {
  if (signOfRatio(n) === 0) throw readingFault('ZERO_DENOMINATOR', text, position);
  if (compareRatios(n, ONE_RATIO) < 0) {
    throw ambiguous('RATIO_BELOW_ONE', text, position, sides);
  }
  return fromSI('slope', divideRatios(ONE_RATIO, n));
}

const isOne = (value: Ratio): boolean => compareRatios(value, ONE_RATIO) === 0;

/** The fault of a ratio that can be read two ways, with both readings. */
function ambiguous(
  reason: ReadingReason,
  text: string,
  position: number,
  { first, second }: Sides,
): SettlineError {
  if (signOfRatio(first) === 0 || signOfRatio(second) === 0) {
    return readingFault('ZERO_DENOMINATOR', text, position);
  }
  const [rise, run] = [percent(divideRatios(first, second)), percent(divideRatios(second, first))];
  const hint = `${rise} (rise to run) or ${run} (run to rise)? Write it in percent`;
  return readingFault(reason, text, position, hint);
}

const percent = (ratio: Ratio): string => `${Number((100 * roughNumber(ratio)).toPrecision(4))}%`;

interface Division {
  readonly end: number;
  readonly resume: number;
}

/** Finds ` per ` or ` in ` between two lengths, or a slash after or before a unit. */
function findDivision(text: string, from: number, decimalComma?: boolean): Division | undefined {
  for (let at = from; at < text.length; at += 1) {
    if (text[at] === '/' && isRate(text, at)) return { end: at, resume: at + 1 };
    if (!isSpace(text, at)) continue;
    const word = skipSpaces(text, at);
    if (isWordAt(text, word, 'per') && !PER_CENT.test(text.slice(word))) {
      return { end: at, resume: word + 3 };
    }
    // "6 in in 10 ft": the second "in" divides, the first is a unit
    if (
      isWordAt(text, word, 'in') &&
      startsAmount(text, skipSpaces(text, word + 2), decimalComma)
    ) {
      return { end: at, resume: word + 2 };
    }
  }
  return undefined;
}

const PER_CENT = /^per\s+cent\s*$/i;

/** A slash that is not part of a fraction: before or after a unit. */
function isRate(text: string, slash: number): boolean {
  let before = slash - 1;
  while (isSpace(text, before)) before -= 1;
  return isLetter(text, skipSpaces(text, slash + 1)) || isUnitEnd(text, before);
}

const isUnitEnd = (text: string, at: number): boolean =>
  isLetter(text, at) || isFootMark(text, at) || isInchMark(text, at);

function isWordAt(text: string, at: number, word: string): boolean {
  return text.slice(at, at + word.length).toLowerCase() === word && isSpace(text, at + word.length);
}

function readRiseOverRun(
  text: string,
  from: number,
  { end, resume }: Division,
  options: ParseMeasureOptions,
): Slope {
  const riseText = text.slice(from, end).trim();
  const at = skipSpaces(text, resume);
  const runText = text.slice(at).trim();
  const isIn = text.slice(resume - 2, resume).toLowerCase() === 'in';
  if (!hasUnit(riseText)) {
    if (!isIn || !hasUnit(runText)) return readOneIn(text, from, at, options);
    return readInchesIn(text, riseText, { runText, at }, options);
  }
  const rise = partAt(from, () => parseLength(riseText, options));
  return riseOverRun(text, rise, { runText, at }, options);
}

interface Run {
  readonly runText: string;
  readonly at: number;
}

function riseOverRun(
  text: string,
  rise: Length,
  { runText, at }: Run,
  options: ParseMeasureOptions,
): Slope {
  const run = startsAmount(text, at, options.decimalComma)
    ? partAt(at, () => parseLength(runText, options))
    : oneOf(text, runText, at);
  if (run.isZero()) throw readingFault('ZERO_DENOMINATOR', text, at);
  return fromSI('slope', divideRatios(exactOf(rise), exactOf(run)));
}

/** Reads a part of the text; a fault keeps its position in the whole. */
function partAt(offset: number, read: () => Length): Length {
  try {
    return read();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    const position = Number(error.params['position'] ?? 0) + offset;
    throw fault(error.code, error.message, { ...error.params, position });
  }
}

/** `1 in 12 ft`: the run has a unit, so "in" is the unit of the rise. */
function readInchesIn(
  text: string,
  riseText: string,
  run: Run,
  options: ParseMeasureOptions,
): Slope {
  // inches over metres: more likely a ratio with a unit too many
  if (/m(?:et(?:er|re)s?)?\.?$/i.test(run.runText)) {
    throw readingFault('SLOPE_AMBIGUOUS', text, run.at);
  }
  return riseOverRun(text, parseLength(`${riseText} in`, options), run, options);
}

const hasUnit = (text: string): boolean =>
  /[a-z'"\u00b4\u02b9\u02ba\u2018-\u201d\u2032\u2033]/i.test(text);

function oneOf(text: string, name: string, at: number): Length {
  const unit = lengthWord(name.replace(/\.$/, ''));
  if (unit === undefined) throw unitUnknown('length', name, at);
  if (unit === 'wrong-case') throw readingFault('CASE', text, at);
  return fromUnit('length', ONE_RATIO, unit);
}
