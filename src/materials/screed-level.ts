import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { LAYER_OF_SOME, SHORT } from './limits.js';
import { TAPE_SYSTEMS, tapeText, type TapeSystem } from './tape-text.js';

/** Where to screed so that the units end up at finished grade. */
export interface ScreedLevel extends Worked {
  /** How high the units are laid above finished grade, before the plate. */
  readonly laidAboveFinish: Length;
  /** The screeded bed below finished grade; negative where it stands above. */
  readonly screedBelowFinish: Length;
  /** The top of the base below finished grade. */
  readonly baseTopBelowFinish: Length;
  /** Thickness of the bed as screeded, loose: the height of the screed rails on the base. */
  readonly looseBed: Length;
  /** The same surfaces as elevations, where the elevation of finished grade is given; else null. */
  readonly elevations: {
    readonly laid: Length;
    readonly screed: Length;
    readonly baseTop: Length;
  } | null;
}

/**
 * Laying high: the bed goes down under the plate, so units are laid above finished grade by as much.
 * `laid = finish + c`, `screed = laid - paver`, `base top = finish - paver - bed`,
 * `loose bed = bed + c`. Settlement differs with sand, moisture and plate: measure it on a trial unit.
 *
 * @param options.paver - thickness of the unit [length]
 * @param options.bedding - compacted thickness of the bed [length]
 * @param options.settlement - how far the bed goes down [length], less than the compacted bed
 * @param options.finish - elevation of finished grade [length], if elevations are wanted
 * @returns heights above and below finished grade, loose bed, elevations
 * @throws `OUT_OF_RANGE` for a settlement as deep as the bed, `NOT_POSITIVE`, `NEGATIVE` and the
 *   reading codes
 * @source block-paving-guide
 * @example
 * const level = screedLevel({ paver: '60 mm', bedding: '25 mm', settlement: '6 mm' });
 * level.screedBelowFinish.to('mm').toString() //=> '54'
 * level.looseBed.to('mm').toString() //=> '31'
 * level.baseTopBelowFinish.to('mm').toString() //=> '85'
 */
export function screedLevel(options: {
  readonly paver: LengthInput;
  readonly bedding: LengthInput;
  readonly settlement: LengthInput;
  readonly finish?: LengthInput;
}): ScreedLevel {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const paver = reader.quantity('length', fields['paver'], ['paver'], LAYER_OF_SOME);
  const bedding = reader.quantity('length', fields['bedding'], ['bedding'], LAYER_OF_SOME);
  const settlement = reader.quantity('length', fields['settlement'], ['settlement'], SHORT);
  const finish =
    fields['finish'] === undefined
      ? undefined
      : reader.quantity('length', fields['finish'], ['finish'], { sign: 'any' });
  reader.finish();
  if (settlement.compare(bedding) >= 0) {
    reader.fail(
      'OUT_OF_RANGE',
      ['settlement'],
      `a bed of ${bedding.toString()} cannot settle by ${settlement.toString()}: was the loose thickness meant?`,
    );
    reader.finish();
  }
  const screedBelowFinish = paver.minus(settlement);
  const looseBed = bedding.plus(settlement);
  const baseTopBelowFinish = paver.plus(bedding);
  const level = {
    laidAboveFinish: settlement,
    screedBelowFinish,
    baseTopBelowFinish,
    looseBed,
    elevations:
      finish === undefined
        ? null
        : {
            laid: finish.plus(settlement),
            screed: finish.minus(screedBelowFinish),
            baseTop: finish.minus(baseTopBelowFinish),
          },
  };
  return withWorking(level, () => [
    {
      title: 'Screed below finished grade',
      formula: 's = p - c',
      given: [given('p', 'paver', paver), given('c', 'settlement', settlement)],
      result: given('s', 'screed below finished grade', screedBelowFinish),
      source: 'block-paving-guide',
    },
    {
      title: 'Bed as screeded',
      formula: 'l = t + c',
      given: [given('t', 'compacted bed', bedding), given('c', 'settlement', settlement)],
      result: given('l', 'loose bed', looseBed),
      source: 'derived',
    },
  ]);
}

/**
 * The screed level as an instruction.
 *
 * @param level - from {@link screedLevel}
 * @param options.system - `us` (sixteenths of an inch) or `metric` (millimetres)
 * @throws `UNKNOWN_CHOICE`, `REQUIRED`
 * @example
 * const level = screedLevel({ paver: '60 mm', bedding: '25 mm', settlement: '6 mm' });
 * describeScreedLevel(level, { system: 'metric' })
 * //=> 'screed 54 mm below finished grade, 31 mm above the base; lay the pavers 6 mm high'
 */
export function describeScreedLevel(
  level: ScreedLevel,
  options: { readonly system: TapeSystem },
): string {
  const reader = makeReader();
  const system = reader.choice(options.system, ['system'], TAPE_SYSTEMS);
  reader.finish();
  const say = (height: Length) => tapeText(height.abs(), system);
  const side = level.screedBelowFinish.isNegative() ? 'above' : 'below';
  const lay = level.laidAboveFinish.isZero()
    ? 'lay the pavers at finished grade'
    : `lay the pavers ${say(level.laidAboveFinish)} high`;
  return `screed ${say(level.screedBelowFinish)} ${side} finished grade, ${say(level.looseBed)} above the base; ${lay}`;
}
