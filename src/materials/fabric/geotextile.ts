import { known } from '../../invariant.js';
// Fabric is laid over an outline, which `outline` reads and measures.
import { readOutline, type Outline, type OutlineInput } from '../../outline/read-outline.js';
import { bothOrNeither } from '../../input/both-or-neither.js';
import { custom, optional, quantity } from '../../input/field.js';
import { DISTANCE, PIECE, SET_BACK } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import { max } from '../../units/aggregate.js';
import type { LengthInput } from '../../units/construct.js';
import { exactOf, type Area, type Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../../working.js';
import { stripsAcross } from '../strips.js';
import { countOf, wholeDown } from '../whole-number.js';
import {
  coveredBy,
  layOver,
  type FabricDirection,
  type FabricStrip,
  type OutlineLaying,
} from './over-outline.js';
import { cutStrip, lastPiece, type Roll } from './roll-cuts.js';

/** Rolls of geotextile, and how they are lapped. */
export interface GeotextileRollInput {
  /** Width of a roll [length], more than 0 and at most 100 m. */
  readonly rollWidth: LengthInput;
  /**
   * Overlap of strips side by side [length], 0 to 100 m and less than the roll width; 0 for sewn
   * seams without loss. {@link geotextileOverlap} quotes published overlaps by strength of the
   * soil.
   */
  readonly overlap: LengthInput;
  /** Upturn at the edges of the dig [length], 0 to 100 m. Default: 0. */
  readonly upturn?: LengthInput;
  /** Length of a roll [length], more than 0 and at most 100 km. Default: none; no rolls are counted. */
  readonly rollLength?: LengthInput;
  /** Overlap of two pieces of a strip, end to end [length], 0 to 100 m. Default: as `overlap`. */
  readonly endLap?: LengthInput;
}

/** A rectangular dig, and the rolls of geotextile to lay in it. */
export interface GeotextileOptions extends GeotextileRollInput {
  /** Length of the dig [length], more than 0 and at most 100 km. */
  readonly length: LengthInput;
  /** Width of the dig [length], more than 0 and at most 100 km. */
  readonly width: LengthInput;
}

/** A dig of any outline, and the rolls of geotextile to lay in it. */
export interface GeotextileOutlineOptions extends GeotextileRollInput {
  /** Edge of the dig, arcs too; see `outlineArea`. Holes are covered: fabric is laid over and cut out. */
  readonly outline: OutlineInput;
}

type AllOptions = GeotextileRollInput &
  Partial<Pick<GeotextileOptions, 'length' | 'width'> & GeotextileOutlineOptions>;

const OPTIONS = shapeOf<AllOptions>()({
  outline: optional(custom(readOutline)),
  length: optional(quantity(DISTANCE)),
  width: optional(quantity(DISTANCE)),
  rollWidth: quantity(PIECE),
  overlap: quantity(SET_BACK),
  upturn: optional(quantity(SET_BACK), NO_LENGTH),
  rollLength: optional(quantity(DISTANCE)),
  endLap: optional(quantity(SET_BACK)),
});

/** Strips laid one way. */
export interface GeotextileLaying {
  /** Strips side by side. */
  readonly strips: number;
  /** Length of each strip on the ground, upturns included; over an outline that of the longest. */
  readonly stripLength: Length;
  /** Pieces of each strip, over an outline the most: more than 1 where a strip is longer than the roll. */
  readonly piecesPerStrip: number;
  /** Total length of fabric to cut, end laps included. */
  readonly totalLength: Length;
  /** Area of that fabric. */
  readonly fabricArea: Area;
  /** Whole rolls; null if no roll length is given. */
  readonly rolls: number | null;
  /** Length of roll left over; null if no roll length is given. */
  readonly surplus: Length | null;
}

/** Geotextile under a base: strips along the length, and the same across. */
export interface Geotextile extends GeotextileLaying, Worked {
  /** Area of the dig with its upturns. */
  readonly coveredArea: Area;
  /** Fabric over covered area, less 1: laps and trimmings. */
  readonly wasteShare: number;
  /** The same with strips laid across, along the width. */
  readonly across: GeotextileLaying;
  /** Direction that takes less: fewer rolls if they are known, else less fabric. */
  readonly better: 'along-length' | 'along-width' | 'same';
}

/** Strips laid one way over an outline. */
export interface GeotextileOverLaying extends GeotextileLaying {
  /** Which way the strips lie. */
  readonly direction: FabricDirection;
  /** Every strip, in order from the side of the first; one that has a gap in its way in its parts. */
  readonly laid: readonly FabricStrip[];
}

/** Geotextile over an outline, laid the better way. */
export interface GeotextileOver extends GeotextileOverLaying, Worked {
  /** Area of the dig with its upturns, corners taken as square; holes are covered. */
  readonly coveredArea: Area;
  /** Fabric over covered area, less 1: laps and trimmings. */
  readonly wasteShare: number;
  /** The same with strips laid square to these. */
  readonly across: GeotextileOverLaying;
}

/**
 * Geotextile in strips over a dig. Lay laps like shingles, so that the stone is pushed over them and not
 * under.
 *
 * A rectangle: with `B = width + 2 upturn`, `strips = 1 + ceil((B - w) / (w - o))` where B is wider than
 * one roll, else 1, and `strip length = length + 2 upturn`. The same is worked out with strips along the
 * width, to compare.
 *
 * An outline: strips along a straight edge or square to it, of the longest edges (6 at most, none twice,
 * each from either side), whichever takes fewer rolls, or less fabric where no roll length is given. B is
 * from side to side of the outline, and the first strip begins at the side, less the upturn. Each strip
 * reaches over all of the outline that lies in it, and over the upturns; where the outline has a gap in
 * its way, it is cut in two. Holes are covered. Exact, but to 1e-9 m where arcs come in.
 *
 * A strip longer than a roll is pieced with end laps, `pieces = 1 + ceil((S - R) / (R - e))`; a strip that
 * a roll can give whole is not pieced.
 *
 * @param options - see {@link GeotextileOptions} and {@link GeotextileOutlineOptions}
 * @returns strips, their length, fabric and rolls, and the same across; over an outline also each strip
 *   and the direction
 * @throws `ROLL_NARROWER_THAN_OVERLAP`, `CONFLICTING_FIELDS` for an outline with a length or width,
 *   `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `CAPACITY_EXCEEDED`, the codes of `outlineArea` and the
 *   reading codes
 * @source derived
 * @example
 * const roll = { rollWidth: '3.81 m', overlap: '600 mm', upturn: '300 mm', rollLength: '110 m' };
 * const fabric = geotextile({ length: '12.7 m', width: '5.7 m', ...roll });
 * fabric.strips //=> 2
 * fabric.stripLength.to('m').toString() //=> '13.3'
 * fabric.rolls //=> 1
 * fabric.better //=> 'along-width'
 * const ell = geotextile({
 *   outline: { unit: 'm', points: [[0, 0], [12, 0], [12, 2.5], [4, 2.5], [4, 9], [0, 9]] },
 *   ...roll,
 * });
 * ell.laid.map(({ length }) => length.to('m').toString()) //=> ['12.6', '4.6', '4.6']
 * ell.direction.edge //=> 1
 */
export function geotextile(options: GeotextileOptions): Geotextile;
export function geotextile(options: GeotextileOutlineOptions): GeotextileOver;
export function geotextile(
  options: GeotextileOptions | GeotextileOutlineOptions,
): Geotextile | GeotextileOver {
  const read = readOptions(options, OPTIONS, checkFabric);
  const { outline, length, width, upturn } = read;
  const roll: Roll = {
    width: read.rollWidth,
    overlap: read.overlap,
    length: read.rollLength ?? null,
    endLap: read.endLap ?? read.overlap,
  };
  if (outline !== undefined) return overOutline(outline, roll, upturn);
  // without an outline both have been read
  return inRectangle([known(length, 'length'), known(width, 'width')], roll, upturn);
}

function inRectangle(
  [length, width]: readonly [Length, Length],
  roll: Roll,
  upturn: Length,
): Geotextile {
  const [along, cross] = [length.plus(upturn.times(2)), width.plus(upturn.times(2))];
  const laid = layStrips(along, cross, roll);
  const across = layStrips(cross, along, roll);
  const coveredArea = along.times(cross);
  const fabric = {
    ...laid,
    coveredArea,
    wasteShare: wasteOf(laid, coveredArea),
    across,
    better: compareLayings(laid, across),
  };
  return withWorking(fabric, () => stepsOf(laid, cross, roll));
}

function overOutline(outline: Outline, roll: Roll, upturn: Length): GeotextileOver {
  const { best, across } = layOver(outline, roll, upturn);
  const coveredArea = coveredBy(outline, upturn);
  const laying = overLaying(best);
  const fabric = {
    ...laying,
    coveredArea,
    wasteShare: wasteOf(laying, coveredArea),
    across: overLaying(across),
  };
  return withWorking(fabric, () => stepsOver(best, roll));
}

const overLaying = (laying: OutlineLaying): GeotextileOverLaying => ({
  strips: laying.strips,
  stripLength: max(laying.laid.map(({ length }) => length)),
  piecesPerStrip: Math.max(...laying.laid.map(({ pieces }) => pieces)),
  totalLength: laying.totalLength,
  fabricArea: laying.fabricArea,
  rolls: laying.rolls,
  surplus: laying.surplus,
  direction: laying.direction,
  laid: laying.laid,
});

const wasteOf = ({ fabricArea }: GeotextileLaying, coveredArea: Area): number =>
  fabricArea.dividedBy(coveredArea).minus(1).toNumber();

const checkFabric: Check<typeof OPTIONS> = (reader, values, path, raw) => {
  checkLaps(reader, values, path, raw);
  const isGiven = (name: string) => raw[name] !== undefined;
  if (isGiven('outline') && (isGiven('length') || isGiven('width'))) {
    const message = 'give only one of outline and length with width';
    reader.fail('CONFLICTING_FIELDS', [...path, 'outline'], message);
  } else if (!isGiven('outline') && !isGiven('length') && !isGiven('width')) {
    const message = 'missing. Give the outline of the dig, or its length and width';
    reader.fail('REQUIRED', path, message, { choices: 'outline, length' });
  } else if (!isGiven('outline')) bothOrNeither(reader, raw, ['length', 'width'], path);
};

const checkLaps: Check<typeof OPTIONS> = (reader, values, path, raw) => {
  const { rollWidth, rollLength, overlap } = values;
  const endLap = raw['endLap'] === undefined ? overlap : values.endLap;
  const refuseWide = (name: 'overlap' | 'endLap', lap?: Length, size?: Length) => {
    if (lap === undefined || size === undefined || lap.isZero() || lap.compare(size) < 0) return;
    const message = `is as ${name === 'overlap' ? 'wide' : 'long'} as the roll, which leaves no cover. Write a smaller overlap`;
    reader.fail('ROLL_NARROWER_THAN_OVERLAP', [...path, name], message);
  };
  refuseWide('overlap', overlap, rollWidth);
  refuseWide('endLap', endLap, rollLength);
};

function layStrips(stripLength: Length, across: Length, roll: Roll): GeotextileLaying {
  const strips = stripsAcross(across, roll.width, roll.overlap);
  const { pieces, cutLength } = cutStrip(stripLength, roll);
  const totalLength = cutLength.times(strips);
  const rolls = roll.length === null ? null : rollsFor(strips, pieces, cutLength, roll.length);
  return {
    strips,
    stripLength,
    piecesPerStrip: pieces,
    totalLength,
    fabricArea: totalLength.times(roll.width),
    rolls,
    surplus:
      roll.length === null || rolls === null ? null : roll.length.times(rolls).minus(totalLength),
  };
}

/**
 * Every strip takes whole rolls and one last piece. Last pieces share rolls and are not pieced
 * again.
 */
function rollsFor(strips: number, pieces: number, cutLength: Length, rollLength: Length): number {
  const last = lastPiece(pieces, cutLength, rollLength);
  const lastPerRoll = wholeDown(exactOf(rollLength), exactOf(last), ['length']);
  return countOf(strips * (pieces - 1) + Math.ceil(strips / lastPerRoll));
}

function compareLayings(a: GeotextileLaying, b: GeotextileLaying): Geotextile['better'] {
  const rolls = (a.rolls ?? 0) - (b.rolls ?? 0);
  const order = rolls === 0 ? a.totalLength.compare(b.totalLength) : rolls;
  if (order === 0) return 'same';
  return order < 0 ? 'along-length' : 'along-width';
}

function stepsOf(laid: GeotextileLaying, cross: Length, roll: Roll): Step[] {
  return [
    derivedStep({
      title: 'Strips side by side',
      formula: 'n = B <= w ? 1 : 1 + ceil((B - w) / (w - o))',
      given: [
        given('B', 'width of the dig with its upturns', cross),
        given('w', 'roll width', roll.width),
        given('o', 'overlap', roll.overlap),
      ],
      result: given('n', 'strips', laid.strips),
    }),
    derivedStep({
      title: 'Fabric to cut',
      formula: 'F = n * (S + (p - 1) * e)',
      given: [
        given('n', 'strips', laid.strips),
        given('S', 'length of a strip', laid.stripLength),
        given('p', 'pieces of a strip', laid.piecesPerStrip),
        given('e', 'end lap', roll.endLap),
      ],
      result: given('F', 'length of fabric', laid.totalLength),
    }),
  ];
}

function stepsOver({ laid, strips, direction, totalLength }: OutlineLaying, roll: Roll): Step[] {
  const { edge, isSquare } = direction;
  return [
    derivedStep({
      title: `Fabric to cut, ${strips} strips ${isSquare ? 'square to' : 'along'} edge ${edge}`,
      formula: 'F = sum(S[i] + (p[i] - 1) * e)',
      given: [
        given(
          'S',
          `length of strip ${laid.map(({ strip }) => strip).join(', ')}`,
          laid.map(({ length }) => length),
        ),
        given(
          'p',
          'pieces of the same strips',
          laid.map(({ pieces }) => pieces),
        ),
        given('e', 'end lap', roll.endLap),
      ],
      result: given('F', 'length of fabric', totalLength),
    }),
  ];
}
