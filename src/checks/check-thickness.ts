import type { FieldPath } from '../errors.js';
import { makeReader, type QuantityRule, type Reader } from '../input/reader.js';
import { exactlyOne } from '../input/exactly-one.js';
import type { ToleranceSet } from '../sources/tolerance-sets.js';
import { max, min, sum } from '../units/aggregate.js';
import { length, type LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { worstVerdict } from '../verdict.js';
import { given, type Step } from '../working.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { MEASURED_THICKNESS, PLACE, ROD, THICKNESS } from './limits.js';
import { readReadings } from './read-readings.js';
import {
  readBand,
  readUncertainty,
  type Band,
  type BandInput,
  type SetWith,
  type ToleranceOrigin,
} from './tolerance.js';

/**
 * A thickness at a spot: measured in a hole; or from the elevations of its top and bottom; or from
 * rod readings on top and bottom under one height of instrument. All at the same spot.
 */
export type ThicknessReadingInput = { readonly id: string } & (
  | { readonly thickness: LengthInput }
  | { readonly top: LengthInput; readonly bottom: LengthInput }
  | { readonly rodOnTop: LengthInput; readonly rodOnBottom: LengthInput }
);

/** The thicknesses of a layer against the design; the `value` of a reading is its thickness. */
export interface ThicknessCheck extends LayerCheck<Length> {
  readonly check: 'thickness';
  readonly limits: { readonly least: Length; readonly most: Length };
  readonly design: Length;
  readonly thinnest: Length;
  readonly thickest: Length;
  /** The mean of the readings against the limits of the average; its id is `average`. */
  readonly average: CheckedReading;
  readonly averageLimits: { readonly least: Length; readonly most: Length };
  readonly readings: readonly CheckedReading[];
  readonly outOfTolerance: readonly CheckedReading[];
}

/**
 * Checks the compacted thickness of a layer against the design, each reading and their average:
 * `design - under <= t <= design + over`. Exact: a reading on a limit passes.
 *
 * @param options.layer - `base` or `bedding`; with limits of your own any name
 * @param options.design - compacted thickness of the design [length]
 * @param options.readings - each `id` once, with `thickness`, or `top` and `bottom` elevation, or
 *   `rodOnTop` and `rodOnBottom` [length]
 * @param options.tolerance - a set of `TOLERANCE_SETS` that limits thickness, or your own `over` and
 *   `under` [length, not negative]
 * @param options.averageTolerance - `over` and `under` for the average, default those of each reading
 * @param options.uncertainty - how far a thickness can be off, either way [length], default none
 * @returns verdict; thinnest, thickest and average; each reading with its margin [length], verdict and
 *   what to cut or add to the design
 * @throws `LIMIT_NOT_SET`, `DUPLICATE_ID`, `ONE_OF`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `EMPTY_LIST` and the reading codes
 * @source paver-tolerances
 * @source derived
 * @example
 * const check = checkThickness({
 *   layer: 'base',
 *   design: '8 in',
 *   readings: [
 *     { id: 'A', thickness: '7 1/2 in' },
 *     { id: 'B', thickness: '7 1/4 in' },
 *     { id: 'C', thickness: '8 3/4 in' },
 *   ],
 *   tolerance: 'paver-guide-in',
 * });
 * check.verdict //=> 'fail'
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'in' })}`) //=> ['B: add 3/4 in']
 * check.average.verdict //=> 'pass'
 */
export function checkThickness(options: {
  readonly layer: string;
  readonly design: LengthInput;
  readonly readings: readonly ThicknessReadingInput[];
  readonly tolerance: SetWith<'thickness'> | BandInput;
  readonly averageTolerance?: BandInput;
  readonly uncertainty?: LengthInput;
}): ThicknessCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const layer = reader.text(fields['layer'], ['layer']);
  const design = reader.quantity('length', fields['design'], ['design'], THICKNESS);
  const rows = readReadings(reader, fields['readings'], (row, path) => ({
    thickness: readThickness(reader, row, path),
  }));
  const words = `thickness of the ${layer}`;
  const field = { reader, value: fields['tolerance'], words };
  const band = readBand(field, (set) => thicknessOf(set, layer));
  const ofAverage = readAverageBand(reader, fields['averageTolerance']) ?? band;
  const uncertainty = readUncertainty(reader, fields);
  reader.finish();
  const put = (difference: Band) => ({
    limits: { least: design.minus(difference.under), most: design.plus(difference.over) },
    uncertainty,
  });
  const cutOrAdd = (value: Length) =>
    move(value.compare(design) < 0 ? 'add' : 'cut', value.minus(design));
  const readings = rows.map(({ id, thickness }) =>
    judge({ id, value: thickness, ...put(band) }, cutOrAdd),
  );
  const values = readings.map(({ value }) => value);
  const mean = sum(values).dividedBy(values.length);
  const average = judge({ id: 'average', value: mean, ...put(ofAverage) }, cutOrAdd);
  const verdict = worstVerdict([...readings, average].map((reading) => reading.verdict));
  const parts = {
    check: 'thickness',
    subject: layer,
    design,
    limits: put(band).limits,
    origin: band,
    readings,
    average,
    averageLimits: put(ofAverage).limits,
    thinnest: min(values),
    thickest: max(values),
    verdict,
    ...(verdict === 'fail' ? { note: LEAVE_DEEP } : {}),
  } as const;
  return layerCheck(parts, () =>
    [...readings, average].map((reading) => thicknessStep(reading, { layer, design, band })),
  );
}

const LEAVE_DEEP =
  'Out of tolerance: make the moves listed, then measure again. Where a layer is thick over a deep dig but its top stands right, leave it.';

const THICKNESS_FORMS = ['thickness', 'top', 'rodOnTop'] as const;

function readThickness(
  reader: Reader,
  row: Readonly<Record<string, unknown>>,
  path: FieldPath,
): Length {
  const form = exactlyOne(reader, row, THICKNESS_FORMS, path);
  const read = (name: string, rule: QuantityRule<'length'>) =>
    reader.quantity('length', row[name], [...path, name], rule);
  if (form === undefined) return NOTHING;
  if (form === 'thickness') return read('thickness', MEASURED_THICKNESS);
  const thickness =
    form === 'top'
      ? read('top', PLACE).minus(read('bottom', PLACE))
      : read('rodOnBottom', ROD).minus(read('rodOnTop', ROD));
  if (thickness.isNegative()) {
    reader.fail('NEGATIVE', [...path, form], 'the top lies below the bottom', {
      got: thickness.toString(),
    });
  }
  return thickness;
}

function readAverageBand(reader: Reader, value: unknown): Band | undefined {
  if (value === undefined) return undefined;
  const path = ['averageTolerance'];
  const field = { reader, value: reader.object(value, path), path, words: 'average' };
  return readBand(field, () => undefined);
}

const thicknessOf = (set: ToleranceSet, layer: string) =>
  layer === 'base' || layer === 'bedding' ? set.thickness?.[layer] : undefined;

const NOTHING = length(0, 'm');

function thicknessStep(
  { id, value }: CheckedReading,
  { layer, design, band }: { layer: string; design: Length; band: Band & ToleranceOrigin },
): Step {
  return {
    title: `Thickness of the ${layer}, ${id}`,
    formula: 'd = t - t0',
    given: [
      given('t', 'thickness', value),
      given('t0', 'design', design),
      given('over', 'most over', band.over),
      given('under', 'most under', band.under),
    ],
    result: given('d', 'difference', value.minus(design)),
    source: sourceOf(band),
  };
}
