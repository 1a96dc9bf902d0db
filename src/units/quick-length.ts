import { smallDecimal, type SmallDecimal } from './small-decimal.js';

/** An inch is 128 parts of 0.000 198 437 5 m, exactly: every mark of a tape is a whole number of them. */
const PARTS = 128;
const METRES_PER_PART = { n: 1_984_375, d: 10_000_000_000 } as const;

/** Units that may follow a decimal number: metres in one of them, as n / d. */
const DECIMAL_UNITS: Readonly<Record<string, SmallDecimal>> = {
  mm: { n: 1, d: 1000 },
  cm: { n: 1, d: 100 },
  m: { n: 1, d: 1 },
  in: { n: 254, d: 10_000 },
  ft: { n: 3048, d: 10_000 },
};

/**
 * Reads the plainest and commonest lengths in one look: `7' 3 5/8"`, `12 ft`, `3 1/4 in`, `1.675 m`.
 * Gives up (undefined) on everything else, faults too: the full reader then decides. What it does
 * read, the full reader reads alike; a property test holds the two together.
 *
 * @returns metres as a small decimal, or undefined
 */
export function quickLength(text: string): SmallDecimal | undefined {
  const isNegative = text.charCodeAt(0) === 45;
  const start = isNegative ? 1 : 0;
  const first = wholeAt(text, start);
  const end = start + digitsAt(text, start);
  if (end === start || end > start + 6) return undefined;
  if (text.charCodeAt(end) === 46) return quickDecimal(text, first, end + 1, isNegative);
  const unit = unitAt(text, end);
  if (unit === 'ft') return quickFeet(text, first, end, isNegative);
  if (unit === undefined || unit === 'in') return quickInches(text, start, undefined, isNegative);
  return tailOf(text, end, unit) ? inUnit(first, 1, unit, isNegative) : undefined;
}

function quickFeet(
  text: string,
  feet: number,
  end: number,
  isNegative: boolean,
): SmallDecimal | undefined {
  const isMark = text.charCodeAt(end) === 39;
  let at = isMark ? end + 1 : skipSpace(text, end) + 2;
  if (at === text.length) return inUnit(feet, 1, 'ft', isNegative);
  const after = skipSpace(text, at);
  if (!isMark && after === at) return undefined;
  at = after;
  return quickInches(text, at, feet, isNegative);
}

/** Inches with a fraction, or a fraction alone, on top of what the feet hold. */
function quickInches(
  text: string,
  start: number,
  feet: number | undefined,
  isNegative: boolean,
): SmallDecimal | undefined {
  const first = wholeAt(text, start);
  let at = start + digitsAt(text, start);
  if (at === start || at > start + 6) return undefined;
  let parts = first * PARTS;
  const isFraction = text.charCodeAt(at) === 47;
  const isMixed = text.charCodeAt(at) === 32 && digitsAt(text, at + 1) > 0;
  if (isFraction || isMixed) {
    const upperAt = isMixed ? at + 1 : start;
    const slash = upperAt + digitsAt(text, upperAt);
    const lowerAt = slash + 1;
    at = lowerAt + digitsAt(text, lowerAt);
    const [upper, lower] = [wholeAt(text, upperAt), wholeAt(text, lowerAt)];
    const isTape = text.charCodeAt(slash) === 47 && PARTS % lower === 0 && at <= lowerAt + 3;
    if (!isTape || slash > upperAt + 4 || (isMixed && upper >= lower)) return undefined;
    parts = (isMixed ? parts : 0) + upper * (PARTS / lower);
  }
  if (feet !== undefined && parts >= 12 * PARTS) return undefined;
  if (unitAt(text, at) !== 'in' || !tailOf(text, at, 'in')) return undefined;
  const all = (feet ?? 0) * 12 * PARTS + parts;
  const n = all * METRES_PER_PART.n;
  return n > Number.MAX_SAFE_INTEGER ? undefined : signed(n, METRES_PER_PART.d, isNegative);
}

function quickDecimal(
  text: string,
  whole: number,
  start: number,
  isNegative: boolean,
): SmallDecimal | undefined {
  const places = digitsAt(text, start);
  if (places === 0 || places > 6) return undefined;
  const scale = 10 ** places;
  const unit = unitAt(text, start + places);
  if (unit === undefined || !tailOf(text, start + places, unit)) return undefined;
  return inUnit(whole * scale + wholeAt(text, start), scale, unit, isNegative);
}

function inUnit(n: number, d: number, unit: string, isNegative: boolean): SmallDecimal | undefined {
  const factor = DECIMAL_UNITS[unit];
  return factor === undefined ? undefined : signed(n * factor.n, d * factor.d, isNegative);
}

const signed = (n: number, d: number, isNegative: boolean): SmallDecimal =>
  smallDecimal(isNegative && n !== 0 ? -n : n, d);

function digitsAt(text: string, start: number): number {
  let at = start;
  for (let code = text.charCodeAt(at); code >= 48 && code <= 57; code = text.charCodeAt(at))
    at += 1;
  return at - start;
}

function wholeAt(text: string, start: number): number {
  let value = 0;
  for (let at = start; ; at += 1) {
    const digit = text.charCodeAt(at) - 48;
    if (!(digit >= 0 && digit <= 9)) return value;
    value = value * 10 + digit;
  }
}

const skipSpace = (text: string, at: number): number => (text.charCodeAt(at) === 32 ? at + 1 : at);

/** The unit that stands at a place, after a space or none; a mark counts as its unit. */
function unitAt(text: string, start: number): string | undefined {
  const at = skipSpace(text, start);
  switch (text.charCodeAt(at)) {
    case 39:
      return text.charCodeAt(at + 1) === 39 || at > start ? undefined : 'ft';
    case 34:
      return at > start ? undefined : 'in';
    case 102:
      return text.charCodeAt(at + 1) === 116 && endsWord(text, at + 2) ? 'ft' : undefined;
    case 105:
      return text.charCodeAt(at + 1) === 110 && endsWord(text, at + 2) ? 'in' : undefined;
    case 99:
      return text.charCodeAt(at + 1) === 109 && endsWord(text, at + 2) ? 'cm' : undefined;
    case 109:
      if (endsWord(text, at + 1)) return 'm';
      return text.charCodeAt(at + 1) === 109 && endsWord(text, at + 2) ? 'mm' : undefined;
    default:
      return undefined;
  }
}

const endsWord = (text: string, at: number): boolean =>
  at === text.length || text.charCodeAt(at) === 32;

/** True where nothing follows the unit. */
function tailOf(text: string, start: number, unit: string): boolean {
  const at = skipSpace(text, start);
  const code = text.charCodeAt(at);
  return at + (code === 34 || code === 39 ? 1 : unit.length) === text.length;
}
