import { object, quantity } from '../input/field.js';
import { GRADE, HEADING, SITE_OFFSET } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { AngleInput, LengthInput, SlopeInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { exactOf, fromSI, type Angle, type Length, type Slope } from '../units/quantity.js';
import { decimalRatio } from '../units/ratio.js';
import { cross, dot, type Vector } from '../units/vector.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';

/** A point on the site, from the instrument. */
export interface PlaceFromInstrumentInput {
  /** Along x [length], up to 10 km either way. */
  readonly x: LengthInput;
  /** Along y [length], up to 10 km either way. */
  readonly y: LengthInput;
}

/** A laser with grades dialled in, and its heading error. */
export interface HeadingErrorOptions {
  /** Dialled in along x [slope], positive if it rises away from the instrument; up to 1 either way. */
  readonly gradeX: SlopeInput;
  /** Dialled in along y [slope], positive if it rises; up to 1 either way. */
  readonly gradeY: SlopeInput;
  /** Angle of the instrument off x [angle, counter-clockwise], up to 90 degrees either way. */
  readonly heading: AngleInput;
  /** The point at which to give the error. */
  readonly at: PlaceFromInstrumentInput;
}

const OPTIONS = shapeOf<HeadingErrorOptions>()({
  gradeX: quantity(GRADE),
  gradeY: quantity(GRADE),
  heading: quantity(HEADING),
  at: object(
    shapeOf<PlaceFromInstrumentInput>()({ x: quantity(SITE_OFFSET), y: quantity(SITE_OFFSET) }),
  ),
});

/** A dialled-in beam that is off its heading. */
export interface HeadingError extends Cautioned, Worked {
  /** Grade of the beam along x. */
  readonly gradeX: Slope;
  /** Grade of the beam along y. */
  readonly gradeY: Slope;
  /** Beam less design at the point; negative if the beam is low. */
  readonly error: Length;
}

/**
 * Error of a laser with both grades dialled in, turned by an angle b off the x axis of the site:
 * `gx' = gx cos b - gy sin b`, `gy' = gx sin b + gy cos b`, error at a point
 * `(gx' - gx) x + (gy' - gy) y`. It grows with the distance. To 40 digits.
 *
 * @param options - see {@link HeadingErrorOptions}
 * @returns the grades that the beam has [slope] and its error there [length, + high]; cautions
 * @throws `REQUIRED`, `OUT_OF_RANGE` and the reading codes
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
export function headingError(options: HeadingErrorOptions): HeadingError {
  const { gradeX: gx, gradeY: gy, heading, at } = readOptions(options, OPTIONS);
  const { x, y } = at;
  const design: Vector = { x: exactOf(gx), y: exactOf(gy) };
  const turn: Vector = {
    x: decimalRatio(Decimal40.cos(heading.si)),
    y: decimalRatio(Decimal40.sin(heading.si)),
  };
  const gradeX = fromSI('slope', cross(turn, { x: design.y, y: design.x }));
  const gradeY = fromSI('slope', dot(design, { x: turn.y, y: turn.x }));
  const error = x.times(gradeX.minus(gx)).plus(y.times(gradeY.minus(gy)));
  return withWorking({ gradeX, gradeY, error, cautions: cautionsFor('laser') }, () =>
    headingSteps({ gx, gy, heading, at, gradeX, gradeY, error }),
  );
}

interface Heading extends Pick<HeadingError, 'gradeX' | 'gradeY' | 'error'> {
  readonly gx: Slope;
  readonly gy: Slope;
  readonly heading: Angle;
  readonly at: { readonly x: Length; readonly y: Length };
}

function headingSteps({ gx, gy, heading, at, gradeX, gradeY, error }: Heading): Step[] {
  const dialled = [
    given('gx', 'grade dialled in along x', gx),
    given('gy', 'grade dialled in along y', gy),
  ];
  const turned = [...dialled, given('b', 'heading error', heading)];
  const kx = given('kx', 'grade that the beam has along x', gradeX);
  const ky = given('ky', 'grade that the beam has along y', gradeY);
  const place = [given('x', 'distance along x', at.x), given('y', 'distance along y', at.y)];
  return [
    derivedStep({
      title: 'Grade that the beam has along x',
      formula: 'kx = gx * cos(b) - gy * sin(b)',
      given: turned,
      result: kx,
    }),
    derivedStep({
      title: 'Grade that the beam has along y',
      formula: 'ky = gx * sin(b) + gy * cos(b)',
      given: turned,
      result: ky,
    }),
    derivedStep({
      title: 'Error of a beam that is off its heading',
      formula: 'e = (kx - gx) * x + (ky - gy) * y',
      given: [kx, ky, ...dialled, ...place],
      result: given('e', 'error (+ high)', error),
    }),
  ];
}
