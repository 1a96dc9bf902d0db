import { known } from '../invariant.js';
import { optional, quantity, text } from '../input/field.js';
import { ELEVATION, ROD_READING, THICKNESS, THICKNESS_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { shownText } from '../shown-text.js';
import type { SourceId } from '../sources/catalogue.js';
import type { OverAndUnder } from '../sources/tolerance-sets.js';
import { max, min, sum } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { worstVerdict } from '../verdict.js';
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
import { oneForm, type Form } from './one-form.js';
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

/**
 * A thickness at a spot, in one of three forms: measured in a hole, from elevations of top and
 * bottom, or from rod readings on top and bottom under one height of instrument.
 */
export type ThicknessReadingInput =
  ThicknessInHoleInput | ThicknessByLevelsInput | ThicknessByRodInput;

/** A thickness measured in a hole. */
export interface ThicknessInHoleInput extends NamedReadingInput {
  /** Thickness [length], 0 to 5 m. */
  readonly thickness: LengthInput;
}

/** A thickness from elevations. */
export interface ThicknessByLevelsInput extends NamedReadingInput {
  /** Elevation of the top [length], up to 10 km either way. */
  readonly top: LengthInput;
  /** Elevation of the bottom at the same spot [length], up to 10 km either way. */
  readonly bottom: LengthInput;
}

/** A thickness from rod readings under one height of instrument. */
export interface ThicknessByRodInput extends NamedReadingInput {
  /** Rod reading on the top [length], 0 to 20 m. */
  readonly rodOnTop: LengthInput;
  /** Rod reading on the bottom at the same spot [length], 0 to 20 m. */
  readonly rodOnBottom: LengthInput;
}

/** Thicknesses of a layer, and their tolerance. */
export interface CheckThicknessOptions {
  /** Layer: `base` or `bedding`; with your own limits any name. */
  readonly layer: string;
  /** Compacted thickness of the design [length], more than 0 and at most 5 m. */
  readonly design: LengthInput;
  /** Thicknesses, 1 to 10 000. */
  readonly readings: readonly ThicknessReadingInput[];
  /** A set of `TOLERANCE_SETS` that limits thickness, or your own `over` and `under`. */
  readonly tolerance: SetWith<'thickness'> | BandInput;
  /** Your own `over` and `under` for the average. Default: those of each reading. */
  readonly averageTolerance?: BandInput;
  /** Uncertainty of a thickness, either way [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

/** The fields of all forms. */
type AnyForm = NamedReadingInput &
  Partial<ThicknessInHoleInput & ThicknessByLevelsInput & ThicknessByRodInput>;

const READING = shapeOf<AnyForm>()({
  id: text(),
  thickness: optional(quantity(THICKNESS_OR_NONE)),
  top: optional(quantity(ELEVATION)),
  bottom: optional(quantity(ELEVATION)),
  rodOnTop: optional(quantity(ROD_READING)),
  rodOnBottom: optional(quantity(ROD_READING)),
});

const FORMS: readonly Form[] = [['thickness'], ['top', 'bottom'], ['rodOnTop', 'rodOnBottom']];

type Reading = Values<typeof READING>;

const checkReading: Check<typeof READING> = (reader, values, path, raw) => {
  const form = oneForm(reader, raw, { forms: FORMS, shape: READING, path });
  const thickness = thicknessAt(values);
  if (form === undefined || thickness?.isNegative() !== true) return;
  const message = 'the top is below the bottom. Check which reading is which';
  reader.fail('NEGATIVE', [...path, form], message, { got: thickness.toString() });
};

/** The thickness of a reading; undefined if part of it could not be read. */
function thicknessAt({
  thickness,
  top,
  bottom,
  rodOnTop,
  rodOnBottom,
}: Partial<Reading>): Length | undefined {
  if (top !== undefined && bottom !== undefined) return top.minus(bottom);
  if (rodOnTop !== undefined && rodOnBottom !== undefined) return rodOnBottom.minus(rodOnTop);
  return thickness;
}

const OPTIONS = shapeOf<CheckThicknessOptions>()({
  layer: text(),
  design: quantity(THICKNESS),
  readings: readingsOf(READING, checkReading),
  tolerance: toleranceField(bandField),
  averageTolerance: optional(bandField),
  uncertainty: lengthUncertainty,
});

/**
 * The thicknesses of a layer compared with the design; the `value` of a reading is its thickness.
 */
export interface ThicknessCheck extends LayerCheck<Length> {
  /** Kind of check. */
  readonly check: 'thickness';
  /** Minimum and maximum thickness of a reading. */
  readonly limits: Limits<Length>;
  /** Compacted thickness of the design. */
  readonly design: Length;
  /** The thinnest reading. */
  readonly thinnest: Length;
  /** The thickest reading. */
  readonly thickest: Length;
  /** The average of the readings compared with its own limits; its id is `average`. */
  readonly average: CheckedReading;
  /** Minimum and maximum of the average. */
  readonly averageLimits: Limits<Length>;
}

/**
 * Checks the compacted thickness of a layer against the design, each reading and their average:
 * `design - under <= t <= design + over`. Exact: a reading on a limit passes.
 *
 * @param options - see {@link CheckThicknessOptions}
 * @returns verdict; thinnest, thickest and average; each reading with its margin [length], verdict and
 *   what to cut or add to the design
 * @throws `LIMIT_NOT_SET`, `DUPLICATE_ID`, `REQUIRED`, `CONFLICTING_FIELDS`, `NOT_POSITIVE`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `EMPTY_LIST` and the reading codes
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
export function checkThickness(options: CheckThicknessOptions): ThicknessCheck {
  const read = readOptions(options, OPTIONS, checkSet);
  const { layer, design, uncertainty } = read;
  const band = limitsFrom(read.tolerance, thicknessOf(layer), bandOf);
  const ofAverage = read.averageTolerance ?? band;
  const put = (difference: Band) => ({
    limits: { minimum: design.minus(difference.under), maximum: design.plus(difference.over) },
    uncertainty,
  });
  const cutOrAdd = (value: Length) =>
    move(value.compare(design) < 0 ? 'add' : 'cut', value.minus(design));
  const readings = read.readings.map((reading) => {
    const value = known(thicknessAt(reading), 'thickness');
    return judge({ id: reading.id, value, ...put(band) }, cutOrAdd);
  });
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
  const source = sourceOf(band);
  const show = (reading: CheckedReading, { over, under }: Band) =>
    thicknessSteps(reading, { layer, design }, { over, under, source });
  return layerCheck(parts, () => [
    ...readings.flatMap((reading) => show(reading, band)),
    ...show(average, ofAverage),
  ]);
}

const LEAVE_DEEP =
  'Out of tolerance. Make the corrections listed, then measure again. If a layer is thick over a deep dig but its top is on grade, leave it.';

const thicknessOf = (layer: string): Needed<OverAndUnder> => ({
  words: `thickness of the ${shownText(layer)}`,
  find: ({ thickness }) =>
    layer === 'base' || layer === 'bedding' ? thickness?.[layer] : undefined,
});

const checkSet = checkLayerSet(thicknessOf);

function thicknessSteps(
  { id, value, margin }: CheckedReading,
  { layer, design }: { readonly layer: string; readonly design: Length },
  band: Band & { readonly source: SourceId },
): Step[] {
  const difference = given('d', 'difference', value.minus(design));
  const title = `Thickness of the ${layer}, ${id}`;
  return [
    formulaStep({
      title,
      formula: 'd = t - t0',
      given: [given('t', 'thickness', value), given('t0', 'design', design)],
      result: difference,
      source: band.source,
    }),
    bandStep(`${title}, against its limits`, difference, band, { margin, source: band.source }),
  ];
}
