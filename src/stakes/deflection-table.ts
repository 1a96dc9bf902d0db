import { makeReader } from '../input/reader.js';
import type { AngleInput, LengthInput } from '../units/construct.js';
import type { Angle, Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { chordOf, curveElements, deflectionOf, type CurveElements } from './curve-elements.js';
import { MOST_ROWS, RADIUS, SITE_LENGTH, TURN } from './limits.js';
import { PLACE } from './read-stakes.js';

/** A stake of a curve that is set out by angles from its beginning. */
export interface DeflectionRow {
  readonly station: Length;
  /** Along the arc from its beginning. */
  readonly arc: Length;
  /** Between the tangent and the chord from the beginning to this stake. */
  readonly deflection: Angle;
  /** Straight from the beginning to this stake. */
  readonly chord: Length;
  /** From the stake before: along the arc, straight, and the angle to add. */
  readonly fromPrevious: {
    readonly arc: Length;
    readonly chord: Length;
    readonly deflection: Angle;
  };
}

/** A curve set out by deflection angles. */
export interface DeflectionTable extends CurveElements, Worked {
  readonly radius: Length;
  /** Station where the arc begins. */
  readonly start: Length;
  /** Station where the arc ends. */
  readonly end: Length;
  readonly rows: readonly DeflectionRow[];
}

/**
 * Sets out a curve by deflection angles and chords from its beginning: deflection `s / (2 R)`, chord
 * `2 R sin(s / (2 R))`, s along the arc. The last deflection is half the turn: a check on the sum.
 *
 * @param options.radius - of the arc [length]
 * @param options.turn - how far the second straight turns from the first [angle], less than 179.9
 *   degrees
 * @param options.spacing - between stakes along the arc [length]
 * @param options.start - station where the arc begins [length], default 0; or give `intersection`
 * @param options.intersection - station of the corner of the two straights [length]: the arc begins one
 *   tangent before it
 * @param options.wholeStations - true: stakes stand at whole multiples of the spacing, so that the first
 *   and last pieces are odd; false (default): they are counted from the beginning of the arc
 * @returns elements of the curve, stations of its beginning and end, a row for each stake
 * @throws `ONE_OF`, `NOT_POSITIVE`, `OUT_OF_RANGE` (more than 2000 stakes) and the reading codes
 * @source curve-stakeout
 * @example
 * const table = deflectionTable({ radius: '200 m', turn: '30 deg', spacing: '20 m' });
 * table.rows.length //=> 7
 * table.rows.at(-1)?.deflection.to('deg').toFixed(6) //=> '15.000000'
 */
export function deflectionTable(options: {
  readonly radius: LengthInput;
  readonly turn: AngleInput;
  readonly spacing: LengthInput;
  readonly start?: LengthInput;
  readonly intersection?: LengthInput;
  readonly wholeStations?: boolean;
}): DeflectionTable {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const radius = reader.quantity('length', fields['radius'], ['radius'], RADIUS);
  const turn = reader.quantity('angle', fields['turn'], ['turn'], TURN);
  const spacing = reader.quantity('length', fields['spacing'], ['spacing'], SITE_LENGTH);
  const name = fields['intersection'] === undefined ? 'start' : 'intersection';
  if (fields['start'] !== undefined && fields['intersection'] !== undefined) {
    reader.fail('ONE_OF', ['intersection'], 'give the start or the intersection, not both');
  }
  const fixed = reader.quantity('length', fields[name] ?? '0 m', [name], PLACE);
  const isWhole = reader.flag(fields['wholeStations'] ?? false, ['wholeStations']);
  reader.finish();

  const elements = curveElements(radius, turn);
  if (elements.arcLength.dividedBy(spacing).gt(MOST_ROWS)) {
    const message = `makes more than ${MOST_ROWS} stakes: a slip of a digit or of a unit?`;
    reader.fail('OUT_OF_RANGE', ['spacing'], message);
    reader.finish();
  }
  const start = name === 'start' ? fixed : fixed.minus(elements.tangent);
  const stations = stationsOf({ start, arcLength: elements.arcLength, spacing, isWhole });
  const rows = stations.map((station, k) => {
    const before = (stations[k - 1] ?? station).minus(start);
    return rowAt({ radius, station, arc: station.minus(start), before });
  });
  const end = start.plus(elements.arcLength);
  return withWorking({ radius, ...elements, start, end, rows }, () =>
    rows.map(({ arc, deflection }, k) => ({
      title: `Deflection to stake ${k}`,
      formula: 'a = s / (2 R)',
      given: [given('s', 'along the arc', arc), given('R', 'radius', radius)],
      result: given('a', 'deflection from the tangent', deflection),
      source: 'curve-stakeout',
    })),
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
