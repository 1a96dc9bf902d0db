import { capital } from '../capital.js';
import type { Dimension } from '../units/catalogue.js';
import type { AnyQuantity, Length, Quantity } from '../units/quantity.js';
import type { BondLineCheck } from './check-bond-line.js';
import type { CheckedDensity, CompactionCheck, CompactionTest } from './check-compaction.js';
import type { CheckedFall, FallCheck } from './check-fall.js';
import type { FlatnessCheck } from './check-flatness.js';
import type { JointWidthCheck } from './check-joint-width.js';
import type { LevelCheck } from './check-levels.js';
import type { LippageCheck } from './check-lippage.js';
import type { ThicknessCheck } from './check-thickness.js';
import type { CheckedReading } from './layer-check.js';
import { marginOf, type Limits } from './limits.js';
import {
  densityText,
  limitText,
  slopeLimitText,
  slopeText,
  spanText,
  stationText,
  tapeText,
  type ReportSystem,
} from './print-amount.js';

const TEST_WORDS: Readonly<Record<CompactionTest, string>> = {
  standard: 'standard test',
  modified: 'modified test',
  'control-strip': 'control strip',
};

/** Any check that a report can include. */
export type AnyLayerCheck =
  | LevelCheck
  | ThicknessCheck
  | FlatnessCheck
  | LippageCheck
  | JointWidthCheck
  | BondLineCheck
  | FallCheck
  | CompactionCheck;

/** A check, or what is kept of a check of levels or thicknesses. Internal. */
export type KeptCheck =
  | AnyLayerCheck
  | Pick<LevelCheck, 'check' | 'limits' | 'readings'>
  | Pick<ThicknessCheck, 'check' | 'limits' | 'readings' | 'average' | 'averageLimits'>;

/** What a check is, in words. Internal. */
export function titleOf(check: AnyLayerCheck): string {
  switch (check.check) {
    case 'level':
      return `Level of the ${check.subject} against the plan`;
    case 'thickness':
      return `Thickness of the ${check.subject}`;
    case 'flatness':
      return `Flatness of the ${check.subject}`;
    case 'lippage':
      return capital(check.subject);
    case 'joint-width':
      return 'Joint width';
    case 'bond-line':
      return `Straightness of the ${check.subject}`;
    case 'fall':
      return `Slope of the ${check.subject}`;
    case 'compaction':
      return `Compaction of the ${check.subject}`;
  }
}

/** The limits of a check, in words. Internal. */
export function limitsOf(check: KeptCheck, system: ReportSystem): string {
  const length = (value: Length) => limitText(value, system);
  switch (check.check) {
    case 'level': {
      const { minimum, maximum } = check.limits;
      return `no more than ${length(maximum)} high, ${length(minimum.abs())} low`;
    }
    case 'flatness':
      return `no more than ${length(check.limits.maximum)} under ${spanText(check.edgeLength)}`;
    case 'bond-line':
      return `no more than ${length(check.limits.maximum)} from a string of ${spanText(check.stringLength)}`;
    case 'fall':
      return betweenText(check.limits, slopeLimitText);
    case 'compaction':
      return `at least ${check.minimumPercent}% of ${densityText(check.maximumDryDensity, system)}, ${TEST_WORDS[check.test]}`;
    default:
      return betweenText(check.limits, length);
  }
}

/** The limits of a check as printed, a bound below as a size without its sign. Internal. */
export function limitFigures(
  check: KeptCheck,
  system: ReportSystem,
): { readonly minimum: string | null; readonly maximum: string | null } {
  const shown = <D extends Dimension>(
    { minimum, maximum }: Limits<Quantity<D> | null>,
    text: (value: Quantity<D>) => string,
  ) => ({
    minimum: minimum === null ? null : text(minimum),
    maximum: maximum === null ? null : text(maximum),
  });
  const size = (value: Length): string => limitText(value.abs(), system);
  if (check.check === 'fall') return shown(check.limits, slopeLimitText);
  if (check.check === 'compaction') return { minimum: `${check.minimumPercent}%`, maximum: null };
  return shown(check.limits, size);
}

