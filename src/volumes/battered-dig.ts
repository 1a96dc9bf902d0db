// The top of the dig is the outline of its bottom, widened.
import { choice, custom, number, optional, quantity } from '../input/field.js';
import { forEachOf, oneOrMany, refuseMismatch } from '../input/one-or-many.js';
import { BATTER, DEPTH } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import { areaOf } from '../outline/outline-area.js';
import { readOutline, type OutlineInput } from '../outline/read-outline.js';
import { edgeCount, hasArcs } from '../outline/ring.js';
import { widenRead, type WidenedOutline } from '../outline/widen-outline.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Area, Length, Volume } from '../units/quantity.js';
import type { NumberInput } from '../units/read-number.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { slopedVolume } from './sloped-volume.js';
import { inState, type StateVolume } from './state-volume.js';

/** A dig of even depth with sloped sides. */
export interface BatteredDigOptions {
  /** Outline of the bottom, as in `outlineArea`. A hole is an island that is left standing. */
  readonly outline: OutlineInput;
  /** Depth of the dig [length], more than 0 and at most 50 m. */
  readonly depth: LengthInput;
  /**
   * Batter of the sides, 0 (vertical) to 10: one for all, or one for each edge (0 against a
   * building). There is no default: it depends on the soil, the water and the law.
   */
  readonly horizontalPerVertical: NumberInput | readonly NumberInput[];
  /** Shape of the corners on the way up. Default: `mitred`. */
  readonly corners?: 'mitred' | 'round';
}

const OPTIONS = shapeOf<BatteredDigOptions>()({
  outline: custom(readOutline),
  depth: quantity(DEPTH),
  horizontalPerVertical: oneOrMany(number(BATTER), 'batters'),
  corners: optional(choice(['mitred', 'round']), 'mitred'),
});

const countsMatch: Check<typeof OPTIONS> = (reader, { outline, horizontalPerVertical }) => {
  if (outline === undefined || horizontalPerVertical === undefined) return;
  const edges = { of: 'batters', expected: edgeCount(outline), things: 'edges' };
  refuseMismatch(reader, horizontalPerVertical, { path: ['horizontalPerVertical'], ...edges });
};

/** Volume and top edge of a dig with sloped sides. */
export interface BatteredDig extends Cautioned, Worked {
  /** Soil to dig, in place. */
  readonly volume: StateVolume<'bank'>;
  /** Volume with vertical sides, over the bottom alone. */
  readonly upright: StateVolume<'bank'>;
  /** Volume that the sloped sides add. */
  readonly extra: StateVolume<'bank'>;
  /** Edge of the dig at the top. */
  readonly top: WidenedOutline;
  /**
   * False if sides run into each other on the way up, or an arc is cut where it meets its neighbour.
   * The volume is then summed in slices.
   */
  readonly isExact: boolean;
}

/**
 * Volume of a dig of even depth with sloped sides: `V = d / 6 (A0 + 4 Am + A1)`, with the areas at the
 * bottom, half way up and at the top. Each is the bottom widened by `s` times the height. For one
 * batter all round and mitred corners that is `A0 d + P s d^2 / 2 + s^2 d^3 / 3 sum(tan(turn / 2))`.
 * The result is exact, with arcs to `1e-9`, unless sides run into each other or an arc is cut where it
 * meets its neighbour at an inner corner. The volume is then summed in 32 slices.
 *
 * @param options - see {@link BatteredDigOptions}
 * @returns bank volume, the same with vertical sides, the volume that the batter adds, the top edge
 *   and cautions
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
  const all = forEachOf(horizontalPerVertical, edgeCount(outline));

  const at = (height: Length): WidenedOutline =>
    widenRead(outline, {
      distances: all.map((batter) => height.times(batter)),
      corners,
      path: ['outline'],
    });
  const bottomArea = areaOf(outline);
  const sloped = slopedVolume({ bottom: bottomArea, depth, at, hasArcs: hasArcs(outline) });
  const { volume, top, areas, isExact } = sloped;
  const upright = bottomArea.times(depth);
  const dig = {
    volume: inState(volume, 'bank'),
    upright: inState(upright, 'bank'),
    extra: inState(volume.minus(upright), 'bank'),
    top,
    isExact,
    cautions: cautionsFor('excavation', 'utilities'),
  };
  return withWorking(dig, () => [volumeStep(depth, areas, volume)]);
}

function volumeStep(depth: Length, areas: readonly Area[], volume: Volume): Step {
  const slices = (areas.length - 1) / 2;
  return derivedStep({
    title:
      slices === 1
        ? 'Volume of a dig with sloped sides'
        : `Volume of a dig with sloped sides, in ${slices} slices`,
    formula:
      slices === 1
        ? 'V = d / 6 * (A[1] + 4 * A[2] + A[3])'
        : 'V = d / (6 * n) * sum(A[2 * i - 1] + 4 * A[2 * i] + A[2 * i + 1])',
    given: [
      given('d', 'depth', depth),
      ...(slices === 1 ? [] : [given('n', 'slices', slices)]),
      given('A', 'areas at even steps from the bottom to the top', areas),
    ],
    result: given('V', 'bank volume', volume),
  });
}
