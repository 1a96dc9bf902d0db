import { makeReader, type Reader } from '../input/reader.js';
import type { ForceInput, LengthInput, LineWeightInput, SlopeInput } from '../units/construct.js';
import { Decimal40, type Decimal } from '../units/decimal.js';
import type { Force, Length, Slope } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import {
  catenarySag,
  isSlack,
  metres,
  midspanSag,
  parabolaSag,
  readString,
  shapeOf,
  SLACK,
  type HangingLine,
} from './hanging-line.js';
import { SAG_TOLERANCE, SLOPE, SPAN } from './limits.js';
import { solveFor } from './solve-for.js';

/** How far a string hangs below the straight between its ties. */
export interface StringSag extends Worked {
  /** In the middle of the span, as a parabola: the form that is worked with. */
  readonly midspan: Length;
  /** The same as an exact catenary: a hair more. */
  readonly catenary: Length;
  /** At the place asked for, as a catenary. */
  readonly at?: { readonly from: Length; readonly sag: Length };
  /** In the middle of each half, if a stake is set at midspan. */
  readonly withMidStake: Length;
  /** Whether the catenary keeps the tolerance, where one is given. */
  readonly inTolerance?: boolean;
  /** The longest span that keeps the tolerance at this tension. */
  readonly greatestSpan?: Length;
  /** The least tension that keeps the tolerance on this span. */
  readonly tensionNeeded?: Force;
  readonly note: string;
}

/**
 * Sag of a string under its own weight: in the middle `f = w L^2 / (8 H)` as a parabola, exactly, and
 * `f = (H / w) (cosh(w L / (2 H)) - 1)` as a catenary, to 40 digits. A string that sags is low between
 * its stakes: a fixed measure down from it digs too deep there, by the sag.
 *
 * H is the level pull in the string; at a tie it pulls harder by the weight of the sag, which is
 * nothing for a string. An inclined string sags by 1 over the cosine of its slope more.
 *
 * @param options.span - level distance from tie to tie [length]
 * @param options.tension - pull in the string [force]
 * @param options.weightPerLength - of the string as it hangs [line-weight]: weigh 10 m of it, wet if it
 *   will be wet. Grams and pounds per length count as weight under standard gravity.
 * @param options.slope - of the straight between the ties [slope], rise over run up to 1, default level
 * @param options.from - where the sag is also wanted, level distance from the first tie [length]
 * @param options.tolerance - the most that it may sag [length], to have the greatest span and the
 *   tension that it takes
 * @returns sag in the middle [length, positive down] as parabola and catenary, at the place asked for,
 *   with a stake in the middle; greatest span [length] and tension needed [force] by the catenary
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` (a sag or a tolerance of half the span, or a place beyond it)
 *   and the reading codes
 * @source derived
 * @example
 * const sag = stringSag({ span: '15 m', tension: '60 N', weightPerLength: '1.2 g/m', tolerance: '2 mm' });
 * sag.midspan.to('mm').toFixed(3) //=> '5.516'
 * sag.inTolerance //=> false
 * sag.greatestSpan?.to('m').toFixed(2) //=> '9.03'
 * sag.tensionNeeded?.to('N').toFixed(1) //=> '165.5'
 */
export function stringSag(options: {
  readonly span: LengthInput;
  readonly tension: ForceInput;
  readonly weightPerLength: LineWeightInput;
  readonly slope?: SlopeInput;
  readonly from?: LengthInput;
  readonly tolerance?: LengthInput;
}): StringSag {
  const reader = makeReader();
  const read = readSpan(reader, reader.object(options, []));
  reader.finish();
  if (isSlack(read.span, read.line)) {
    reader.fail('OUT_OF_RANGE', ['tension'], SLACK);
    reader.finish();
  }
  return sagOf(read);
}

interface Span {
  readonly span: Length;
  readonly line: HangingLine;
  readonly slope: Decimal;
  readonly from: Length | undefined;
  readonly tolerance: Length | undefined;
}

