import { fault } from '../../errors.js';
import { optional, quantity } from '../../input/field.js';
import { isPlain } from '../../input/plain.js';
import { ELEVATION, SMALL, THICKNESS } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import { isLength } from '../../units/is-length.js';
import type { Length } from '../../units/quantity.js';
import { derivedStep, formulaStep, given, withWorking, type Worked } from '../../working.js';
import { DESCRIBE_OPTIONS, tapeText, type DescribeOptions } from '../tape-text.js';
import { checkSettlement } from './settlement.js';

/** Pavers and bed, and the settlement of the bed. */
export interface ScreedLevelOptions {
  /** Thickness of the pavers [length], more than 0 and at most 5 m. */
  readonly paver: LengthInput;
  /** Compacted thickness of the bed [length], more than 0 and at most 5 m. */
  readonly bedding: LengthInput;
  /** Settlement of the bed under the plate [length], less than the compacted bed. */
  readonly settlement: LengthInput;
  /**
   * Elevation of finished grade [length], up to 10 000 m either way. Default: none; no elevations
   * are returned.
   */
  readonly finishedGrade?: LengthInput;
}

const OPTIONS = shapeOf<ScreedLevelOptions>()({
  paver: quantity(THICKNESS),
  bedding: quantity(THICKNESS),
  settlement: quantity(SMALL),
  finishedGrade: optional(quantity(ELEVATION)),
});

/** The surfaces of a bed as elevations. */
export interface ScreedElevations {
  /** Top of the pavers as laid, before the plate. */
  readonly laid: Length;
  /** Top of the bed as screeded. */
  readonly screed: Length;
  /** Top of the base. */
  readonly baseTop: Length;
}

/** Screed level that brings the pavers to finished grade. */
export interface ScreedLevel extends Worked {
  /** Height of the pavers above finished grade as laid, before the plate. */
  readonly laidAboveFinish: Length;
  /** The screeded bed below finished grade; negative if it is above. */
  readonly screedBelowFinish: Length;
  /** The top of the base below finished grade. */
  readonly baseTopBelowFinish: Length;
  /** Thickness of the bed as screeded, loose: the height of the screed rails on the base. */
  readonly looseBed: Length;
  /** The same surfaces as elevations; null if no elevation of finished grade is given. */
  readonly elevations: ScreedElevations | null;
}

/**
 * Laying high: the bed settles under the plate, so you lay the pavers above finished grade by that
 * much. `laid = finish + c`, `screed = laid - paver`, `base top = finish - paver - bed`,
 * `loose bed = bed + c`. Settlement depends on sand, moisture and plate. Measure it on a trial
 * paver.
 *
 * @param options - see {@link ScreedLevelOptions}
 * @returns heights above and below finished grade, loose bed, elevations
 * @throws `OUT_OF_RANGE`, also for a settlement as deep as the bed, `NOT_POSITIVE`, `NEGATIVE` and the
 *   reading codes
 * @source block-paving-guide
 * @example
 * const level = screedLevel({ paver: '60 mm', bedding: '25 mm', settlement: '6 mm' });
 * level.screedBelowFinish.to('mm').toString() //=> '54'
 * level.looseBed.to('mm').toString() //=> '31'
 * level.baseTopBelowFinish.to('mm').toString() //=> '85'
 */
export function screedLevel(options: ScreedLevelOptions): ScreedLevel {
  const read = readOptions(options, OPTIONS, (reader, values, path) => {
    checkSettlement(reader, values.settlement, values.bedding, path);
  });
  const { paver, bedding, settlement, finishedGrade } = read;
  const screedBelowFinish = paver.minus(settlement);
  const looseBed = bedding.plus(settlement);
  const baseTopBelowFinish = paver.plus(bedding);
  const elevations =
    finishedGrade === undefined
      ? null
      : {
          laid: finishedGrade.plus(settlement),
          screed: finishedGrade.minus(screedBelowFinish),
          baseTop: finishedGrade.minus(baseTopBelowFinish),
        };
  const level = {
    laidAboveFinish: settlement,
    screedBelowFinish,
    baseTopBelowFinish,
    looseBed,
    elevations,
  };
  return withWorking(level, () => [
    formulaStep({
      title: 'Screed below finished grade',
      formula: 's = p - c',
      given: [given('p', 'paver', paver), given('c', 'settlement', settlement)],
      result: given('s', 'screed below finished grade', screedBelowFinish),
      source: 'block-paving-guide',
    }),
    derivedStep({
      title: 'Bed as screeded',
      formula: 'l = t + c',
      given: [given('t', 'compacted bed', bedding), given('c', 'settlement', settlement)],
      result: given('l', 'loose bed', looseBed),
    }),
  ]);
}

/**
 * The screed level as an instruction.
 *
 * @param level - from {@link screedLevel}
 * @param options - see {@link DescribeOptions}
 * @throws `UNKNOWN_CHOICE`, `REQUIRED`, `WRONG_TYPE`
 * @example
 * const level = screedLevel({ paver: '60 mm', bedding: '25 mm', settlement: '6 mm' });
 * describeScreedLevel(level, { system: 'metric' })
 * //=> 'screed 54 mm below finished grade, 31 mm above the base; lay the pavers 6 mm high'
 */
export function describeScreedLevel(level: ScreedLevel, options: DescribeOptions): string {
  if (!isScreedLevel(level)) {
    throw fault('WRONG_TYPE', 'pass the result of screedLevel()', {}, ['level']);
  }
  const { system } = readOptions(options, DESCRIBE_OPTIONS);
  const say = (height: Length) => tapeText(height.abs(), system);
  const side = level.screedBelowFinish.isNegative() ? 'above' : 'below';
  const lay = level.laidAboveFinish.isZero()
    ? 'lay the pavers at finished grade'
    : `lay the pavers ${say(level.laidAboveFinish)} high`;
  return `screed ${say(level.screedBelowFinish)} ${side} finished grade, ${say(level.looseBed)} above the base; ${lay}`;
}

const isScreedLevel = (level: unknown): level is ScreedLevel =>
  isPlain(level) &&
  isLength(level['laidAboveFinish']) &&
  isLength(level['screedBelowFinish']) &&
  isLength(level['looseBed']);
