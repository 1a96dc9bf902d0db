import { known } from '../../invariant.js';
import type { FieldPath } from '../../errors.js';
import { exactlyOne } from '../../input/exactly-one.js';
import { custom, optional, quantity } from '../../input/field.js';
import { CROSSING, DEPTH, FLOW, SITE_LENGTH } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { isLeftOut, readOptions, shapeOf, type Check, type Field } from '../../input/shape.js';
// a drawn dig is an outline
import type { OutlineInput } from '../../outline/read-outline.js';
import { angle, type AngleInput, type FlowInput, type LengthInput } from '../../units/construct.js';
import type { Angle } from '../../units/quantity.js';
import { drawnDig } from '../drawn-dig.js';
import { acrossDrawnDig, type DrawnHandDig } from './across-drawn-dig.js';
import { acrossStraightDig, type HandDig } from './across-straight-dig.js';
import { checkOffsets, checkPaths, markedLines, type MarkedLineInput } from './marked-line.js';

/** A dig and the marked lines that cross it. */
export interface HandDigOptions {
  /**
   * Full width of a straight dig [length], more than 0 and at most 10 km. Give this or `outline`.
   */
  readonly digWidth?: LengthInput;
  /**
   * Angle between the lines and a straight dig [angle], 5 to 175 degrees. Needed with `digWidth`.
   */
  readonly crossingAngle?: AngleInput;
  /**
   * Outline of the whole dig, extension included, as `outlineArea` takes it, with arcs and holes.
   * Give this or `digWidth`.
   */
  readonly outline?: OutlineInput;
  /** Depth of the dig [length], more than 0 and at most 50 m. */
  readonly depth: LengthInput;
  /** Marked lines: 1 to 50 across a straight dig, 1 to 20 across a drawn one. */
  readonly lines: readonly MarkedLineInput[];
  /** Rate of hand digging [flow]. Default: no time is returned. */
  readonly rate?: FlowInput;
}

/** A drawn dig. */
export interface WithOutline {
  /** Outline of the whole dig, extension included. */
  readonly outline: OutlineInput;
}

/** A straight dig. */
export interface WithoutOutline {
  /** Not given: the dig is straight. */
  readonly outline?: undefined;
}

const FLATTEST = angle('5 deg');

/** A crossing angle, not so flat that a line runs along the dig. */
const crossing: Field<Angle> = custom((reader, value, path) => {
  const before = reader.faults();
  const read = reader.quantity('angle', value, path, CROSSING);
  const isFlat = read.compare(FLATTEST) < 0 || CROSSING.most.minus(read).compare(FLATTEST) < 0;
  if (reader.faults() === before && isFlat) {
    const message = 'the line runs along the dig. Draw the dig as outline, and the line as path';
    reader.fail('OUT_OF_RANGE', path, message);
  }
  return read;
});

const OPTIONS = shapeOf<HandDigOptions>()({
  digWidth: optional(quantity(SITE_LENGTH)),
  crossingAngle: optional(crossing),
  outline: optional(drawnDig),
  depth: quantity(DEPTH),
  lines: markedLines,
  rate: optional(quantity(FLOW)),
});

/**
 *
 * Soil to hand dig where marked lines cross a dig. A zone reaches `w / 2 + T` to each side of the
 * middle of its line. Overlapping zones are counted once. The dig is the whole dig, with the base
 * extended past the edge, not the paving alone.
 *
 * Straight dig, parallel lines: zone `W = w + 2 T`, length in the dig `L = dig width / sin(angle)`,
 * `V = W L depth`. Exact except for the sine, which is taken to 40 digits.
 *
 * Drawn dig, lines at any angle: area of the union of the zones within the outline, times the
 * depth. A zone reaches the same distance past the ends and bends of its line (square, slightly
 * more than a round end). Holes are left out. The area is worked out in floats and rounded to 1e-10
 * m2, their accuracy for a dig of 100 m or more. Arcs become chords, within 1/300 000 of the
 * radius.
 *
 * @param options - see {@link HandDigOptions}
 * @returns zones, area, bank volume, time; for a drawn dig the share of the dig as well; cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `POINTS_COINCIDE`, `DUPLICATE_ID`, `NOT_POSITIVE`,
 *   `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY_LIST`, `TOO_FEW`, `TOO_MANY`, the codes of `outlineArea` and the
 *   reading codes
 * @source derived
 * @example
 * const crossing = handDig({
 *   digWidth: '12 ft',
 *   crossingAngle: '90 deg',
 *   depth: '1 ft',
 *   lines: [
 *     { id: 'gas', width: '0 in', tolerance: '18 in', offset: '10 ft' },
 *     { id: 'water', width: '0 in', tolerance: '18 in', offset: '12 ft' },
 *   ],
 * });
 * crossing.zones.map(({ lines, width }) => `${lines.join(', ')}: ${width.to('ft')} ft`) //=> ['gas, water: 5 ft']
 * crossing.volume.to('ft3').toString() //=> '60'
 * const drawn = handDig({
 *   outline: { unit: 'ft', points: [[0, 0], [30, 0], [30, 12], [0, 12]] },
 *   depth: '1 ft',
 *   lines: [
 *     { id: 'gas', path: [{ x: '10 ft', y: '-5 ft' }, { x: '10 ft', y: '20 ft' }], width: '0 in', tolerance: '18 in' },
 *     { id: 'water', path: [{ x: '12 ft', y: '-5 ft' }, { x: '12 ft', y: '20 ft' }], width: '0 in', tolerance: '18 in' },
 *   ],
 * });
 * drawn.area.to('ft2').toString() //=> '60'
 * drawn.zones.map(({ area, added }) => [area.toNumber('ft2'), added.toNumber('ft2')]) //=> [[36, 36], [36, 24]]
 */
export function handDig(options: HandDigOptions & WithOutline): DrawnHandDig;
export function handDig(options: HandDigOptions & WithoutOutline): HandDig;
export function handDig(options: HandDigOptions): HandDig | DrawnHandDig;
export function handDig(options: HandDigOptions): HandDig | DrawnHandDig {
  const { outline, digWidth, crossingAngle, ...rest } = readOptions(options, OPTIONS, checkForm);
  if (outline !== undefined) return acrossDrawnDig({ outline, ...rest });
  return acrossStraightDig({
    digWidth: known(digWidth, 'width'),
    crossingAngle: known(crossingAngle, 'angle'),
    ...rest,
  });
}

/** A straight dig with its crossing angle, or a drawn one. */
const checkForm: Check<typeof OPTIONS> = (reader, values, path, raw) => {
  const form = exactlyOne(reader, raw, ['digWidth', 'outline'], [...path, 'digWidth']);
  const lines = { value: raw['lines'], read: values.lines, path: [...path, 'lines'] };
  if (form === 'outline') {
    checkPaths(reader, lines, values.outline);
    refuseAngle(reader, raw, path);
  }
  if (form !== 'digWidth' || raw['outline'] !== undefined) return;
  checkOffsets(reader, lines);
  // reading the field already reports that it is missing
  if (isLeftOut(values, 'crossingAngle') && raw['crossingAngle'] === undefined) {
    crossing.read(reader, undefined, [...path, 'crossingAngle']);
  }
};

function refuseAngle(
  reader: Reader,
  raw: Readonly<Record<string, unknown>>,
  path: FieldPath,
): void {
  if (raw['crossingAngle'] === undefined) return;
  const message = 'a drawn dig shows how lines cross it. Leave out crossingAngle';
  reader.fail('CONFLICTING_FIELDS', [...path, 'crossingAngle'], message);
}
