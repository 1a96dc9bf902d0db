import { makeReader } from '../input/reader.js';
import type { ToleranceSet } from '../sources/tolerance-sets.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given } from '../working.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { PLACE } from './limits.js';
import { readReadings } from './read-readings.js';
import { readBand, readUncertainty, type BandInput, type SetWith } from './tolerance.js';

/** A level as planned and as it was shot. */
export interface LevelReadingInput {
  readonly id: string;
  readonly plan: LengthInput;
  readonly measured: LengthInput;
}

/** A level against the plan. */
export interface CheckedLevel extends CheckedReading {
  readonly plan: Length;
  readonly measured: Length;
}

/** The levels of a surface against the plan; the `value` of a reading is measured less plan, + high. */
export interface LevelCheck extends LayerCheck<Length> {
  readonly check: 'level';
  readonly limits: { readonly least: Length; readonly most: Length };
  readonly readings: readonly CheckedLevel[];
  readonly outOfTolerance: readonly CheckedLevel[];
}

/**
 * Checks the elevations of a finished surface against the plan: `d = measured - plan`, at most `over`
 * high and `under` low. Exact: a reading on the limit passes.
 *
 * @param options.layer - `sub-base`, `base` or `pavers`; with limits of your own any name, such as
 *   `subgrade`
 * @param options.readings - each `id` once, elevation as planned and as `measured` [length]
 * @param options.tolerance - a set of `TOLERANCE_SETS` that limits levels, or your own `over` and
 *   `under` [length, not negative]
 * @param options.uncertainty - how far a measured level can be off, either way [length], default none
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
export function checkLevels(options: {
  readonly layer: string;
  readonly readings: readonly LevelReadingInput[];
  readonly tolerance: SetWith<'level'> | BandInput;
  readonly uncertainty?: LengthInput;
}): LevelCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const layer = reader.text(fields['layer'], ['layer']);
  const rows = readReadings(reader, fields['readings'], (row, path) => {
    const read = (name: 'plan' | 'measured') =>
      reader.quantity('length', row[name], [...path, name], PLACE);
    return { plan: read('plan'), measured: read('measured') };
  });
  const field = { reader, value: fields['tolerance'], words: `level of the ${layer}` };
  const band = readBand(field, (set) => levelOf(set, layer));
  const uncertainty = readUncertainty(reader, fields);
  reader.finish();
  const limits = { least: band.under.negated(), most: band.over };
  const readings = rows.map(({ id, plan, measured }): CheckedLevel => {
    const judged = { id, value: measured.minus(plan), limits, uncertainty };
    return { ...judge(judged, cutOrAdd), plan, measured };
  });
  const check = { check: 'level', subject: layer, limits, origin: band, readings } as const;
  return layerCheck(check, () =>
    readings.map(({ id, plan, measured, value }) => ({
      title: `Level of the ${layer} at ${id} against the plan`,
      formula: 'd = z - z0',
      given: [
        given('z', 'measured level', measured),
        given('z0', 'level of the plan', plan),
        given('over', 'most above', band.over),
        given('under', 'most below', band.under),
      ],
      result: given('d', 'difference, + high', value),
      source: sourceOf(band),
    })),
  );
}

const levelOf = (set: ToleranceSet, layer: string) =>
  layer === 'sub-base' || layer === 'base' || layer === 'pavers' ? set.level?.[layer] : undefined;

/** What is too much comes off, what is missing goes on. */
const cutOrAdd = (difference: Length) => move(difference.isNegative() ? 'add' : 'cut', difference);
