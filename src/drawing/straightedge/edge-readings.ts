import { fault } from '../../errors.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import type { CheckedGap, FlatnessCheck } from '../../checks/check-flatness.js';
import { readingFigures } from '../../checks/report-words.js';
import { entry, lastOf, present } from '../../invariant.js';
import { exactOf, type Length } from '../../units/quantity.js';
import { compareRatios } from '../../units/ratio.js';
import { isLength } from '../../units/is-length.js';
import { isCheckMove } from '../../checks/describe-check-move.js';
import type { DrawStyle } from '../draw-options.js';
import { labelName } from '../surface-rows.js';

/** A reading of a flatness check as it is drawn. Internal. */
export interface EdgeReading {
  readonly name: string;
  readonly gap: string;
  readonly stationText: string;
  readonly of: CheckedGap;
  /** Along the line, and above the line from the first reading to the last [m]. */
  readonly station: number;
  readonly height: number;
}

/** The gaps that are named in the picture: those that do not pass, else the largest. Internal. */
const MOST_NAMED = 12;

/** The readings of a check, the slope of the whole line taken out. Internal. */
export function edgeReadings(check: FlatnessCheck, { system }: DrawStyle): EdgeReading[] {
  const places = check.readings.map(
    ({ station, height }) => [inMetres(station), inMetres(height)] as const,
  );
  const [[s0, h0], [s1, h1]] = [entry(places, 0), lastOf(places)];
  const slope = (h1 - h0) / (s1 - s0);
  return readingFigures(check, system).map(({ size, station }, index) => {
    const of = entry(check.readings, index);
    const [at, height] = entry(places, index);
    const level = height - h0 - slope * (at - s0);
    const name = labelName(of.id);
    return {
      name,
      gap: size,
      stationText: present(station, 'station'),
      of,
      station: at,
      height: level,
    };
  });
}

const inMetres = (length: Length): number => length.toNumber('m');

/** The largest gaps first: those that do not pass, else the largest of all. Internal. */
export function namedReadings(readings: readonly EdgeReading[]): EdgeReading[] {
  const gap = ({ of }: EdgeReading) => exactOf(of.value);
  const sorted = readings
    .filter(({ of }) => of.between !== null && !of.value.isZero())
    .sort((a, b) => compareRatios(gap(b), gap(a)));
  const off = sorted.filter(({ of }) => of.verdict !== 'pass');
  return off.length === 0 ? sorted.slice(0, 1) : off.slice(0, MOST_NAMED);
}

/**
 * Refuses what is no flatness check. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireFlatness(value: unknown): asserts value is FlatnessCheck {
  if (isFlatness(value)) return;
  const message = `pass the result of checkFlatness() with a tolerance, got ${shown(value)}`;
  throw fault('WRONG_TYPE', message, { got: shown(value) });
}

function isFlatness(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const {
    check,
    subject,
    limits,
    edgeLength,
    greatestGap,
    isSparse,
    overhangs,
    readings,
    verdict,
  } = value;
  return (
    check === 'flatness' &&
    typeof subject === 'string' &&
    isPlain(limits) &&
    isLength(limits['maximum']) &&
    isLength(edgeLength) &&
    isLength(greatestGap) &&
    typeof isSparse === 'boolean' &&
    typeof overhangs === 'boolean' &&
    isVerdict(verdict) &&
    Array.isArray(readings) &&
    readings.length >= 2 &&
    readings.every(isReading) &&
    restOnReadings(readings as readonly CheckedGap[])
  );
}

/** True if each gap is between two readings that are there. */
function restOnReadings(readings: readonly CheckedGap[]): boolean {
  const stations = new Set(readings.map(({ station }) => inMetres(station)));
  return readings.every(({ between }) =>
    (between ?? []).every((place) => stations.has(inMetres(place))),
  );
}

const isVerdict = (value: unknown): boolean =>
  value === 'pass' || value === 'unclear' || value === 'fail';

function isReading(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const { id, value: gap, margin, station, height, between, verdict, move } = value;
  return (
    typeof id === 'string' &&
    [gap, margin, station, height].every(isLength) &&
    (between === null ||
      (Array.isArray(between) && between.length === 2 && between.every(isLength))) &&
    isVerdict(verdict) &&
    (move === null || isCheckMove(move))
  );
}
