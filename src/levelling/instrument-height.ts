import { custom, object, quantity } from '../input/field.js';
import { isForm } from '../input/plain.js';
import { ELEVATION, ROD_READING } from '../input/ranges.js';
import { shapeOf, type Field } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { formulaStep, given, type Step } from '../working.js';

/** A set-up of the level: a mark whose elevation is known, and the reading on it. */
export interface SetUpInput {
  /** Elevation of the mark [length], up to 10 km either way. */
  readonly benchmark: LengthInput;
  /** Backsight: reading on the rod on that mark [length], 0 to 20 m. */
  readonly back: LengthInput;
}

/**
 * Height of instrument: the elevation of the line of sight [length], up to 10 km either way, or the
 * set-up that gives it.
 */
export type InstrumentHeightInput = LengthInput | SetUpInput;

/** A set-up that has been read. Internal. */
export interface SetUp {
  readonly benchmark: Length;
  readonly back: Length;
}

/** The fields of a set-up. Internal. */
export const SET_UP = shapeOf<SetUpInput>()({
  benchmark: quantity(ELEVATION),
  back: quantity(ROD_READING),
});

/** Height of instrument, the elevation of the line of sight: `HI = benchmark + backsight`. Internal. */
export const heightOf = ({ benchmark, back }: SetUp): Length => benchmark.plus(back);

/** The level that a rod stands on, `HI - reading`. Internal. */
export const levelUnder = (instrumentHeight: Length, reading: Length): Length =>
  instrumentHeight.minus(reading);

/** A height of instrument, and the set-up that it came from. Internal. */
export interface Sight {
  readonly height: Length;
  readonly setUp: SetUp | null;
}

const setUp = object(SET_UP);
const elevation = quantity(ELEVATION);

/** Reads a height of instrument in either form. Internal. */
export const sight: Field<Sight> = custom((reader, value, path) => {
  if (!isForm(value)) return { height: elevation.read(reader, value, path), setUp: null };
  const before = reader.faults();
  const read = setUp.read(reader, value, path);
  if (reader.faults() > before) return { height: NO_LENGTH, setUp: null };
  return { height: heightOf(read), setUp: read };
});

/** The working of a height of instrument that came from a set-up. Internal. */
export const sightSteps = (from: Sight): Step[] =>
  from.setUp === null ? [] : [heightStep(from.setUp)];

/** The working of a height of instrument. Internal. */
export const heightStep = (
  from: SetUp,
  names: { readonly benchmark: string; readonly back: string } = NAMES,
): Step =>
  formulaStep({
    title: 'Height of instrument',
    formula: 'HI = BM + BS',
    given: [given('BM', names.benchmark, from.benchmark), given('BS', names.back, from.back)],
    result: given('HI', 'height of instrument', heightOf(from)),
    source: 'grade-with-a-level',
  });

const NAMES = Object.freeze({ benchmark: 'benchmark', back: 'backsight' });
