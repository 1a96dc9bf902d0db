import { optional, quantity } from '../input/field.js';
import { GRADE, SITE_LENGTH, SITE_LENGTH_OR_NONE, TOLERANCE_OF_SOME } from '../input/ranges.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import { Decimal40, type Decimal } from '../units/decimal.js';
import type { Force, Length } from '../units/quantity.js';
import { NO_SLOPE } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import {
  catenarySag,
  metres,
  midspanSag,
  parabolaSag,
  requireTaut,
  shapeLength,
  STRING,
  type StringInput,
} from './hanging-line.js';
import { solveFor } from './solve-for.js';

/** A string from tie to tie. */
export interface StringSagOptions extends StringInput {
  /** Level distance from tie to tie [length], more than 0 and at most 10 km. */
  readonly span: LengthInput;
  /**
   * Slope of the straight line between the ties [slope], rise over run, up to 1 either way.
   * Default: level.
   */
  readonly slope?: SlopeInput;
  /**
   * A further point to give the sag at: level distance from the first tie [length], 0 to the span.
   * Default: none.
   */
  readonly from?: LengthInput;
  /**
   * Maximum sag [length], more than 0 and at most half the span. It sets the maximum span and the
   * minimum tension. Default: not judged.
   */
  readonly tolerance?: LengthInput;
}

const OPTIONS = shapeOf<StringSagOptions>()({
  span: quantity(SITE_LENGTH),
  ...STRING,
  slope: optional(quantity(GRADE), NO_SLOPE),
  from: optional(quantity(SITE_LENGTH_OR_NONE)),
  tolerance: optional(quantity(TOLERANCE_OF_SOME)),
});

/** The sag at one point of a string. */
export interface SagAt {
  /** Level distance from the first tie [length]. */
  readonly from: Length;
  /** Sag below the straight line between the ties [length], as a catenary. */
  readonly sag: Length;
}

/** How far a string sags below the straight line between its ties. */
export interface StringSag extends Worked {
  /** Sag at midspan, as a parabola [length]. Work with this one. */
  readonly sagAtMidspan: Length;
  /** Sag at midspan, as an exact catenary [length]: slightly more. */
  readonly catenarySag: Length;
  /** The sag at `from`; null if you gave none. */
  readonly at: SagAt | null;
  /** Sag in the middle of each half if you set a stake at midspan [length], as a catenary. */
  readonly sagWithMidStake: Length;
  /** True if the catenary is within the tolerance; null without one. */
  readonly inTolerance: boolean | null;
  /** Maximum span within the tolerance at this tension [length]; null without a tolerance. */
  readonly maximumSpan: Length | null;
  /** Minimum tension within the tolerance on this span [force]; null without a tolerance. */
  readonly minimumTension: Force | null;
  /** What to do, in words. */
  readonly note: string;
}

/**
 *
 * Sag of a string under its own weight: in the middle `f = w L^2 / (8 H)` as a parabola, exactly, and
 * `f = (H / w) (cosh(w L / (2 H)) - 1)` as a catenary, to 40 digits. A string that sags is low between
 * its stakes: if you measure a fixed depth down from it, you dig too deep there by the sag.
 *
 * H is the level pull in the string. At a tie the pull is larger by the weight of the sag, which is
 * negligible for a string. An inclined string sags more, by 1 over the cosine of its slope.
 *
 * @param options - see {@link StringSagOptions}
 * @returns sag in the middle [length, positive down] as parabola and catenary, at `from`,   with a
 * stake in the middle; maximum span [length] and minimum tension [force] by the catenary
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` (a sag or a tolerance of half the span, or a place beyond it)
 *   and the reading codes
 * @source derived
 * @example
 * const sag = stringSag({ span: '15 m', tension: '60 N', weightPerLength: '1.2 g/m', tolerance: '2 mm' });
 * sag.sagAtMidspan.to('mm').toFixed(3) //=> '5.516'
 * sag.inTolerance //=> false
 * sag.maximumSpan?.to('m').toFixed(2) //=> '9.03'
 * sag.minimumTension?.to('N').toFixed(1) //=> '165.5'
 */
export function stringSag(options: StringSagOptions): StringSag {
  return sagOf(readOptions(options, OPTIONS, checkSpan));
}

type Span = Values<typeof OPTIONS>;

