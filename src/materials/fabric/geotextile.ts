import { optional, quantity } from '../../input/field.js';
import { DISTANCE, PIECE, SET_BACK } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import { exactOf, type Area, type Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { given, withWorking, type Step, type Worked } from '../../working.js';
import { stripsAcross } from '../strips.js';
import { countOf, wholeDown } from '../whole-number.js';

/** A dig, and the rolls of geotextile to lay in it. */
export interface GeotextileOptions {
  /** Length of the dig [length], more than 0 and at most 100 km. */
  readonly length: LengthInput;
  /** Width of the dig [length], more than 0 and at most 100 km. */
  readonly width: LengthInput;
  /** Width of a roll [length], more than 0 and at most 100 m. */
  readonly rollWidth: LengthInput;
  /**
   * Overlap of strips side by side [length], 0 to 100 m and less than the roll width; 0 for sewn seams
   * without loss. See {@link geotextileOverlap} for what is published by strength of the soil.
   */
  readonly overlap: LengthInput;
  /** How far it is turned up at the edges of the dig [length], 0 to 100 m. Default: 0. */
  readonly upturn?: LengthInput;
  /** Length of a roll [length], more than 0 and at most 100 km. Default: none; no rolls are counted. */
  readonly rollLength?: LengthInput;
  /** Overlap of two pieces of a strip, end to end [length], 0 to 100 m. Default: as `overlap`. */
  readonly endLap?: LengthInput;
}

const OPTIONS = shapeOf<GeotextileOptions>()({
  length: quantity(DISTANCE),
  width: quantity(DISTANCE),
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
  /** Length of each strip on the ground, upturns included. */
  readonly stripLength: Length;
  /** Pieces of each strip: more than 1 where a strip is longer than the roll. */
  readonly piecesPerStrip: number;
  /** Length of fabric to cut in all, end laps included. */
  readonly totalLength: Length;
  /** Area of that fabric. */
  readonly fabricArea: Area;
  /** Whole rolls; null where no roll length is given. */
  readonly rolls: number | null;
  /** Length of roll beyond what is cut; null where no roll length is given. */
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
  /** Which way takes less: fewer rolls where they are known, else less fabric. */
  readonly better: 'along-length' | 'along-width' | 'same';
}

/**
 * Geotextile in strips along the length of the dig: with `B = width + 2 upturn`,
 * `strips = 1 + ceil((B - w) / (w - o))` where B is wider than one roll, else 1, and
 * `strip length = length + 2 upturn`. A strip longer than a roll is pieced with end laps,
 * `pieces = 1 + ceil((S - R) / (R - e))`; a strip that a roll can give whole is not pieced. The same is
 * worked out with strips along the width, to compare. Lay laps like shingles, so that the stone is
 * pushed over them and not under.
 *
 * @param options - see {@link GeotextileOptions}
 * @returns strips, their length, fabric and rolls, and the same across
 * @throws `ROLL_NARROWER_THAN_OVERLAP`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const fabric = geotextile({
 *   length: '12.7 m',
 *   width: '5.7 m',
 *   upturn: '300 mm',
 *   rollWidth: '3.81 m',
 *   overlap: '600 mm',
 *   rollLength: '110 m',
 * });
 * fabric.strips //=> 2
 * fabric.stripLength.to('m').toString() //=> '13.3'
 * fabric.rolls //=> 1
 * fabric.better //=> 'along-width'
 */
export function geotextile(options: GeotextileOptions): Geotextile {
  const { length, width, upturn, ...read } = readOptions(options, OPTIONS, checkLaps);
  const roll: Roll = {
    width: read.rollWidth,
    overlap: read.overlap,
    length: read.rollLength ?? null,
    endLap: read.endLap ?? read.overlap,
  };
  const [along, cross] = [length.plus(upturn.times(2)), width.plus(upturn.times(2))];
  const laid = layStrips(along, cross, roll);
  const across = layStrips(cross, along, roll);
  const coveredArea = along.times(cross);
  const fabric = {
    ...laid,
    coveredArea,
    wasteShare: laid.fabricArea.dividedBy(coveredArea).minus(1).toNumber(),
    across,
    better: compareLayings(laid, across),
  };
  return withWorking(fabric, () => stepsOf(laid, cross, roll));
}

const checkLaps: Check<typeof OPTIONS> = (reader, values, path, raw) => {
  const { rollWidth, rollLength, overlap } = values;
  const endLap = raw['endLap'] === undefined ? overlap : values.endLap;
  const refuseWide = (name: 'overlap' | 'endLap', lap?: Length, size?: Length) => {
    if (lap === undefined || size === undefined || lap.isZero() || lap.compare(size) < 0) return;
    const message = `as ${name === 'overlap' ? 'wide' : 'long'} as the roll, which leaves nothing of it`;
    reader.fail('ROLL_NARROWER_THAN_OVERLAP', [...path, name], message);
  };
  refuseWide('overlap', overlap, rollWidth);
  refuseWide('endLap', endLap, rollLength);
};

interface Roll {
  readonly width: Length;
  readonly overlap: Length;
  readonly length: Length | null;
  readonly endLap: Length;
}

function layStrips(stripLength: Length, across: Length, roll: Roll): GeotextileLaying {
  const strips = stripsAcross(across, roll.width, roll.overlap);
  const pieces = roll.length === null ? 1 : stripsAcross(stripLength, roll.length, roll.endLap);
  const cutLength = stripLength.plus(roll.endLap.times(pieces - 1));
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

/** Every strip takes whole rolls and one last piece; last pieces share rolls, never pieced again. */
function rollsFor(strips: number, pieces: number, cutLength: Length, rollLength: Length): number {
  const last = cutLength.minus(rollLength.times(pieces - 1));
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
    {
      title: 'Strips side by side',
      formula: 'n = 1 + ceil((B - w) / (w - o)), 1 where B <= w',
      given: [
        given('B', 'width of the dig with its upturns', cross),
        given('w', 'roll width', roll.width),
        given('o', 'overlap', roll.overlap),
      ],
      result: given('n', 'strips', laid.strips),
      source: 'derived',
    },
    {
      title: 'Fabric to cut',
      formula: 'F = n (S + (p - 1) e)',
      given: [
        given('n', 'strips', laid.strips),
        given('S', 'length of a strip', laid.stripLength),
        given('p', 'pieces of a strip', laid.piecesPerStrip),
        given('e', 'end lap', roll.endLap),
      ],
      result: given('F', 'length of fabric', laid.totalLength),
      source: 'derived',
    },
  ];
}