/** A reading with its value as sheets print it. Internal. */
export interface ReadingFigure {
  readonly reading: CheckedReading<AnyQuantity>;
  /** Its size without a side. */
  readonly size: string;
  /** Which way it is off; null where it is not, or where sizes have no side. */
  readonly side: 'high' | 'low' | 'left' | 'right' | null;
  /** Where it is along a line; null for what is not along one. */
  readonly station: string | null;
}

/** The readings of a check with their figures, an average thickness last. Internal. */
export function readingFigures(check: KeptCheck, system: ReportSystem): readonly ReadingFigure[] {
  const all = <R extends CheckedReading<AnyQuantity>>(
    readings: readonly R[],
    figure: (reading: R) => string | Partial<ReadingFigure>,
  ): ReadingFigure[] =>
    readings.map((reading) => {
      const own = figure(reading);
      const plain = { reading, size: '', side: null, station: null };
      return typeof own === 'string' ? { ...plain, size: own } : { ...plain, ...own };
    });
  const tape = (reading: CheckedReading, limits: Limits<Length | null>, shown = reading.value) =>
    tapeText(shown, system, (rounded) => {
      const value = reading.value.isNegative() === shown.isNegative() ? rounded : rounded.negated();
      return reading.verdict !== 'fail' || marginOf(value, limits).isNegative();
    });
  const where = ({ station }: { readonly station: Length }) => stationText(station, system);
  switch (check.check) {
    case 'level':
      return all(check.readings, (reading) => ({
        size: tape(reading, check.limits, reading.value.abs()),
        side: sideOf(reading.value, 'high', 'low'),
      }));
    case 'thickness':
      return [
        ...all(check.readings, (reading) => tape(reading, check.limits)),
        ...all([check.average], (reading) => tape(reading, check.averageLimits)),
      ];
    case 'flatness':
      return all(check.readings, (reading) => ({
        size: tape(reading, check.limits),
        station: where(reading),
      }));
    case 'bond-line':
      return all(check.readings, (reading) => ({
        size: tape(reading, check.limits, reading.value.abs()),
        side: sideOf(reading.value, 'left', 'right'),
        station: where(reading),
      }));
    case 'fall':
      return all(check.readings, (reading) => fallText(reading, check));
    case 'compaction':
      return all(check.readings, (reading) => percentText(reading, check.minimumPercent));
    default:
      return all(check.readings, (reading) => tape(reading, check.limits));
  }
}

/** No side where there is nothing to either side. */
function sideOf<S>(value: Length, plus: S, minus: S): S | null {
  if (value.isZero()) return null;
  return value.isNegative() ? minus : plus;
}

/** A reading and its value, in words. Internal. */
export interface ReadingText {
  readonly reading: CheckedReading<AnyQuantity>;
  readonly measured: string;
}

/** The readings of a check in words, an average thickness last. Internal. */
export const readingTexts = (check: KeptCheck, system: ReportSystem): readonly ReadingText[] =>
  readingFigures(check, system).map(({ reading, size, side, station }) => ({
    reading,
    measured: [
      ...(check.check === 'flatness' ? ['gap'] : []),
      size,
      ...(side === null ? [] : [side]),
      ...(station === null ? [] : [`at station ${station}`]),
    ].join(' '),
  }));

function fallText({ value, uncertainty, verdict }: CheckedFall, { limits }: FallCheck): string {
  const text = slopeText(
    value,
    (rounded) => verdict !== 'fail' || marginOf(rounded, limits).isNegative(),
  );
  return uncertainty.isZero() ? text : `${text} +/- ${slopeText(uncertainty, (u) => !u.isZero())}`;
}

/** A percentage to the fewest places at which a failed spot still reads below the minimum. */
function percentText({ percent, verdict }: CheckedDensity, minimum: number): string {
  const places = [1, 2, 3].find(
    (count) => verdict !== 'fail' || Number(percent.toFixed(count)) < minimum,
  );
  return `${percent.toFixed(places ?? 4)}%`;
}

function betweenText<D extends Dimension>(
  { minimum, maximum }: Limits<Quantity<D> | null>,
  text: (value: Quantity<D>) => string,
): string {
  if (minimum === null) return maximum === null ? 'no limit' : `no more than ${text(maximum)}`;
  return maximum === null ? `at least ${text(minimum)}` : `${text(minimum)} to ${text(maximum)}`;
}
