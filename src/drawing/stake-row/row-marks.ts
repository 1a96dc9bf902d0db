import { arrow } from '../frame/arrow.js';
import type { LabelRequest } from '../frame/place-labels.js';
import { scaledLabels, type ScaledMarks } from '../frame/scaled-picture.js';
import type { DrawStyle } from '../draw-options.js';
import { boxRound } from '../plan/parts.js';
import { line, rectangle, type Point } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import type { RowFrame } from './row-frame.js';
import type { StakeRow } from './stake-row.js';

const HALF = 5;
const MOST_NAMED = 80;

/** The line, the tolerance, the stakes and the moves of a row; labels without a place are told. Internal. */
export function rowMarks(row: StakeRow, frame: RowFrame, style: DrawStyle): ScaledMarks {
  const places = row.stakes.map((stake) => ({
    stake,
    at: frame.to(stake.station.toNumber('m'), stake.offset.toNumber('m')),
  }));
  const moves = moveArrows(row, frame);
  const { marks, left } = scaledLabels(
    labels(row, places, style),
    {
      frame,
      taken: places.map(({ at }) => boxRound(at, HALF + 1)),
      rings: 6,
      lines: [[frame.to(0, 0), [frame.right, frame.line]], ...moves],
    },
    style,
  );
  return {
    marks: [
      ...toleranceMarks(row, frame),
      line('string', [frame.left - 14, frame.line], [frame.right + 14, frame.line]),
      ...places.flatMap(({ at }) =>
        Math.abs(at[1] - frame.line) < HALF ? [] : [line('dimension', [at[0], frame.line], at)],
      ),
      ...places.map(({ at, stake }) =>
        rectangle(stake.inTolerance ? 'stake' : 'stake solid', boxRound(at, HALF)),
      ),
      ...moves.flatMap(([from, to]) => arrow('fall', from, to)),
      ...marks,
    ],
    left,
  };
}

interface PlacedStake {
  readonly stake: StakeRow['stakes'][number];
  readonly at: Point;
}

/** Ids, with what a stake is off the line; of many stakes only the ends and those that are out. */
function labels(row: StakeRow, places: readonly PlacedStake[], style: DrawStyle): LabelRequest[] {
  const moved = new Set(row.moves.map(({ id }) => id));
  const isNamed = ({ stake }: PlacedStake, index: number): boolean =>
    places.length <= MOST_NAMED ||
    index === 0 ||
    index === places.length - 1 ||
    moved.has(stake.id) ||
    !stake.inTolerance;
  return places.filter(isNamed).map(({ stake, at }) => {
    const isUp = !stake.offset.isNegative();
    return {
      text: stakeText(stake, style),
      size: style.size,
      style: 'strong',
      at,
      clearance: HALF + 4,
      toward: isUp ? Math.PI / 2 : -Math.PI / 2,
    };
  });
}

/** Its id, and how far it is off the line where that shows on the tape. */
function stakeText(
  { id, offset, inTolerance }: StakeRow['stakes'][number],
  style: DrawStyle,
): string {
  const { label, units } = style;
  const off = units.depth(offset.abs());
  const side = label(offset.isNegative() ? 'row-right' : 'row-left');
  const values = { stake: labelName(id), offset: `${off} ${units.depthUnit}`, side };
  if (inTolerance) return off === '0' ? labelName(id) : label('stake-off', values);
  return label('stake-out', values);
}

function toleranceMarks({ tolerance }: StakeRow, frame: RowFrame): string[] {
  if (tolerance === null || tolerance.isZero()) return [];
  const off = tolerance.toNumber('m') * frame.pixelsPerMetre * frame.factor;
  return [off, -off].map((by) =>
    line('lift', [frame.left - 14, frame.line - by], [frame.right + 14, frame.line - by]),
  );
}

/** Beside each stake to move: as far and in the direction of its move, kept inside the picture. */
function moveArrows(
  { moves, stakes }: StakeRow,
  { to, pixelsPerMetre, factor, top, bottom }: RowFrame,
): (readonly [Point, Point])[] {
  return moves.flatMap(({ id, distance, direction }) => {
    const stake = stakes.find((one) => one.id === id);
    if (stake === undefined || distance.isZero()) return [];
    const [x, y] = to(stake.station.toNumber('m'), stake.offset.toNumber('m'));
    const long = distance.toNumber('m') * pixelsPerMetre * factor;
    const end = Math.max(top + 4, Math.min(bottom - 4, direction === 'left' ? y - long : y + long));
    return [[[x + HALF + 5, y] as const, [x + HALF + 5, end] as const] as const];
  });
}
