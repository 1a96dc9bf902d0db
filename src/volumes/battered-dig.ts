// The top of the dig is the outline of its bottom, widened.
import { choice, custom, number, optional, quantity } from '../input/field.js';
import { forEachOf, oneOrMany, refuseMismatch } from '../input/one-or-many.js';
import { BATTER, DEPTH } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import { areaOf } from '../outline/outline-area.js';
import { readOutline, type OutlineInput } from '../outline/read-outline.js';
import { ringsOf, type Outline } from '../outline/ring.js';
import { widenRead, type WidenedOutline } from '../outline/widen-outline.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Area, Length, Volume } from '../units/quantity.js';
import type { NumberInput } from '../units/read-number.js';
import { given, withWorking, type Worked } from '../working.js';
import { inState, type StateVolume } from './state-volume.js';

/** A dig of even depth and the slope of its sides. */
export interface BatteredDigOptions {
  /** Of the bottom, as in `outlineArea`; a hole is an island that stays. */
  readonly outline: OutlineInput;
  /** Depth of the dig [length], more than 0 and at most 50 m. */
  readonly depth: LengthInput;
  /**
   * Batter of the sides, 0 (vertical) to 10: one for all, or one for each edge (0 against a
   * building). It has no default: soil, water and law decide.
   */
  readonly horizontalPerVertical: NumberInput | readonly NumberInput[];
  /** How corners are turned on the way up. Default: `mitred`. */
  readonly corners?: 'mitred' | 'round';
}

const OPTIONS = shapeOf<BatteredDigOptions>()({
  outline: custom(readOutline),
  depth: quantity(DEPTH),
  horizontalPerVertical: oneOrMany(number(BATTER), 'batters'),
  corners: optional(choice(['mitred', 'round']), 'mitred'),
});

const edgesOf = (outline: Outline): number =>
  ringsOf(outline).reduce((total, { points }) => total + points.length, 0);

const countsMatch: Check<typeof OPTIONS> = (reader, { outline, horizontalPerVertical }) => {
  if (outline === undefined || horizontalPerVertical === undefined) return;
  const edges = { of: 'batters', expected: edgesOf(outline), things: 'edges' };
  refuseMismatch(reader, horizontalPerVertical, { path: ['horizontalPerVertical'], ...edges });
};

/** A dig with sloped sides. */
export interface BatteredDig extends Worked {
  /** Soil to dig, in place. */
  readonly volume: StateVolume<'bank'>;
  /** Over the bottom alone: with vertical sides. */
  readonly upright: StateVolume<'bank'>;
  /** What the sloped sides add. */
  readonly extra: StateVolume<'bank'>;
  /** The edge of the dig at the top. */
  readonly top: WidenedOutline;
  /**
   * False where sides run into each other on the way up, or an arc is cut where it meets its
   * neighbour: then the volume is summed in slices.
   */
  readonly isExact: boolean;
  /** What to have checked, and by whom. */
  readonly cautions: readonly Caution[];
}

/**
 * Volume of a dig of even depth whose sides are sloped: `V = d / 6 (A0 + 4 Am + A1)` with the areas of
 * the bottom, half way and at the top, each the bottom widened by `s` times the height. For one batter
 * all round with mitred corners that is `A0 d + P s d^2 / 2 + s^2 d^3 / 3 sum(tan(turn / 2))`. Exact,
 * unless sides run into each other or an arc is cut where it meets its neighbour at an inner corner:
 * then the volume is summed in 32 slices. With arcs exact means to `1e-9`.
 *
 * @param options - see {@link BatteredDigOptions}
 * @returns volume in the bank, what it is with vertical sides, what the batter adds, the top edge;
 *   cautions
 * @throws `COUNT_MISMATCH`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the codes of `widenOutline`
 * @source derived
 * @example
 * const pit = batteredDig({
 *   outline: { unit: 'm', points: [[0, 0], [6, 0], [6, 4], [0, 4]] },
 *   depth: '0.6 m',
 *   horizontalPerVertical: 0.5,
 * });
 * pit.volume.to('m3').toString() //=> '16.272'
 * pit.extra.to('m3').toString() //=> '1.872'
 * pit.top.area.to('m2').toString() //=> '30.36'
 */
export function batteredDig(options: BatteredDigOptions): BatteredDig {
  const { outline, depth, horizontalPerVertical, corners } = readOptions(
    options,
    OPTIONS,
    countsMatch,
  );
  const all = forEachOf(horizontalPerVertical, edgesOf(outline));

  const at = (height: Length): WidenedOutline =>
    widenRead(outline, {
      distances: all.map((batter) => height.times(batter)),
      corners,
      path: ['outline'],
    });
  const top = at(depth);
  const bottomArea = areaOf(outline);
  const middleArea = at(depth.dividedBy(2)).area;
  const areaAt = (height: Length): Area => at(height).area;
  const whole = simpson(bottomArea, middleArea, top.area, depth);
  const hasArcs = ringsOf(outline).some(({ bulges }) => bulges !== undefined);
  const isExact =
    !top.closesUp && (!hasArcs || isSame(whole, inSlices(bottomArea, areaAt, depth, 2)));
  const volume = isExact ? whole : inSlices(bottomArea, areaAt, depth, SLICES);
  const upright = bottomArea.times(depth);
  const dig = {
    volume: inState(volume, 'bank'),
    upright: inState(upright, 'bank'),
    extra: inState(volume.minus(upright), 'bank'),
    top,
    isExact,
    cautions: cautionsFor('excavation', 'utilities'),
  };
  return withWorking(dig, () => [
    {
      title: 'Volume of a dig with sloped sides',
      formula: isExact ? 'V = d / 6 (A0 + 4 Am + A1)' : `V = sum of ${SLICES} slices`,
      given: [
        given('d', 'depth', depth),
        given('A0', 'area of the bottom', bottomArea),
        given('Am', 'area half way up', middleArea),
        given('A1', 'area at the top', top.area),
      ],
      result: given('V', 'volume in the bank', volume),
      source: 'derived',
    },
  ]);
}

const simpson = (first: Area, middle: Area, last: Area, height: Length): Volume =>
  first.plus(middle.times(4)).plus(last).times(height).dividedBy(6);

/** Even; the error is what happens within the one slice where two sides meet. */
const SLICES = 32;

/** Areas with arcs are held to 40 digits, and their moved corners are led to a millimetre. */
const isSame = (a: Volume, b: Volume): boolean => a.minus(b).abs().compare(a.times('1e-9')) <= 0;

function inSlices(
  bottom: Area,
  areaAt: (height: Length) => Area,
  depth: Length,
  slices: number,
): Volume {
  const height = (k: number): Length => depth.times(k).dividedBy(2 * slices);
  const slice = height(2);
  let below = bottom;
  let total = bottom.times(0).times(depth);
  for (let k = 1; k < 2 * slices; k += 2) {
    const above = areaAt(height(k + 1));
    total = total.plus(simpson(below, areaAt(height(k)), above, slice));
    below = above;
  }
  return total;
}
