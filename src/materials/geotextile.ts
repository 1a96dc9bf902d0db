import { makeReader, type Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Area, type Length } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { NO_LENGTH, RUN_OF_SOME, SHORT } from './limits.js';
import { stripsAcross } from './strips.js';
import { wholeDown } from './whole-number.js';

/** Strips laid one way. */
export interface GeotextileLaying {
  /** Strips side by side. */
  readonly strips: number;
  /** Length of each strip on the ground, upturns included. */
  readonly stripLength: Length;
  /** Pieces of each strip: more than 1 where a strip is longer than the roll. */
  readonly piecesPerStrip: number;
  /** Fabric to cut in all, end laps included. */
  readonly totalLength: Length;
  readonly fabricArea: Area;
  /** Whole rolls; null where no roll length is given. */
  readonly rolls: number | null;
  /** What the rolls hold beyond it; null where no roll length is given. */
  readonly leftOver: Length | null;
}

/** Geotextile under a base. */
export interface Geotextile extends GeotextileLaying, Worked {
  /** The dig with its upturns. */
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
 * @param options.length - of the dig [length]
 * @param options.width - of the dig [length]
 * @param options.rollWidth - [length]
 * @param options.overlap - side by side [length], less than the roll width, 0 for sewn seams without
 *   loss; see `geotextileOverlap` for what is published by strength of the soil
 * @param options.upturn - turned up at the edges of the dig [length], default 0
 * @param options.rollLength - [length], if rolls are wanted
 * @param options.endLap - where two pieces of a strip meet [length], default as `overlap`
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
export function geotextile(options: {
  readonly length: LengthInput;
  readonly width: LengthInput;
  readonly rollWidth: LengthInput;
  readonly overlap: LengthInput;
  readonly upturn?: LengthInput;
  readonly rollLength?: LengthInput;
  readonly endLap?: LengthInput;
}): Geotextile {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const length = reader.quantity('length', fields['length'], ['length'], RUN_OF_SOME);
  const width = reader.quantity('length', fields['width'], ['width'], RUN_OF_SOME);
  const upturn = reader.quantity('length', fields['upturn'] ?? NO_LENGTH, ['upturn'], SHORT);
  const roll = readRoll(reader, fields);
  reader.finish();

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
  return withWorking(fabric, () => stepsOf(laid, cross, along, roll));
}

interface Roll {
  readonly width: Length;
  readonly overlap: Length;
  readonly length: Length | null;
  readonly endLap: Length;
}

function readRoll(reader: Reader, fields: Readonly<Record<string, unknown>>): Roll {
  const width = reader.quantity('length', fields['rollWidth'], ['rollWidth'], RUN_OF_SOME);
  const overlap = reader.quantity('length', fields['overlap'], ['overlap'], SHORT);
  const length =
    fields['rollLength'] === undefined
      ? null
      : reader.quantity('length', fields['rollLength'], ['rollLength'], RUN_OF_SOME);
  const endLap = reader.quantity('length', fields['endLap'] ?? overlap, ['endLap'], SHORT);
  refuseWide(reader, 'overlap', overlap, width);
  if (length !== null) refuseWide(reader, 'endLap', endLap, length);
  return { width, overlap, length, endLap };
}

function refuseWide(reader: Reader, name: string, lap: Length, size: Length): void {
  if (lap.isZero() || lap.compare(size) < 0) return;
  reader.fail(
    'ROLL_NARROWER_THAN_OVERLAP',
    [name],
    `a lap of ${lap.toString()} leaves nothing of a roll of ${size.toString()}`,
  );
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
    leftOver:
      roll.length === null || rolls === null ? null : roll.length.times(rolls).minus(totalLength),
  };
}

/** Every strip takes whole rolls and one last piece; last pieces share rolls, never pieced again. */
function rollsFor(strips: number, pieces: number, cutLength: Length, rollLength: Length): number {
  const last = cutLength.minus(rollLength.times(pieces - 1));
  const lastPerRoll = wholeDown(exactOf(rollLength), exactOf(last));
  return strips * (pieces - 1) + Math.ceil(strips / lastPerRoll);
}

function compareLayings(a: GeotextileLaying, b: GeotextileLaying): Geotextile['better'] {
  const rolls = (a.rolls ?? 0) - (b.rolls ?? 0);
  const order = rolls === 0 ? a.totalLength.compare(b.totalLength) : rolls;
  if (order === 0) return 'same';
  return order < 0 ? 'along-length' : 'along-width';
}

function stepsOf(laid: GeotextileLaying, cross: Length, along: Length, roll: Roll): Step[] {
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
        given('S', 'length of a strip', along),
        given('p', 'pieces of a strip', laid.piecesPerStrip),
        given('e', 'end lap', roll.endLap),
      ],
      result: given('F', 'length of fabric', laid.totalLength),
      source: 'derived',
    },
  ];
}
