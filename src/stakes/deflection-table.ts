import { flag, optional, quantity } from '../input/field.js';
import { RADIUS, SITE_LENGTH, STATION, TURN } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { AngleInput, LengthInput } from '../units/construct.js';
import type { Angle, Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';
import { chordOf, curveElements, deflectionOf, type CurveElements } from './curve-elements.js';
import { refuseBoth } from './refuse-both.js';
import { refuseLongTable } from './refuse-long-table.js';

/** A curve to set out from its start. */
export interface DeflectionTableOptions {
  /** Radius of the arc [length], more than 0 and at most 1000 km. */
  readonly radius: LengthInput;
  /** Turn from the first straight to the second [angle], more than 0 and at most 179 degrees. */
  readonly turn: AngleInput;
  /**
   * Distance between stakes along the arc [length], more than 0 and at most 10 km. At most 2000
   * stakes.
   */
  readonly spacing: LengthInput;
  /**
   * Station of the start of the arc [length], up to 100 km either way. Give this or `intersection`.
   * Default: 0.
   */
  readonly start?: LengthInput;
  /**
   * Station of the corner of the two straights [length], up to 100 km either way; the arc starts
   * one tangent before it. Give this or `start`.
   */
  readonly intersection?: LengthInput;
  /**
   * True: stakes are at multiples of the spacing, so the first and last pieces are odd lengths.
   * False: they are counted from the start of the arc. Default: false.
   */
  readonly wholeStations?: boolean;
}

const OPTIONS = shapeOf<DeflectionTableOptions>()({
  radius: quantity(RADIUS),
  turn: quantity(TURN),
  spacing: quantity(SITE_LENGTH),
  start: optional(quantity(STATION)),
  intersection: optional(quantity(STATION)),
  wholeStations: optional(flag, false),
});

/** From one stake of a curve to the next. */
export interface DeflectionStep {
  /** Length along the arc [length]. */
  readonly arc: Length;
  /** Straight from stake to stake [length]. */
  readonly chord: Length;
  /** Deflection that this piece adds [angle]. */
  readonly deflection: Angle;
}

/** A stake of a curve that is set out by angles from its start. */
export interface DeflectionRow {
  /** Station of the stake [length]. */
  readonly station: Length;
  /** Distance along the arc from its start [length]. */
  readonly arc: Length;
  /** Angle between the tangent and the chord from the start to this stake [angle]. */
  readonly deflection: Angle;
  /** Straight distance from the start to this stake [length]. */
  readonly chord: Length;
  /** Step from the stake before; all 0 at the first. */
  readonly fromPrevious: DeflectionStep;
}

/** A curve set out by deflection angles. */
export interface DeflectionTable extends CurveElements, Worked {
  /** Radius of the arc [length]. */
  readonly radius: Length;
  /** Station of the start of the arc [length]. */
  readonly start: Length;
  /** Station of the end of the arc [length]. */
  readonly end: Length;
  /** One row per stake, from the start of the arc to its end. */
  readonly rows: readonly DeflectionRow[];
}

/**
 *
 * Sets out a curve by deflection angles and chords from its start: deflection `s / (2 R)`, chord
 * `2 R sin(s / (2 R))`, s along the arc. The last deflection is half the turn, which checks the
 * sum.
 *
 * @param options - see {@link DeflectionTableOptions}
 * @returns elements of the curve, stations of its start and end, a row for each stake
 * @throws `CONFLICTING_FIELDS`, `NOT_POSITIVE`, `OUT_OF_RANGE` (more than 2000 stakes) and the reading
 *   codes
 * @source curve-stakeout
 * @example
 * const table = deflectionTable({ radius: '200 m', turn: '30 deg', spacing: '20 m' });
 * table.rows.length //=> 7
 * table.rows.at(-1)?.deflection.to('deg').toFixed(6) //=> '15.000000'
 */
export function deflectionTable(options: DeflectionTableOptions): DeflectionTable {
  const read = readOptions(options, OPTIONS, (reader, values) =>
    refuseBoth(reader, values, ['start', 'intersection']),
  );
  const { radius, turn, spacing, intersection, wholeStations: isWhole } = read;
  const elements = curveElements(radius, turn);
  refuseLongTable(elements.arcLength.dividedBy(spacing), 'stakes', ['spacing']);
  const start = intersection?.minus(elements.tangent) ?? read.start ?? NO_LENGTH;
  const stations = stationsOf({ start, arcLength: elements.arcLength, spacing, isWhole });
  const rows = stations.map((station, k) => {
    const before = (stations[k - 1] ?? station).minus(start);
    return rowAt({ radius, station, arc: station.minus(start), before });
  });
  const end = start.plus(elements.arcLength);
  return withWorking({ radius, ...elements, start, end, rows }, () =>
    rows.map(({ arc, deflection }, k) =>
      formulaStep({
        title: `Deflection to stake ${k}`,
        formula: 'a = s / (2 * R)',
        given: [given('s', 'along the arc', arc), given('R', 'radius', radius)],
        result: given('a', 'deflection from the tangent', deflection),
        source: 'curve-stakeout',
      }),
    ),
  );
}

function stationsOf(of: {
  readonly start: Length;
  readonly arcLength: Length;
  readonly spacing: Length;
  readonly isWhole: boolean;
}): Length[] {
  const { start, arcLength, spacing, isWhole } = of;
  const end = start.plus(arcLength);
  const origin = isWhole ? spacing.times(start.dividedBy(spacing).floor()) : start;
  const between: Length[] = [];
  for (let k = 1; ; k += 1) {
    const station = origin.plus(spacing.times(k));
    if (station.compare(end) >= 0) return [start, ...between, end];
    between.push(station);
  }
}

function rowAt(of: {
  readonly radius: Length;
  readonly station: Length;
  readonly arc: Length;
  readonly before: Length;
}): DeflectionRow {
  const { radius, station, arc } = of;
  const deflection = deflectionOf(arc, radius);
  const step = arc.minus(of.before);
  const more = deflectionOf(step, radius);
  return {
    station,
    arc,
    deflection,
    chord: chordOf(deflection, radius),
    fromPrevious: { arc: step, chord: chordOf(more, radius), deflection: more },
  };
}