function readSpan(reader: Reader, fields: Readonly<Record<string, unknown>>): Span {
  const span = reader.quantity('length', fields['span'], ['span'], SPAN);
  const line = readString(reader, fields, []);
  const slope: Slope = reader.quantity('slope', fields['slope'] ?? '0%', ['slope'], SLOPE);
  const from =
    fields['from'] === undefined
      ? undefined
      : reader.quantity('length', fields['from'], ['from'], { ...SPAN, sign: 'not-negative' });
  const isKnown = !span.isZero();
  if (isKnown && from !== undefined && from.compare(span) > 0) {
    reader.fail('OUT_OF_RANGE', ['from'], 'lies beyond the far tie');
  }
  const tolerance =
    fields['tolerance'] === undefined
      ? undefined
      : reader.quantity('length', fields['tolerance'], ['tolerance'], SAG_TOLERANCE);
  if (isKnown && tolerance !== undefined && tolerance.times(2).compare(span) > 0) {
    reader.fail('OUT_OF_RANGE', ['tolerance'], 'is more than half the span: a slip of a unit?');
  }
  return { span, line, slope: slope.si, from, tolerance };
}

function sagOf(of: Span): StringSag {
  const { span, line, slope, from, tolerance } = of;
  const shape = shapeOf(line);
  const midspan = parabolaSag(span, span.dividedBy(2), { shape, slope });
  const place = { shape: shape.si, span: span.si, slope };
  const catenary = metres(midspanSag(place));
  const withMidStake = metres(midspanSag({ ...place, span: span.si.div(2) }));
  const at = from === undefined ? {} : { at: { from, sag: metres(catenarySag(place, from.si)) } };
  const inTolerance = tolerance === undefined || catenary.compare(tolerance) <= 0;
  const limits =
    tolerance === undefined ? {} : { inTolerance, ...limitsFor({ ...of, tolerance, midspan }) };
  return withWorking(
    {
      midspan,
      catenary,
      ...at,
      withMidStake,
      ...limits,
      note: inTolerance ? NOTES.low : NOTES.slack,
    },
    () => showWorking(of, midspan, catenary),
  );
}

const NOTES = {
  low: 'Between its ties the string is low by the sag: measure down that much less.',
  slack:
    'The string sags too much: set a stake between, or pull it tighter, or take the sag off what you measure down.',
} as const;

interface Limited extends Span {
  readonly tolerance: Length;
  readonly midspan: Length;
}

/** Found to more digits than these, and cut to the side that keeps the tolerance. */
const DIGITS = 30;

/** By the catenary, so that both keep the tolerance; the parabola is where the search starts. */
function limitsFor({ span, line, slope, tolerance, midspan }: Limited) {
  const shape = shapeOf(line);
  const times = tolerance.dividedBy(midspan);
  const greatest = solveFor(tolerance.si, {
    start: span.si.times(Decimal40.sqrt(times)),
    of: (length) => midspanSag({ shape: shape.si, span: length, slope }),
  });
  const tighter = solveFor(tolerance.si, {
    start: shape.si.div(times),
    of: (longer) => midspanSag({ shape: longer, span: span.si, slope }),
  });
  return {
    greatestSpan: metres(greatest.toSignificantDigits(DIGITS, Decimal40.ROUND_DOWN)),
    tensionNeeded: line.weight.times(
      metres(tighter.toSignificantDigits(DIGITS, Decimal40.ROUND_UP)),
    ),
  };
}

function showWorking({ span, line, slope }: Span, midspan: Length, catenary: Length): Step[] {
  const isLevel = slope.isZero();
  const from = [
    given('w', 'weight per length', line.weight),
    given('L', 'span', span),
    given('H', 'tension', line.tension),
    ...(isLevel ? [] : [given('i', 'slope', slope)]),
  ];
  return [
    {
      title: 'Sag in the middle, as a parabola',
      formula: isLevel ? 'f = w L^2 / (8 H)' : 'f = w L^2 sqrt(1 + i^2) / (8 H)',
      given: from,
      result: given('f', 'sag', midspan),
      source: 'derived',
    },
    {
      title: 'Sag in the middle, as a catenary',
      formula: isLevel
        ? 'f = (H / w) (cosh z - 1), z = w L / (2 H)'
        : 'f = (H / w) (cosh z - 1) sqrt(1 + (i z / sinh z)^2), z = w L / (2 H)',
      given: from,
      result: given('f', 'sag', catenary),
      source: 'derived',
    },
  ];
}
