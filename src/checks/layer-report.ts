import { makeReader, type Reader } from '../input/reader.js';
import { SOURCES, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import type { Caution } from '../sources/cautions.js';
import type { QuantityJSON } from '../units/quantity-json.js';
import { worstVerdict, type Verdict } from '../verdict.js';
import { deepFreeze, type Step } from '../working.js';
import { describeCheckMove } from './describe-check-move.js';
import type { CheckKind } from './layer-check.js';
import { tapeOf, workingText, type ReportSystem } from './print-amount.js';
import {
  limitsOf,
  readingTexts,
  titleOf,
  type AnyLayerCheck,
  type ReadingText,
} from './report-words.js';

/** A reading in a report. */
export interface ReportedReading {
  readonly id: string;
  readonly verdict: Verdict;
  /** As printed, such as `gap 12 mm at station 1.500 m`. */
  readonly measured: string;
  /** What is judged, exactly. */
  readonly value: QuantityJSON;
  /** How far within the nearer limit, exactly; negative beyond it. */
  readonly margin: QuantityJSON;
  /** What there is to do, such as `add 12 mm`; null where it passes. */
  readonly move: string | null;
}

/** A publication in a report. */
export interface ReportedSource {
  readonly id: SourceId;
  readonly title: string;
  readonly section: string;
  readonly status: SourceStatus;
}

/** A value of the working in a report. */
export interface ReportedValue {
  readonly symbol: string;
  readonly name: string;
  readonly value: string;
}

/** A step of the working in a report. */
export interface ReportedStep {
  readonly title: string;
  readonly formula: string;
  readonly given: readonly ReportedValue[];
  readonly result: ReportedValue;
  readonly source: ReportedSource;
}

/** One check in a report. */
export interface ReportedCheck {
  readonly check: CheckKind;
  readonly title: string;
  readonly verdict: Verdict;
  /** As printed, such as `at most 10 mm under 3 m`. */
  readonly limits: string;
  /** Name of the set in `TOLERANCE_SETS`; null for limits of the job's own. */
  readonly toleranceSet: string | null;
  /** Where the limits stand; null for limits of the job's own. */
  readonly source: ReportedSource | null;
  readonly readings: readonly ReportedReading[];
  /** The readings that do not pass. */
  readonly outOfTolerance: readonly ReportedReading[];
  readonly note: string;
  readonly working: readonly ReportedStep[];
}

/** The checks of one layer, as plain data to print and to keep. */
export interface LayerReport {
  readonly report: 'layer';
  readonly layer: string;
  readonly system: ReportSystem;
  /** Fail if one check fails, unclear if one is, else pass. */
  readonly verdict: Verdict;
  readonly remarks: string | null;
  readonly checks: readonly ReportedCheck[];
  readonly cautions: readonly Caution[];
  /** The report as lines of text. */
  readonly lines: readonly string[];
}

/**
 * Puts the checks of one layer together as a report: plain frozen data, so that
 * `JSON.parse(JSON.stringify(report))` is the same again, with the readings that are out of tolerance,
 * the move for each, the source of each limit and the working. A reading is printed fine enough that
 * one that fails reads as beyond its limit.
 *
 * @param options.layer - what the report is on, such as `Base of the drive`
 * @param options.checks - results of `checkLevels`, `checkThickness`, `checkFlatness`, `checkLippage`,
 *   `checkJointWidth`, `checkBondLine`, `checkFall` and `checkCompaction`, in the order wanted
 * @param options.system - `us` (feet and inches) or `metric`
 * @param options.remarks - date, place, instrument, who measured: whatever is to be kept
 * @returns verdict, checks, cautions and the lines to print
 * @throws `EMPTY_LIST`, `EMPTY`, `WRONG_TYPE` for what is no result of a check, `UNKNOWN_CHOICE`,
 *   `REQUIRED`
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
 * //=> ['Base of the drive: FAIL', 'Flatness of the base: FAIL (at most 10 mm under 3 m)', '  2: gap 12 mm at station 1.500 m: add 12 mm']
 */
export function layerReport(options: {
  readonly layer: string;
  readonly checks: readonly AnyLayerCheck[];
  readonly system: ReportSystem;
  readonly remarks?: string;
}): LayerReport {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const layer = reader.text(fields['layer'], ['layer']);
  readChecks(reader, fields['checks']);
  const system = reader.choice(fields['system'], ['system'], ['us', 'metric']);
  const remarks =
    fields['remarks'] === undefined ? null : reader.text(fields['remarks'], ['remarks']);
  reader.finish();
  const checks = options.checks.map((check) => reportCheck(check, system));
  const cautions = [...new Set(options.checks.flatMap((check) => check.cautions))];
  const verdict = worstVerdict(checks.map((check) => check.verdict));
  const lines = [
    `${layer}: ${verdict.toUpperCase()}`,
    ...(remarks === null ? [] : [remarks]),
    ...checks.flatMap(linesOf),
    ...cautions.map(({ text }) => `Caution: ${text}`),
  ];
  return deepFreeze({ report: 'layer', layer, system, verdict, remarks, checks, cautions, lines });
}

/** Makes sure that everything in the list is what a check gave back. */
function readChecks(reader: Reader, value: unknown): void {
  reader.list(value, ['checks']).forEach((item, index) => {
    const path = ['checks', index];
    const check = reader.object(item, path);
    if (check !== item) return;
    // the working of a result is lost when it is copied or goes through JSON
    if (typeof check['check'] === 'string' && Array.isArray(check['working'])) return;
    reader.fail('WRONG_TYPE', path, 'expected what a check gave back, such as checkLevels');
  });
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

function reportStep(
  { title, formula, given, result, source }: Step,
  system: ReportSystem,
): ReportedStep {
  const shown = ({ symbol, name, value }: Step['result']): ReportedValue => ({
    symbol,
    name,
    value: workingText(value, system),
  });
  return {
    title,
    formula,
    given: given.map(shown),
    result: shown(result),
    source: sourceOf(source),
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
