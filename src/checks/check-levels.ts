import { quantity, text } from '../input/field.js';
import { ELEVATION } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { shownText } from '../shown-text.js';
import type { SourceId } from '../sources/catalogue.js';
import type { OverAndUnder } from '../sources/tolerance-sets.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { formulaStep, given, type Step } from '../working.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import type { Limits } from './limits.js';
import { bandStep } from './margin-step.js';
import { lengthUncertainty, readingsOf, type NamedReadingInput } from './reading-fields.js';
import {
  bandField,
  bandOf,
  checkLayerSet,
  limitsFrom,
  toleranceField,
  type Band,
  type BandInput,
  type Needed,
  type SetWith,
} from './tolerance.js';

/** A level as designed and as shot. */
export interface LevelReadingInput extends NamedReadingInput {
  /** Elevation of the plan [length], up to 10 km either way. */
  readonly plan: LengthInput;
  /** Elevation as shot, from the same datum [length], up to 10 km either way. */
  readonly measured: LengthInput;
}

/** Levels of a surface, and their tolerance. */
export interface CheckLevelsOptions {
  /** Layer: `sub-base`, `base` or `pavers`; with your own limits any name, such as `subgrade`. */
  readonly layer: string;
  /** Levels, 1 to 10 000. */
  readonly readings: readonly LevelReadingInput[];
  /** A set of `TOLERANCE_SETS` that limits levels, or your own `over` and `under`. */
  readonly tolerance: SetWith<'level'> | BandInput;
  /** Uncertainty of a measured level, either way [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const READING = shapeOf<LevelReadingInput>()({
  id: text(),
  plan: quantity(ELEVATION),
  measured: quantity(ELEVATION),
});

const OPTIONS = shapeOf<CheckLevelsOptions>()({
  layer: text(),
  readings: readingsOf(READING),
  tolerance: toleranceField(bandField),
  uncertainty: lengthUncertainty,
});

/** A level compared with the plan. */
export interface CheckedLevel extends CheckedReading {
  /** Elevation of the plan. */
  readonly plan: Length;
  /** Elevation as shot. */
  readonly measured: Length;
}

/**
 * The levels of a surface compared with the plan; the `value` of a reading is measured less plan, +
 * high.
 */
export interface LevelCheck extends LayerCheck<Length, CheckedLevel> {
  /** Kind of check. */
  readonly check: 'level';
  /** Allowed difference, low (negative) and high. */
  readonly limits: Limits<Length>;
}

/**
 * Checks the elevations of a finished surface against the plan: `d = measured - plan`, no more than
 * `over` high and `under` low. Exact: a reading on the limit passes.
 *
 * @param options - see {@link CheckLevelsOptions}
 * @returns verdict, and each reading with its difference [length, + high], margin, verdict and the cut
 *   or fill to the plan
 * @throws `LIMIT_NOT_SET`, `DUPLICATE_ID`, `UNKNOWN_CHOICE`, `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY_LIST`
 *   and the reading codes
 * @source irc-sp-63-2004
 * @source derived
 * @example
 * const check = checkLevels({
 *   layer: 'base',
 *   readings: [
 *     { id: 'A', plan: '29.800 m', measured: '29.810 m' },
 *     { id: 'B', plan: '29.720 m', measured: '29.716 m' },
 *   ],
 *   tolerance: 'irc-sp-63-2004',
 * });
 * check.verdict //=> 'fail'
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'mm' })}`) //=> ['B: add 4 mm']
 */
export function checkLevels(options: CheckLevelsOptions): LevelCheck {
  const { layer, readings: rows, tolerance, uncertainty } = readOptions(options, OPTIONS, checkSet);
  const band = limitsFrom(tolerance, levelOf(layer), bandOf);
  const limits = { minimum: band.under.negated(), maximum: band.over };
  const readings = rows.map(({ id, plan, measured }): CheckedLevel => {
    const judged = { id, value: measured.minus(plan), limits, uncertainty };
    return { ...judge(judged, cutOrAdd), plan, measured };
  });
  const check = { check: 'level', subject: layer, limits, origin: band, readings } as const;
  return layerCheck(check, () =>
    readings.flatMap((reading) => levelSteps(reading, layer, { ...band, source: sourceOf(band) })),
  );
}

function levelSteps(
  { id, plan, measured, value, margin }: CheckedLevel,
  layer: string,
  band: Band & { readonly source: SourceId },
): Step[] {
  const difference = given('d', 'difference, + high', value);
  const title = `Level of the ${layer} at ${id}`;
  return [
    formulaStep({
      title: `${title} against the plan`,
      formula: 'd = z - z0',
      given: [given('z', 'measured level', measured), given('z0', 'level of the plan', plan)],
      result: difference,
      source: band.source,
    }),
    bandStep(`${title} against its limits`, difference, band, { margin, source: band.source }),
  ];
}

const levelOf = (layer: string): Needed<OverAndUnder> => ({
  words: `level of the ${shownText(layer)}`,
  find: ({ level }) =>
    layer === 'sub-base' || layer === 'base' || layer === 'pavers' ? level?.[layer] : undefined,
});

const checkSet = checkLayerSet(levelOf);

/** Cut if it is too high, add if it is too low. */
const cutOrAdd = (difference: Length) => move(difference.isNegative() ? 'add' : 'cut', difference);