const checkSpan: Check<typeof OPTIONS> = (reader, values, path, raw) => {
  const { span, tension, weightPerLength, from, tolerance } = values;
  if (span === undefined) return;
  const long = asWritten(raw['span'], span);
  if (from !== undefined && from.compare(span) > 0) {
    const message = `${asWritten(raw['from'], from)} is beyond the far tie. Write no more than the span, ${long}`;
    reader.fail('OUT_OF_RANGE', [...path, 'from'], message);
  }
  if (tolerance !== undefined && tolerance.times(2).compare(span) > 0) {
    const message = `${asWritten(raw['tolerance'], tolerance)} is more than half the span, ${long}. Check the digits and the unit`;
    reader.fail('OUT_OF_RANGE', [...path, 'tolerance'], message);
  }
  if (tension === undefined || weightPerLength === undefined) return;
  requireTaut(reader, { spans: [span], line: { tension, weightPerLength } }, [...path, 'tension']);
};

function sagOf(of: Span): StringSag {
  const { span, from, tolerance } = of;
  const slope = of.slope.si;
  const shape = shapeLength(of);
  const sagAtMidspan = parabolaSag(span, span.dividedBy(2), { shape, slope });
  const place = { shape: shape.si, span: span.si, slope };
  const catenary = metres(midspanSag(place));
  const inTolerance = tolerance === undefined ? null : catenary.compare(tolerance) <= 0;
  return withWorking(
    {
      sagAtMidspan,
      catenarySag: catenary,
      at: from === undefined ? null : { from, sag: metres(catenarySag(place, from.si)) },
      sagWithMidStake: metres(midspanSag({ ...place, span: span.si.div(2) })),
      inTolerance,
      ...(tolerance === undefined ? NO_LIMITS : limitsFor(of, tolerance, sagAtMidspan)),
      note: inTolerance === false ? NOTES.slack : NOTES.low,
    },
    () => showWorking(of, sagAtMidspan, catenary),
  );
}

const NOTES = {
  low: 'Between its ties the string is low by the sag. Measure down that much less there.',
  slack:
    'The string sags too much. Set a stake between the ties, pull the string tighter, or deduct the sag when you measure down.',
} as const;

const NO_LIMITS = { maximumSpan: null, minimumTension: null } as const;

/** Limits are cut to these digits, on the side that stays within the tolerance. */
const DIGITS = 30;

/** By the catenary, so both stay within the tolerance. The search starts from the parabola. */
function limitsFor(of: Span, tolerance: Length, sagAtMidspan: Length) {
  const { span, weightPerLength } = of;
  const slope = of.slope.si;
  const shape = shapeLength(of);
  const times = tolerance.dividedBy(sagAtMidspan);
  const greatest = solveFor(tolerance.si, {
    start: span.si.times(Decimal40.sqrt(times)),
    of: (length) => midspanSag({ shape: shape.si, span: length, slope }),
  });
  const tighter = solveFor(tolerance.si, {
    start: shape.si.div(times),
    of: (longer) => midspanSag({ shape: longer, span: span.si, slope }),
  });
  return {
    maximumSpan: metres(greatest.toSignificantDigits(DIGITS, Decimal40.ROUND_DOWN)),
    minimumTension: weightPerLength.times(
      metres(tighter.toSignificantDigits(DIGITS, Decimal40.ROUND_UP)),
    ),
  };
}

const halfSpan = (of: Span): Decimal => of.span.si.div(shapeLength(of).si).div(2);

function showWorking(of: Span, sagAtMidspan: Length, catenary: Length): Step[] {
  const weight = given('w', 'weight per length', of.weightPerLength);
  const tension = given('H', 'tension', of.tension);
  const span = given('L', 'span', of.span);
  const slope = given('g', 'slope', of.slope.si);
  const half = given('z', 'half the span over the tension per weight', halfSpan(of));
  return [
    derivedStep({
      title: 'Sag in the middle, as a parabola',
      formula: 'f = w * L^2 * sqrt(1 + g^2) / (8 * H)',
      given: [weight, span, tension, slope],
      result: given('f', 'sag', sagAtMidspan),
    }),
    derivedStep({
      title: 'Half the span over the tension per weight',
      formula: 'z = w * L / (2 * H)',
      given: [weight, span, tension],
      result: half,
    }),
    derivedStep({
      title: 'Sag in the middle, as a catenary',
      formula:
        'f = H / w * (exp(z / 2) - exp(-z / 2))^2 / 2 * sqrt(1 + (2 * g * z / (exp(z) - exp(-z)))^2)',
      given: [weight, tension, half, slope],
      result: given('f', 'sag', catenary),
    }),
  ];
}
