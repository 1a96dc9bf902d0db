import { choice, custom, list, optional, text } from '../input/field.js';
import { readOptions, shapeOf, type Field } from '../input/shape.js';
import { SOURCES, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import type { Caution } from '../sources/cautions.js';
import type { QuantityJSON } from '../units/quantity-types.js';
import { worstVerdict, type Verdict } from '../verdict.js';
import { deepFreeze, type Step } from '../working.js';
import { describeCheckMove } from './describe-check-move.js';
import { isLayerCheck } from './is-layer-check.js';
import type { CheckKind } from './layer-check.js';
import { tapeOf, workingText, type ReportSystem } from './print-amount.js';
import {
  limitsOf,
  readingTexts,
  titleOf,
  type AnyLayerCheck,
  type ReadingText,
} from './report-words.js';

/** The checks that go into a report. */
export interface LayerReportOptions {
  /** Subject of the report, such as `Base of the drive`. */
  readonly layer: string;
  /**
   * Results of `checkLevels`, `checkThickness`, `checkFlatness`, `checkLippage`, `checkJointWidth`,
   * `checkBondLine`, `checkFall` and `checkCompaction`, in the order to print, 1 to 1000.
   */
  readonly checks: readonly AnyLayerCheck[];
  /** `us` (feet and inches) or `metric`. */
  readonly system: ReportSystem;
  /** Date, place, instrument, who measured, or other notes on one line. Default: none. */
  readonly remarks?: string;
}

const MOST_CHECKS = 1000;
const MOST_REMARKS = 1000;

/** The result of a check. Its working is lost if it is copied or goes through JSON. */
const checkField: Field<AnyLayerCheck | null> = custom((reader, value, path) => {
  if (isLayerCheck(value)) return value;
  reader.fail(
    'WRONG_TYPE',
    path,
    'pass the result of checkLevels() or of another check, not a copy',
  );
  return null;
});

const OPTIONS = shapeOf<LayerReportOptions>()({
  layer: text(),
  checks: list(checkField, { of: 'checks', most: MOST_CHECKS }),
  system: choice(['us', 'metric']),
  remarks: optional(text(MOST_REMARKS)),
});

/** A reading in a report. */
export interface ReportedReading {
  /** The reading. */
  readonly id: string;
  /** How it compares with its limits. */
  readonly verdict: Verdict;
  /** As printed, such as `gap 12 mm at station 1.500 m`. */
  readonly measured: string;
  /** The value that is judged, exact. */
  readonly value: QuantityJSON;
  /** Margin to the nearer limit, exact; negative out of limits. */
  readonly margin: QuantityJSON;
  /** What to do, such as `add 12 mm`; null if it passes. */
  readonly move: string | null;
}

/** A publication in a report. */
export interface ReportedSource {
  /** Its id in `SOURCES`. */
  readonly id: SourceId;
  /** Its printed title. */
  readonly title: string;
  /** Section or table. */
  readonly section: string;
  /** How far it can be traced. */
  readonly status: SourceStatus;
}

/** A value of the working in a report. */
export interface ReportedValue {
  /** Symbol in the formula. */
  readonly symbol: string;
  /** Name of the value. */
  readonly name: string;
  /** As printed. */
  readonly value: string;
}

/** A step of the working in a report. */
export interface ReportedStep {
  /** Title of the step. */
  readonly title: string;
  /** The formula; null for a step that a function does. */
  readonly formula: string | null;
  /** The step in words; null for a formula. */
  readonly method: string | null;
  /** Inputs. */
  readonly given: readonly ReportedValue[];
  /** Result. */
  readonly result: ReportedValue;
  /** Where the formula or the limit is printed. */
  readonly source: ReportedSource;
}

/** One check in a report. */
export interface ReportedCheck {
  /** Kind of check. */
  readonly check: CheckKind;
  /** The same in words. */
  readonly title: string;
  /** The verdict on the layer. */
  readonly verdict: Verdict;
  /** As printed, such as `no more than 10 mm under 3 m`. */
  readonly limits: string;
  /** Name of the set in `TOLERANCE_SETS`; null for your own limits. */
  readonly toleranceSet: string | null;
  /** Where the limits are printed; null for your own limits. */
  readonly source: ReportedSource | null;
  /** Every reading. */
  readonly readings: readonly ReportedReading[];
  /** The readings that do not pass. */
  readonly outOfTolerance: readonly ReportedReading[];
  /** The outcome in words, without figures. */
  readonly note: string;
  /** The working of the check. */
  readonly working: readonly ReportedStep[];
}

/** The checks of one layer, as plain data to print and to keep. */
export interface LayerReport {
  /** Kind of report: always `layer`. */
  readonly report: 'layer';
  /** Subject of the report. */
  readonly layer: string;
  /** Units of the printed text. */
  readonly system: ReportSystem;
  /** Fail if one check fails, unclear if one is, else pass. */
  readonly verdict: Verdict;
  /** Your notes; null if there are none. */
  readonly remarks: string | null;
  /** The checks, in the order given. */
  readonly checks: readonly ReportedCheck[];
  /** Cautions of all checks, without repeats. */
  readonly cautions: readonly Caution[];
  /** The report as lines of text. */
  readonly lines: readonly string[];
}

/**
 *
 * Combines the checks of one layer into a report: the readings out of tolerance, the correction for
 * each, the source of each limit and the working. The report is plain frozen data and survives JSON
 * unchanged. Readings are printed fine enough to show that a failed one is out of limits.
 *
 * @param options - see {@link LayerReportOptions}
 * @returns verdict, checks, cautions and the lines to print
 * @throws `EMPTY_LIST`, `EMPTY`, `WRONG_TYPE` if an entry is not the result of a check, `TOO_MANY`,
 * `TOO_LONG`, `BAD_CHARACTER`, `UNKNOWN_CHOICE`, `REQUIRED`
 * @source derived
 * @example
 * const flatness = checkFlatness({
 *   layer: 'base',
 *   profile: [
 *     { station: '0 m', height: '0 mm' },
 *     { station: '1.5 m', height: '-12 mm' },
 *     { station: '3 m', height: '0 mm' },
 *   ],
 *   tolerance: 'paver-guide-mm',
 * });
 * const report = layerReport({ layer: 'Base of the drive', checks: [flatness], system: 'metric' });
 * report.verdict //=> 'fail'
 * report.lines.slice(0, 3)
 * //=> ['Base of the drive: FAIL', 'Flatness of the base: FAIL (no more than 10 mm under 3 m)', '  2: gap 12 mm at station 1.500 m: add 12 mm']
 */
export function layerReport(options: LayerReportOptions): LayerReport {
  const read = readOptions(options, OPTIONS);
  const { layer, system, remarks = null } = read;
  const given = read.checks.filter((check) => check !== null);
  const checks = given.map((check) => reportCheck(check, system));
  const cautions = [...new Set(given.flatMap((check) => check.cautions))];
  const verdict = worstVerdict(checks.map((check) => check.verdict));
  const lines = [
    `${layer}: ${verdict.toUpperCase()}`,
    ...(remarks === null ? [] : [remarks]),
    ...checks.flatMap(linesOf),
    ...cautions.map(({ text }) => `Caution: ${text}`),
  ];
  return deepFreeze({ report: 'layer', layer, system, verdict, remarks, checks, cautions, lines });
}

function reportCheck(check: AnyLayerCheck, system: ReportSystem): ReportedCheck {
  const readings = readingTexts(check, system).map((one) => reportReading(one, system));
  return {
    check: check.check,
    title: titleOf(check),
    verdict: check.verdict,
    limits: limitsOf(check, system),
    toleranceSet: check.toleranceSet,
    source: check.source === null ? null : sourceOf(check.source),
    readings,
    outOfTolerance: readings.filter(({ verdict }) => verdict !== 'pass'),
    note: check.note,
    working: check.working.map((step) => reportStep(step, system)),
  };
}

function reportReading({ reading, measured }: ReadingText, system: ReportSystem): ReportedReading {
  const { id, verdict, value, margin, move } = reading;
  const todo = move === null ? 'measure again' : describeCheckMove(move, tapeOf(system));
  return {
    id,
    verdict,
    measured,
    value: value.toJSON(),
    margin: margin.toJSON(),
    move: verdict === 'pass' ? null : todo,
  };
}

const sourceOf = (id: SourceId): ReportedSource => ({ id, ...SOURCES[id] });

function reportStep(step: Step, system: ReportSystem): ReportedStep {
  const shown = ({ symbol, name, value }: Step['result']): ReportedValue => ({
    symbol,
    name,
    value: workingText(value, system),
  });
  return {
    title: step.title,
    formula: step.kind === 'formula' ? step.formula : null,
    method: step.kind === 'procedure' ? step.method : null,
    given: step.given.map(shown),
    result: shown(step.result),
    source: sourceOf(step.source),
  };
}

function linesOf(check: ReportedCheck): string[] {
  const passing = check.readings.length - check.outOfTolerance.length;
  const source =
    check.source === null
      ? 'Limits of the job.'
      : `Limits: ${check.source.title}; ${check.source.section}.`;
  return [
    `${check.title}: ${check.verdict.toUpperCase()} (${check.limits})`,
    ...check.outOfTolerance.map(({ id, measured, move }) => `  ${id}: ${measured}: ${move ?? ''}`),
    `  ${passing} of ${check.readings.length} within tolerance. ${check.note}`,
    `  ${source}`,
  ];
}
