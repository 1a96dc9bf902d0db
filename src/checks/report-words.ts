import type { Dimension } from '../units/catalogue.js';
import type { AnyQuantity, Length, Quantity } from '../units/quantity.js';
import type { BondLineCheck } from './check-bond-line.js';
import type { CheckedDensity, CompactionCheck } from './check-compaction.js';
import type { CheckedFall, FallCheck } from './check-fall.js';
import type { FlatnessCheck } from './check-flatness.js';
import type { JointWidthCheck } from './check-joint-width.js';
import type { LevelCheck } from './check-levels.js';
import type { LippageCheck } from './check-lippage.js';
import type { ThicknessCheck } from './check-thickness.js';
import { marginOf, type CheckedReading } from './layer-check.js';
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
import type { Between } from './tolerance.js';

/** Any check that a report can hold. */
export type AnyLayerCheck =
  | LevelCheck
  | ThicknessCheck
  | FlatnessCheck
  | LippageCheck
  | JointWidthCheck
  | BondLineCheck
  | FallCheck
  | CompactionCheck;

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
export function limitsOf(check: AnyLayerCheck, system: ReportSystem): string {
  const length = (value: Length) => limitText(value, system);
  switch (check.check) {
    case 'level': {
      const { least, most } = check.limits;
      return `at most ${length(most)} high, ${length(least.abs())} low`;
    }
    case 'flatness':
      return `at most ${length(check.limits.most)} under ${spanText(check.edgeLength)}`;
    case 'bond-line':
      return `at most ${length(check.limits.most)} from a string of ${spanText(check.stringLength)}`;
    case 'fall':
      return betweenText(check.limits, slopeLimitText);
    case 'compaction':
      return `at least ${check.leastPercent} % of ${densityText(check.maximumDryDensity, system)}, ${check.test} test`;
    default:
      return betweenText(check.limits, length);
  }
}

/** A reading and what was measured, in words. Internal. */
export interface ReadingText {
  readonly reading: CheckedReading<AnyQuantity>;
  readonly measured: string;
}

/** The readings of a check, in words, the average of thicknesses last. Internal. */
export function readingTexts(check: AnyLayerCheck, system: ReportSystem): readonly ReadingText[] {
  const all = <R extends CheckedReading<AnyQuantity>>(
    readings: readonly R[],
    text: (reading: R) => string,
  ): ReadingText[] => readings.map((reading) => ({ reading, measured: text(reading) }));
  const tape = (reading: CheckedReading, limits: Between, shown = reading.value) =>
    tapeText(shown, system, (rounded) => {
      const value = reading.value.isNegative() === shown.isNegative() ? rounded : rounded.negated();
      return reading.verdict !== 'fail' || marginOf(value, limits).isNegative();
    });
  const where = ({ station }: { readonly station: Length }) =>
    `at station ${stationText(station, system)}`;
  switch (check.check) {
    case 'level':
      return all(check.readings, (reading) =>
        sided(tape(reading, check.limits, reading.value.abs()), reading.value, ['high', 'low']),
      );
    case 'thickness':
      return [
        ...all(check.readings, (reading) => tape(reading, check.limits)),
        ...all([check.average], (reading) => tape(reading, check.averageLimits)),
      ];
    case 'flatness':
      return all(
        check.readings,
        (reading) => `gap ${tape(reading, check.limits)} ${where(reading)}`,
      );
    case 'bond-line':
      return all(check.readings, (reading) => {
        const distance = tape(reading, check.limits, reading.value.abs());
        return `${sided(distance, reading.value, ['left', 'right'])} ${where(reading)}`;
      });
    case 'fall':
      return all(check.readings, (reading) => fallText(reading, check));
    case 'compaction':
      return all(check.readings, (reading) => percentText(reading, check.leastPercent));
    default:
      return all(check.readings, (reading) => tape(reading, check.limits));
  }
}

/** A size with its side; without one where there is nothing. */
function sided(size: string, value: Length, [plus, minus]: readonly [string, string]): string {
  if (value.isZero()) return size;
  return `${size} ${value.isNegative() ? minus : plus}`;
}

function fallText({ value, uncertainty, verdict }: CheckedFall, { limits }: FallCheck): string {
  const text = slopeText(
    value,
    (rounded) => verdict !== 'fail' || marginOf(rounded, limits).isNegative(),
  );
  return uncertainty.isZero() ? text : `${text} +/- ${slopeText(uncertainty, (u) => !u.isZero())}`;
}

/** A percentage to the fewest places that do not bring a spot that fails up to the least. */
function percentText({ percent, verdict }: CheckedDensity, least: number): string {
  const places = [1, 2, 3].find(
    (count) => verdict !== 'fail' || Number(percent.toFixed(count)) < least,
  );
  return `${percent.toFixed(places ?? 4)} %`;
}

function betweenText<D extends Dimension>(
  { least, most }: Between<D>,
  text: (value: Quantity<D>) => string,
): string {
  if (least === null) return most === null ? 'no limit' : `at most ${text(most)}`;
  return most === null ? `at least ${text(least)}` : `${text(least)} to ${text(most)}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
