import { checkBondLine, type CheckBondLineOptions } from '../../checks/check-bond-line.js';
import { checkCompaction, type CheckCompactionOptions } from '../../checks/check-compaction.js';
import { checkFall, type CheckFallOptions } from '../../checks/check-fall.js';
import { checkFlatness, type WithTolerance } from '../../checks/check-flatness.js';
import type { CheckFlatnessOptions } from '../../checks/check-flatness.js';
import { checkJointWidth, type CheckJointWidthOptions } from '../../checks/check-joint-width.js';
import { checkLippage, type CheckLippageOptions } from '../../checks/check-lippage.js';
import type { FieldPath } from '../../errors.js';
import { custom, list, optional, text } from '../../input/field.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type {
  JobBondLineInput,
  JobCompactionInput,
  JobFallInput,
  JobFlatnessInput,
  JobJointWidthInput,
  JobLippageInput,
} from './placed-input.js';
import {
  placedField,
  type Pavements,
  type PlacedKind,
  type PlacedReading,
} from './placed-readings.js';

/** A field of a check: the check reads it. */
const asGiven = custom((_reader, value) => value);
const maybe = optional(asGiven);

/** There is no default tolerance. */
const tolerance = custom((reader, value, path) => {
  if (value !== undefined) return value;
  const message = 'missing. Name a set, such as "paver-guide-in", or give your own limits';
  reader.fail('REQUIRED', path, message);
  return undefined;
});

const PLACE = { pavement: text(), place: text(), tolerance };
const SURFACE_PLACE = { ...PLACE, surface: text() };

const FLATNESS: PlacedKind = {
  shape: shapeOf<JobFlatnessInput>()({ ...SURFACE_PLACE, profile: asGiven, uncertainty: maybe }),
  // the longest edge stands in for a tolerance that is missing: that is reported already
  check: (given, kind) =>
    checkFlatness({
      tolerance: { maximum: '10 m', over: '10 km' },
      ...given,
      layer: kind,
    } as CheckFlatnessOptions & WithTolerance),
  names: { layer: 'surface' },
};

const COMPACTION: PlacedKind = {
  shape: shapeOf<JobCompactionInput>()({
    ...SURFACE_PLACE,
    readings: asGiven,
    maximumDryDensity: asGiven,
    test: asGiven,
    uncertainty: maybe,
  }),
  check: (given, kind) => checkCompaction({ ...given, layer: kind } as CheckCompactionOptions),
  names: { layer: 'surface' },
};

const FALL: PlacedKind = {
  shape: shapeOf<JobFallInput>()({
    ...SURFACE_PLACE,
    readings: asGiven,
    standardUncertainty: maybe,
  }),
  check: (given, kind) => checkFall({ ...given, layer: kind } as CheckFallOptions),
  names: { layer: 'surface' },
};

const LIPPAGE: PlacedKind = {
  shape: shapeOf<JobLippageInput>()({
    ...PLACE,
    at: asGiven,
    readings: asGiven,
    uncertainty: maybe,
  }),
  check: (given) => {
    const { at, ...rest } = given as { readonly at?: unknown };
    return checkLippage({ ...rest, place: at } as CheckLippageOptions);
  },
  names: { place: 'at' },
};

const JOINT_WIDTH: PlacedKind = {
  shape: shapeOf<JobJointWidthInput>()({
    ...PLACE,
    readings: asGiven,
    minimumShare: maybe,
    uncertainty: maybe,
  }),
  check: (given) => checkJointWidth(given as CheckJointWidthOptions),
};

const BOND_LINE: PlacedKind = {
  shape: shapeOf<JobBondLineInput>()({ ...PLACE, readings: asGiven, uncertainty: maybe }),
  check: (given) => checkBondLine(given as CheckBondLineOptions),
};

/** The lists of readings between the stakes, from the ground up. Internal. */
export const PLACED = [
  'compaction',
  'flatness',
  'fall',
  'lippage',
  'jointWidth',
  'bondLine',
] as const;

const MOST_PLACES = 1000;

/** The fields of the readings between the stakes. Internal. */
export const placedFields = (pavements: Pavements) => {
  const of = (kind: PlacedKind) =>
    optional(list(placedField(pavements, kind), { of: 'places', most: MOST_PLACES }));
  return {
    compaction: of(COMPACTION),
    flatness: of(FLATNESS),
    fall: of(FALL),
    lippage: of(LIPPAGE),
    jointWidth: of(JOINT_WIDTH),
    bondLine: of(BOND_LINE),
  };
};

/** Refuses a place that is listed twice. Internal. */
export function refuseSecondPlace(
  reader: Reader,
  readings: readonly (PlacedReading | null | undefined)[],
  path: FieldPath,
): void {
  const seen = new Set<string>();
  readings.forEach((one, index) => {
    if (one === null || one === undefined) return;
    const { pavement, place, surface, check } = one;
    const key = JSON.stringify([pavement.id, surface, place, check.subject]);
    const message = `${shown(place)} is listed twice for ${pavement.name}. Give each place its own name`;
    if (seen.has(key)) reader.fail('DUPLICATE_ID', [...path, index, 'place'], message);
    seen.add(key);
  });
}
