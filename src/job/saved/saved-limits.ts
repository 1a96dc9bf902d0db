import { STRING_HEIGHT, THICKNESS } from '../../input/ranges.js';
import type { Dimension } from '../../units/catalogue.js';

/** Lengths, slopes and numbers of a plan that may be below zero; all other figures are zero or more. Internal. */
export const SIGNED: ReadonlySet<string> = new Set([
  // places, elevations and readings
  ...['x', 'y', 'z', 'station', 'start', 'known', 'elevation', 'level', 'finish', 'ground', 'rod'],
  ...['finishElevation', 'stringElevation', 'instrumentHeight', 'correction', 'adjusted'],
  // up or down, left or right
  ...['offset', 'rise', 'slope', 'grade', 'crossSlope', 'twist', 'miss', 'drift'],
  ...['misclosure', 'backLessFore', 'riseLessFall', 'lastLessFirst', 'existingAboveFinish'],
  ...['bulgeMiddleOrdinate', 'dig', 'soil', 'depth', 'left', 'cover', 'toFinish', 'toSubgrade'],
]);

/**
 * More than any plan holds, in SI units: a larger figure has a wrong digit or unit. Wide limits; the
 * ranges of a job are narrower. Common practice, no source. Internal.
 */
export const MOST: Readonly<Record<Dimension, number>> = Object.freeze({
  length: 1e8,
  area: 1e9,
  volume: 1e9,
  mass: 1e12,
  density: 1e5,
  force: 1e9,
  'line-weight': 1e6,
  pressure: 1e12,
  slope: 1e4,
  angle: 1e3,
  time: 1e9,
  speed: 1e5,
  flow: 1e6,
});

/** The same for lengths that no site makes long, in metres. Internal. */
export const MOST_LENGTH: Readonly<Record<string, number>> = Object.freeze({
  get thickness() {
    return THICKNESS.most.toNumber('m');
  },
  get stringHeight() {
    return STRING_HEIGHT.most.toNumber('m');
  },
  settlement: 5,
  compacted: 50,
  loose: 50,
  belowFinish: 200,
  aboveSubgrade: 200,
});

/** The largest plain number. Internal. */
export const MOST_NUMBER = 1e12;
/** Characters of a text. Internal. */
export const MOST_TEXT = 2000;
/** Characters of a text of the working. Internal. */
export const MOST_LONG_TEXT = 100_000;
/** Characters that cost as much to read as one more figure. Internal. */
export const PER_PART = 8;
/** Figures, texts and lists of a plan together. Internal. */
export const MOST_PARTS = 3_000_000;
