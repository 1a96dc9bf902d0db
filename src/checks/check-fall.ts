import { makeReader } from '../input/reader.js';
import { cautionsFor } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { divideRatios, wholeRatio, type Ratio } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, type Step } from '../working.js';
import {
  judge,
  layerCheck,
  marginOf,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { PLACE, SLOPE_LIMIT, SPAN, TOLERANCE } from './limits.js';
import { readReadings } from './read-readings.js';
import { readBetween, type BetweenInput, type SetWith } from './tolerance.js';

/** A fall as measured between two points. */
export interface FallReadingInput {
  readonly id: string;
  /** How far the surface drops over the run, + the way it should. */
  readonly fall: LengthInput;
  /** Plan distance between the two points. */
  readonly run: LengthInput;
}

/** A slope with what its two heights leave uncertain. */
export interface CheckedFall extends CheckedReading<Slope> {
  readonly fall: Length;
  readonly run: Length;
  /** Either way, about 95 %. */
  readonly uncertainty: Slope;
}

/** Slopes of a surface against their limits; the `value` of a reading is its slope, + as it should fall. */
export interface FallCheck extends LayerCheck<Slope> {
  readonly check: 'fall';
  readonly readings: readonly CheckedFall[];
  readonly outOfTolerance: readonly CheckedFall[];
}

/** Standard uncertainties to either side that are taken as doubt: about 95 % (common practice). */
const COVERAGE = 2;

/**
 * Checks slopes that were measured as a fall over a run, with the uncertainty of the two heights:
 * `i = d / L`, `u = 2 sqrt(2) s / L` with s the standard uncertainty of one height. `pass` where the
 * whole band `i - u` to `i + u` keeps the limits, `fail` where none of it does, else `unclear`. Exact
 * but for the root, which is rounded to 40 digits. The run is taken as known: an error of 1 % in it
 * changes the slope by 1 % of itself.
 *
 * @param options.layer - the surface, such as `pavers`
 * @param options.readings - each `id` once, `fall` [length, + the way it should] over `run` [length]
 * @param options.tolerance - a set of `TOLERANCE_SETS` that limits slopes, or your own `least`, `most`
 *   or both [slope]; without a least, the slope may not be steeper than `most` either way
 * @param options.standardUncertainty - of one height [length], default none
 * @returns verdict; each reading with its slope, margin and uncertainty [slope], verdict, and how far
 *   to raise or lower the low end; cautions
 * @throws `LIMIT_NOT_SET`, `LIMITS_CONTRADICT`, `DUPLICATE_ID`, `NOT_POSITIVE`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `EMPTY_LIST` and the reading codes
 * @source paver-tolerances
 * @source derived
 * @source common-practice
 * @example
 * const readings = [{ id: 'drive', fall: '60 mm', run: '3 m' }];
 * const check = checkFall({
 *   layer: 'pavers',
 *   readings,
 *   tolerance: 'paver-guide-mm',
 *   standardUncertainty: '2 mm',
 * });
 * check.verdict //=> 'unclear'
 * check.readings[0]?.uncertainty.to('percent').toFixed(2) //=> '0.19'
 * checkFall({ layer: 'pavers', readings, tolerance: 'paver-guide-mm' }).verdict //=> 'pass'
 */
export function checkFall(options: {
  readonly layer: string;
  readonly readings: readonly FallReadingInput[];
  readonly tolerance: SetWith<'slope'> | BetweenInput<'slope'>;
  readonly standardUncertainty?: LengthInput;
}): FallCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const layer = reader.text(fields['layer'], ['layer']);
  const rows = readReadings(reader, fields['readings'], (row, path) => ({
    fall: reader.quantity('length', row['fall'], [...path, 'fall'], PLACE),
    run: reader.quantity('length', row['run'], [...path, 'run'], SPAN),
  }));
  const field = { reader, value: fields['tolerance'], words: 'slope' };
  const rules = { dimension: 'slope', rule: SLOPE_LIMIT } as const;
  const origin = readBetween(field, (set) => set.slope, rules);
  const path = ['standardUncertainty'];
  const doubt = fields['standardUncertainty'] ?? '0 mm';
  const ofHeight = reader.quantity('length', doubt, path, TOLERANCE);
  reader.finish();
  const { most } = origin;
  const limits = { least: origin.least ?? most?.negated() ?? null, most };
  const readings = rows.map(({ id, fall, run }): CheckedFall => {
    const value = slopeOf(fall, exactOf(run));
    const uncertainty = uncertaintyOf(ofHeight, run);
    const judged = judge({ id, value, limits, uncertainty }, () => {
      const isFlat = limits.least !== null && value.compare(limits.least) < 0;
      return move(isFlat ? 'lower' : 'raise', marginOf(value, limits).times(run));
    });
    return { ...judged, fall, run, uncertainty };
  });
  const parts = {
    check: 'fall',
    subject: layer,
    limits,
    origin,
    readings,
    cautions: cautionsFor('drainage'),
  } as const;
  return layerCheck(parts, () =>
    readings.flatMap((reading) => fallSteps(reading, ofHeight, sourceOf(origin))),
  );
}

const slopeOf = (rise: Length, run: Ratio): Slope =>
  fromSI('slope', divideRatios(exactOf(rise), run));

/** `2 sqrt(2) s / L`: two heights, each uncertain by s. */
const uncertaintyOf = (ofHeight: Length, run: Length): Slope =>
  slopeOf(ofHeight, divideRatios(exactOf(run), squareRoot(wholeRatio(2)))).times(COVERAGE);

function fallSteps(reading: CheckedFall, ofHeight: Length, source: Step['source']): Step[] {
  const { id, fall, run, value, uncertainty, margin } = reading;
  return [
    {
      title: `Slope at ${id}`,
      formula: 'i = d / L',
      given: [given('d', 'fall', fall), given('L', 'run', run)],
      result: given('i', 'slope', value),
      source: 'derived',
    },
    {
      title: `Uncertainty of the slope at ${id}, about 95 %`,
      formula: 'u = 2 sqrt(2) s / L',
      given: [given('s', 'standard uncertainty of a height', ofHeight), given('L', 'run', run)],
      result: given('u', 'uncertainty', uncertainty),
      source: 'common-practice',
    },
    {
      title: `Slope at ${id} against its limits`,
      formula: 'm = min(i - i0, i1 - i)',
      given: [given('i', 'slope', value)],
      result: given('m', 'margin', margin),
      source,
    },
  ];
}
