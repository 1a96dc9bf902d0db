import { entry, known, lastOf } from '../../invariant.js';
import type { StakePlan, StringLinePlan } from '../../job/plan/plan.js';
import { along, clipLine } from '../frame/box.js';
import { roundFactor } from '../frame/scale.js';
import { line, rectangle, type Point } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import { boxRound, type PlanLabel, type PlanPart, type PlanPen, type Segment } from './parts.js';
import type { PlanScene } from './plan-scene.js';
import type { Place } from './rings-in-metres.js';

/** The farthest stake is drawn this far off its line, and half as much more. */
const LEAST_OFF = 9;
/** Of more stakes only the ends of strings and those out of line are named. */
const MOST_NAMED = 60;
const HALF = 4;

/** How much farther off their lines stakes are drawn; 1 where they are drawn as they stand. Internal. */
export function offsetFactor({ stringLines }: PlanScene, { view, style }: PlanPen): number {
  const offsets = stringLines.flatMap((one) => one.stakes.map(({ offset }) => offset.abs()));
  const shown = offsets.filter((offset) => style.units.depth(offset) !== '0');
  const most = Math.max(0, ...shown.map((offset) => offset.toNumber('m')));
  const least = LEAST_OFF / (most * view.pixelsPerMetre);
  return most === 0 || least <= 1 ? 1 : roundFactor(least, 'up');
}

interface DrawnStake {
  readonly stake: StakePlan;
  /** On the line of its string. */
  readonly foot: Point;
  readonly at: Point;
  readonly isEnd: boolean;
}

/** Strings with their names, and stakes with their ids and what they are off their lines. Internal. */
export function stakePart(scene: PlanScene, factor: number, pen: PlanPen): PlanPart {
  const rows = scene.stringLines.map((one) => drawnRow(one, scene.stakes, { factor, pen }));
  const lines = rows.map((row): Segment => [entry(row, 0).foot, lastOf(row).foot]);
  const stakes = onceEach(rows.flat());
  const named = stakes.filter(
    ({ isEnd, stake }) => stakes.length <= MOST_NAMED || isEnd || !stake.inTolerance,
  );
  const unnamed = stakes.length - named.length;
  return {
    marks: [
      ...lines
        .flatMap((one) => clipLine(...one, pen.view.area))
        .map((seen) => line('string', ...seen)),
      ...stakes.flatMap(({ foot, at }) =>
        Math.hypot(at[0] - foot[0], at[1] - foot[1]) < 2 ? [] : [line('dimension', foot, at)],
      ),
      ...stakes.map(({ at, stake }) =>
        rectangle(stake.inTolerance ? 'stake' : 'stake solid', boxRound(at, HALF)),
      ),
    ],
    labels: [
      ...named.map((stake) => stakeLabel(stake, pen)),
      ...scene.stringLines.map((one, index) => stringLabel(one, entry(rows, index), pen)),
    ],
    taken: named.map(({ at }) => boxRound(at, HALF + 1)),
    lines,
    told: unnamed === 0 ? [] : [pen.style.label('stakes-unnamed', { count: `${unnamed}` })],
  };
}

function drawnRow(
  { stakes }: StringLinePlan,
  places: ReadonlyMap<string, Place>,
  { factor, pen }: { readonly factor: number; readonly pen: PlanPen },
): DrawnStake[] {
  const all = stakes.map(({ id }): Place => known(places.get(id), 'stake'));
  const [x, y] = directionOf(all, stakes);
  return stakes.map((stake, index) => {
    const [px, py] = entry(all, index);
    const off = stake.offset.toNumber('m');
    const moved = (by: number): Point => pen.view.to([px - y * by, py + x * by]);
    return {
      stake,
      foot: moved(-off),
      at: moved(off * (factor - 1)),
      isEnd: index === 0 || index === stakes.length - 1,
    };
  });
}

/**
 * Of the line that the stakes were checked against, of length 1: the way from the first stake to the
 * last, turned back by what they are off that line.
 */
function directionOf(places: readonly Place[], stakes: readonly StakePlan[]): Place {
  const [first, last] = [entry(places, 0), lastOf(places)];
  const [dx, dy] = [last[0] - first[0], last[1] - first[1]];
  const off = lastOf(stakes).offset.minus(entry(stakes, 0).offset).toNumber('m');
  const long = dx * dx + dy * dy;
  const ahead = Math.sqrt(Math.max(0, long - off * off));
  return [(dx * ahead + dy * off) / long, (dy * ahead - dx * off) / long];
}

/** A stake of several strings is drawn once: where it is off a line, if it is off any. */
function onceEach(stakes: readonly DrawnStake[]): DrawnStake[] {
  const byId = new Map<string, DrawnStake>();
  for (const one of stakes) {
    const before = byId.get(one.stake.id) ?? one;
    const isFarther = one.stake.offset.abs().greaterThan(before.stake.offset.abs());
    byId.set(one.stake.id, {
      ...(isFarther ? one : before),
      isEnd: one.isEnd || before.isEnd,
    });
  }
  return [...byId.values()];
}

function stakeLabel({ stake, at }: DrawnStake, { style }: PlanPen): PlanLabel {
  const { units, label } = style;
  const { inTolerance, offset } = stake;
  const id = labelName(stake.id);
  const off = units.depth(offset.abs());
  const side = label(offset.isNegative() ? 'side-right' : 'side-left');
  const values = { stake: id, offset: `${off} ${units.depthUnit}`, side };
  const text =
    off === '0' && inTolerance ? id : label(inTolerance ? 'stake-off' : 'stake-out', values);
  return { text, style: 'strong', at, clearance: HALF + 3, rings: 7, rank: 2 };
}

/** The name of a string stands beside the middle of its first stretch. */
function stringLabel(
  { id }: StringLinePlan,
  row: readonly DrawnStake[],
  { style: { label } }: PlanPen,
): PlanLabel {
  const text = label('string-name', { string: labelName(id.toUpperCase()) });
  return { text, at: along(entry(row, 0).foot, entry(row, 1).foot, 0.5), rank: 4 };
}
