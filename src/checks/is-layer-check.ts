import { isPlain } from '../input/plain.js';
import { SOURCES } from '../sources/catalogue.js';
import type { Dimension } from '../units/catalogue.js';
import { isQuantity } from '../units/quantity.js';
import { isVerdict } from '../verdict.js';
import { isCheckMove } from './describe-check-move.js';
import type { CheckKind } from './layer-check.js';
import type { AnyLayerCheck } from './report-words.js';

/** Checks whether a value is valid for a field of a result. */
type Test = (value: unknown) => boolean;

const isText: Test = (value) => typeof value === 'string';
const isNumber: Test = (value) => typeof value === 'number' && Number.isFinite(value);
const isOf =
  (dimension: Dimension): Test =>
  (value) =>
    isQuantity(value) && value.dimension === dimension;
const oneOf =
  (...values: readonly unknown[]): Test =>
  (value) =>
    values.includes(value);
const orNull =
  (test: Test): Test =>
  (value) =>
    value === null || test(value);
const hasAll =
  (fields: Readonly<Record<string, Test>>): Test =>
  (value) =>
    isPlain(value) && Object.entries(fields).every(([name, test]) => test(value[name]));

/** A list whose entries all pass; a gap does not. */
const listOf =
  (test: Test): Test =>
  (value) => {
    if (!Array.isArray(value)) return false;
    for (const entry of value as unknown[]) if (!test(entry)) return false;
    return true;
  };

const isSource: Test = (value) => typeof value === 'string' && Object.hasOwn(SOURCES, value);
const isStepItem: Test = (value) => isText(value) || isNumber(value) || isQuantity(value);
const isStepValue: Test = (value) => isStepItem(value) || listOf(isStepItem)(value);
const isStepInput = hasAll({ symbol: isText, name: isText, value: isStepValue });
const isFormula = hasAll({ kind: oneOf('formula'), formula: isText });
const isProcedure = hasAll({ kind: oneOf('procedure'), procedure: isText, method: isText });
const isStepKind: Test = (value) => isFormula(value) || isProcedure(value);
const hasStepFields = hasAll({
  title: isText,
  given: listOf(isStepInput),
  result: isStepInput,
  source: isSource,
});

const isStep: Test = (value) => isStepKind(value) && hasStepFields(value);

/** Fields of every check that a report uses. */
const COMMON = {
  subject: isText,
  verdict: isVerdict,
  toleranceSet: orNull(isText),
  source: orNull(isSource),
  note: isText,
  cautions: listOf(hasAll({ id: isText, text: isText })),
  working: listOf(isStep),
};

/** Fields of every reading that a report uses. */
const readingOf = (dimension: Dimension, own: Readonly<Record<string, Test>> = {}): Test =>
  hasAll({
    id: isText,
    value: isOf(dimension),
    margin: isOf(dimension),
    verdict: isVerdict,
    move: orNull(isCheckMoveTest),
    ...own,
  });

const isCheckMoveTest: Test = (value) => isCheckMove(value);
const isLength = isOf('length');
const either = hasAll({ minimum: orNull(isLength), maximum: orNull(isLength) });
const both = hasAll({ minimum: isLength, maximum: isLength });
const plain = { readings: listOf(readingOf('length')) };
const along = { readings: listOf(readingOf('length', { station: isLength })) };

/** Fields of each kind of check that a report uses. */
const KINDS: Readonly<Record<CheckKind, Readonly<Record<string, Test>>>> = {
  level: { limits: both, ...plain },
  thickness: { limits: both, averageLimits: both, average: readingOf('length'), ...plain },
  flatness: { limits: hasAll({ maximum: isLength }), edgeLength: isLength, ...along },
  lippage: { limits: either, ...plain },
  'joint-width': { limits: either, ...plain },
  'bond-line': { limits: both, stringLength: isLength, ...along },
  fall: {
    limits: hasAll({ minimum: orNull(isOf('slope')), maximum: orNull(isOf('slope')) }),
    readings: listOf(readingOf('slope', { uncertainty: isOf('slope') })),
  },
  compaction: {
    minimumPercent: isNumber,
    maximumDryDensity: isOf('density'),
    test: oneOf('standard', 'modified', 'control-strip'),
    readings: listOf(readingOf('density', { percent: isNumber })),
  },
};

/** True for the result of a check with all fields that a report uses. Internal. */
export function isLayerCheck(value: unknown): value is AnyLayerCheck {
  if (!isPlain(value)) return false;
  const { check } = value;
  if (typeof check !== 'string' || !Object.hasOwn(KINDS, check)) return false;
  return hasAll({ ...COMMON, ...KINDS[check as CheckKind] })(value);
}
