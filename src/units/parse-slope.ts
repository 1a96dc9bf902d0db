import { fault } from '../errors.js';
import { unitsOf, type SlopeUnit } from './catalogue.js';
import { isHyphen, isLetter, isSpace, skipSpaces } from './characters.js';
import { lengthWord } from './length-words.js';
import { parseLength } from './parse-length.js';
import { parseMeasure, type ParseMeasureOptions } from './parse-measure.js';
import { exactOf, fromSI, fromUnit, type Angle, type Length, type Slope } from './quantity.js';
import { compareRatios, divideRatios, ONE_RATIO, signOfRatio, type Ratio } from './ratio.js';
import { readingFault } from './reading-fault.js';
import { scanAmount, startsAmount } from './scan-amount.js';
import { slopeOfAngle } from './slope-angle.js';

const LONGEST_TEXT = 120;
const SLOPE_WORDS: Readonly<Record<string, SlopeUnit>> = {
  '%': 'percent',
  percent: 'percent',
  'per cent': 'percent',
  pct: 'percent',
  ratio: 'ratio',
};

/**
 * Reads a slope from text, exactly where the form is exact.
 *
 * Forms: `2%`, `2 percent`; `1:48` (rise 1 in a run of 48) and `2:1` (a batter, run 2 to a rise of
 * 1): one side must be 1; `1/4 in per ft`, `1/4"/ft`, `6 in in 10 ft`, `20 mm/m`; `1.2 deg`. A sign
 * in front is kept: which way is down is for the caller to say.
 *
 * @param text - up to 120 characters
 * @returns rise over run
 * @throws `NO_UNIT` for a bare number, `SLOPE_AMBIGUOUS` for a ratio such as 3:4, and the reading
 *   codes of lengths
 * @example
 * parseSlope('1/4 in per ft').equals(parseSlope('1:48')) //=> true
 * parseSlope('-2%').to('mm/m').toString() //=> '-20'
 */
export function parseSlope(text: string, options: ParseMeasureOptions = {}): Slope {
  if (text.length > LONGEST_TEXT) throw readingFault('TOO_LONG', text, LONGEST_TEXT);
  const start = skipSpaces(text, 0);
  if (start === text.length) throw readingFault('EMPTY', text, 0);
  const isNegative = isHyphen(text, start);
  const from = isNegative || text[start] === '+' ? start + 1 : start;
  if (isSpace(text, from)) throw readingFault('SIGN_SPACE', text, from);
  if (!startsAmount(text, from, options.decimalComma)) throw readingFault('NO_NUMBER', text, from);
  const slope = readUnsigned(text, from, options);
  return isNegative ? slope.negated() : slope;
}

function readUnsigned(text: string, from: number, options: ParseMeasureOptions): Slope {
  const division = findDivision(text, from);
  if (division !== undefined) return readRiseOverRun(text, from, division, options);
  const amount = scanAmount(text, from, { ...options, finest: 128 });
  const at = skipSpaces(text, amount.end);
  if (text[at] === ':') return readRatio(text, amount.value, at, options);
  const name = text.slice(at).trim().toLowerCase();
  if (name === '') throw readingFault('NO_UNIT', text, at);
  if (Object.hasOwn(SLOPE_WORDS, name)) {
    return fromUnit('slope', amount.value, SLOPE_WORDS[name] ?? 'ratio');
  }
  if (/^(?:deg|degrees?|°)$/.test(name)) {
    const angle: Angle = parseMeasure('angle', text.slice(from), options);
    return slopeOfAngle(angle);
  }
  throw fault(
    'UNIT_UNKNOWN',
    `${JSON.stringify(name)} is no slope; write 2%, 1:48, 1/4 in per ft, 20 mm/m or 1.2 deg`,
    { text, position: at, choices: unitsOf('slope').join(', ') },
  );
}

/** `1:n` (rise 1) or `n:1` (run n, as batters are written): the same slope, 1 / n. */
function readRatio(text: string, first: Ratio, colon: number, options: ParseMeasureOptions): Slope {
  const at = skipSpaces(text, colon + 1);
  if (!startsAmount(text, at, options.decimalComma)) throw readingFault('NO_NUMBER', text, at);
  const { value: second, end } = scanAmount(text, at, { ...options, finest: 128 });
  if (skipSpaces(text, end) < text.length) throw readingFault('BAD_CHARACTER', text, end);
  const n = isOne(first) ? second : isOne(second) ? first : undefined;
  if (n === undefined) throw readingFault('SLOPE_AMBIGUOUS', text, colon);
  if (signOfRatio(n) === 0) throw readingFault('ZERO_DENOMINATOR', text, at);
  return fromSI('slope', divideRatios(ONE_RATIO, n));
}

const isOne = (value: Ratio): boolean => compareRatios(value, ONE_RATIO) === 0;

interface Division {
  readonly end: number;
  readonly resume: number;
}

/** Finds ` per `, ` in ` between two lengths, or a slash followed by a unit. */
function findDivision(text: string, from: number): Division | undefined {
  for (let at = from; at < text.length; at += 1) {
    if (text[at] === '/' && isLetter(text, at + 1)) return { end: at, resume: at + 1 };
    if (!isSpace(text, at)) continue;
    const word = skipSpaces(text, at);
    if (isWordAt(text, word, 'per')) return { end: at, resume: word + 3 };
    // "6 in in 10 ft": the second "in" divides, the first is a unit
    if (isWordAt(text, word, 'in') && startsAmount(text, skipSpaces(text, word + 2))) {
      return { end: at, resume: word + 2 };
    }
  }
  return undefined;
}

function isWordAt(text: string, at: number, word: string): boolean {
  return text.slice(at, at + word.length).toLowerCase() === word && isSpace(text, at + word.length);
}

function readRiseOverRun(
  text: string,
  from: number,
  { end, resume }: Division,
  options: ParseMeasureOptions,
): Slope {
  const riseText = text.slice(from, end);
  const at = skipSpaces(text, resume);
  const runText = text.slice(at).trim();
  if (!hasUnit(riseText)) return readOneIn(text, from, at, options);
  const rise = parseLength(riseText, options);
  const run = startsAmount(text, at, options.decimalComma)
    ? parseLength(runText, options)
    : oneOf(text, runText, at);
  if (run.isZero()) throw readingFault('ZERO_DENOMINATOR', text, at);
  return fromSI('slope', divideRatios(exactOf(rise), exactOf(run)));
}

const hasUnit = (text: string): boolean => /[a-z'"′″’”]/i.test(text);

/** `1 in 48`: a ratio in words. */
function readOneIn(text: string, from: number, at: number, options: ParseMeasureOptions): Slope {
  const first = scanAmount(text, from, { ...options, finest: 128 });
  return readRatio(text, first.value, at - 1, options);
}

function oneOf(text: string, name: string, at: number): Length {
  const unit = lengthWord(name.replace(/\.$/, ''));
  if (unit === undefined) throw readingFault('UNKNOWN_WORD', text, at);
  if (unit === 'wrong-case') throw readingFault('CASE', text, at);
  return fromUnit('length', ONE_RATIO, unit);
}
