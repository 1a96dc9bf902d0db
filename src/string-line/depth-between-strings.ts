import { makeReader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { divideRatios, multiplyRatios } from '../units/ratio.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { ELEVATION, LEVEL, SPAN, STATION } from './limits.js';

/** What a measure down from a line across two strings says. */
export interface DepthBetweenStrings extends Worked {
  /** The surface that is worked to. */
  readonly surface: string;
  /** The straight from string to string at the place. */
  readonly straight: Length;
  /** The line across the strings there: lower by its own sag. */
  readonly line: Length;
  /** Where the surface should be. */
  readonly target: Length;
  /** What to measure down from the line to the surface. */
  readonly measureDown: Length;
  /** Where the surface is, if it was measured. */
  readonly elevation?: Length;
  /** What is left: cut positive, fill negative. */
  readonly cut?: Length;
  readonly action?: 'cut' | 'fill' | 'none';
  /** Judged where a tolerance is given. */
  readonly verdict?: Verdict;
  /** True for a place outside the two strings, where the straight is carried on. */
  readonly extrapolated: boolean;
  readonly note: string;
}

/**
 * Depth between two edge strings, from a line or a straight board laid across them:
 * `z = zl + (zr - zl) x / W - sag`, x from the left string of W apart. The surface should be at
 * `target = zl + (zr - zl) x / W - below`, so that the measure down is `below - sag`. Exact.
 *
 * Both strings stand the same height above a finish that is straight from the one to the other. A
 * crown or a valley between them needs a third string on the break.
 *
 * @param options.left - elevation of the left string beside the place [length]
 * @param options.right - elevation of the right string beside the place [length]
 * @param options.width - from string to string [length]
 * @param options.fromLeft - from the left string to the place [length]
 * @param options.surface - name of the surface that is worked to, such as `subgrade`
 * @param options.below - that surface below the strings, as designed [length, positive down]
 * @param options.sag - of the line across, at the place [length], default none: a board has none, for a
 *   line see `stringSag`
 * @param options.measured - measured down from the line to the surface as it is [length], if it was
 * @param options.tolerance - up or down [length], if the surface is to be judged
 * @param options.uncertainty - of the measure [length], for the verdict, default none
 * @returns elevations, the measure down [length, positive down], what is left [length, cut positive],
 *   verdict; `extrapolated` outside the strings
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY` and the reading codes
 * @source derived
 * @example
 * const spot = depthBetweenStrings({
 *   left: '30.15 m',
 *   right: '30.046 m',
 *   width: '5 m',
 *   fromLeft: '2 m',
 *   surface: 'subgrade',
 *   below: '435 mm',
 *   sag: '1.5 mm',
 *   measured: '440 mm',
 * });
 * spot.line.to('m').toString() //=> '30.1069'
 * spot.measureDown.to('mm').toString() //=> '433.5'
 * spot.cut?.to('mm').toString() //=> '-6.5'
 * spot.action //=> 'fill'
 */
export function depthBetweenStrings(options: {
  readonly left: LengthInput;
  readonly right: LengthInput;
  readonly width: LengthInput;
  readonly fromLeft: LengthInput;
  readonly surface: string;
  readonly below: LengthInput;
  readonly sag?: LengthInput;
  readonly measured?: LengthInput;
  readonly tolerance?: LengthInput;
  readonly uncertainty?: LengthInput;
}): DepthBetweenStrings {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const read = (name: string, rule: typeof LEVEL) =>
    reader.quantity('length', fields[name], [name], rule);
  const optional = (name: string, rule: typeof LEVEL) =>
    fields[name] === undefined ? undefined : read(name, rule);
  const [left, right] = [read('left', ELEVATION), read('right', ELEVATION)];
  const [width, fromLeft] = [read('width', SPAN), read('fromLeft', STATION)];
  const surface = reader.text(fields['surface'], ['surface']);
  const below = read('below', LEVEL);
  const sag = optional('sag', NOT_NEGATIVE) ?? NOTHING;
  const measured = optional('measured', LEVEL);
  const tolerance = optional('tolerance', NOT_NEGATIVE);
  const uncertainty = optional('uncertainty', NOT_NEGATIVE) ?? NOTHING;
  reader.finish();

  const share = divideRatios(exactOf(fromLeft), exactOf(width));
  const rise = fromSI('length', multiplyRatios(exactOf(right.minus(left)), share));
  const straight = left.plus(rise);
  const line = straight.minus(sag);
  const target = straight.minus(below);
  const cut = measured === undefined ? undefined : below.minus(sag).minus(measured);
  const extrapolated = fromLeft.isNegative() || fromLeft.compare(width) > 0;
  return withWorking(
    {
      surface,
      straight,
      line,
      target,
      measureDown: below.minus(sag),
      ...(measured === undefined ? {} : { elevation: line.minus(measured) }),
      ...(cut === undefined ? {} : { cut, action: actionOf(cut) }),
      ...(cut === undefined || tolerance === undefined
        ? {}
        : { verdict: verdictOf(tolerance.minus(cut.abs()), uncertainty) }),
      extrapolated,
      note: extrapolated ? NOTES.outside : NOTES.between,
    },
    () => showWorking({ left, right, width, fromLeft, sag, below, line, target, cut, measured }),
  );
}

const NOTHING = length(0, 'm');
const NOT_NEGATIVE = Object.freeze({ ...LEVEL, sign: 'not-negative' } as const);

const actionOf = (cut: Length): 'cut' | 'fill' | 'none' =>
  cut.isZero() ? 'none' : cut.isNegative() ? 'fill' : 'cut';

const NOTES = {
  between: 'A crown or a valley between the strings needs a third string on the break.',
  outside: 'Outside the two strings: their straight is carried on.',
} as const;

interface Across {
  readonly left: Length;
  readonly right: Length;
  readonly width: Length;
  readonly fromLeft: Length;
  readonly sag: Length;
  readonly below: Length;
  readonly line: Length;
  readonly target: Length;
  readonly cut: Length | undefined;
  readonly measured: Length | undefined;
}

function showWorking(of: Across): Step[] {
  const across = [
    given('zl', 'left string', of.left),
    given('zr', 'right string', of.right),
    given('x', 'from the left string', of.fromLeft),
    given('W', 'from string to string', of.width),
  ];
  const steps: Step[] = [
    {
      title: 'The line across the strings',
      formula: 'z = zl + (zr - zl) x / W - f',
      given: [...across, given('f', 'sag of the line', of.sag)],
      result: given('z', 'line', of.line),
      source: 'derived',
    },
    {
      title: 'Where the surface should be',
      formula: 't = zl + (zr - zl) x / W - b',
      given: [...across, given('b', 'below the strings', of.below)],
      result: given('t', 'target', of.target),
      source: 'derived',
    },
  ];
  if (of.cut === undefined || of.measured === undefined) return steps;
  const left: Step = {
    title: 'What is left (cut +, fill -)',
    formula: 'c = b - f - m',
    given: [
      given('b', 'below the strings', of.below),
      given('f', 'sag of the line', of.sag),
      given('m', 'measured down', of.measured),
    ],
    result: given('c', 'cut', of.cut),
    source: 'derived',
  };
  return [...steps, left];
}
