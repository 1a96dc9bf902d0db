import { makeReader } from '../input/reader.js';
import { angle, type AngleInput, type LengthInput, type SlopeInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { decimalRatio } from '../units/ratio.js';
import { cross, dot, type Vector } from '../units/vector.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { given, withWorking, type Worked } from '../working.js';
import { GRADE, PLACE } from './limits.js';

/** A beam with grades dialled in that is aimed beside its line. */
export interface HeadingError extends Worked {
  /** Grades that the beam really has. */
  readonly gradeX: Slope;
  readonly gradeY: Slope;
  /** Beam less design at the place: negative where the beam is low. */
  readonly error: Length;
  readonly cautions: readonly Caution[];
}

/**
 * A laser with both grades dialled in, turned by an angle b away from the x of the site:
 * `gx' = gx cos b - gy sin b`, `gy' = gx sin b + gy cos b`, error at a place
 * `(gx' - gx) x + (gy' - gy) y`. The grades go wrong as a turned vector does; the error grows with the
 * distance. To 40 digits.
 *
 * @param options.gradeX - dialled in along x [slope, + rising away from the instrument]
 * @param options.gradeY - dialled in along y [slope, + rising]
 * @param options.heading - how far the instrument is turned away from x [angle, counter-clockwise, up to
 *   90 degrees either way]
 * @param options.at - the place `{ x, y }` from the instrument [length]
 * @returns the grades that the beam has [slope] and its error there [length, + high]; cautions
 * @throws `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const drive = headingError({
 *   gradeX: '-3%',
 *   gradeY: '2%',
 *   heading: '3 deg',
 *   at: { x: '20 m', y: '5 m' },
 * });
 * drive.gradeX.to('percent').toFixed(3) //=> '-3.101'
 * drive.error.to('mm').toFixed(1) //=> '-28.1'
 */
export function headingError(options: {
  readonly gradeX: SlopeInput;
  readonly gradeY: SlopeInput;
  readonly heading: AngleInput;
  readonly at: { readonly x: LengthInput; readonly y: LengthInput };
}): HeadingError {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const gx = reader.quantity('slope', fields['gradeX'], ['gradeX'], GRADE);
  const gy = reader.quantity('slope', fields['gradeY'], ['gradeY'], GRADE);
  const heading = reader.quantity('angle', fields['heading'], ['heading'], QUARTER_TURN);
  const place = reader.object(fields['at'], ['at']);
  const x = reader.quantity('length', place['x'], ['at', 'x'], PLACE);
  const y = reader.quantity('length', place['y'], ['at', 'y'], PLACE);
  reader.finish();
  const design: Vector = { x: exactOf(gx), y: exactOf(gy) };
  const turn: Vector = {
    x: decimalRatio(Decimal40.cos(heading.si)),
    y: decimalRatio(Decimal40.sin(heading.si)),
  };
  const gradeX = fromSI('slope', cross(turn, { x: design.y, y: design.x }));
  const gradeY = fromSI('slope', dot(design, { x: turn.y, y: turn.x }));
  const error = x.times(gradeX.minus(gx)).plus(y.times(gradeY.minus(gy)));
  return withWorking({ gradeX, gradeY, error, cautions: cautionsFor('laser') }, () => [
    {
      title: 'Error of a beam that is aimed beside its line',
      formula: "e = (gx' - gx) x + (gy' - gy) y",
      given: [
        given("gx'", 'grade that the beam has along x', gradeX),
        given('gx', 'grade dialled in along x', gx),
        given("gy'", 'grade that the beam has along y', gradeY),
        given('gy', 'grade dialled in along y', gy),
        given('x', 'place along x', x),
        given('y', 'place along y', y),
      ],
      result: given('e', 'error (+ high)', error),
      source: 'derived',
    },
  ]);
}

const QUARTER_TURN = Object.freeze({ sign: 'any', most: angle(90, 'deg') } as const);
