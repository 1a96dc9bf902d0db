import { object, optional, quantity } from '../input/field.js';
import { DISTANCE, ELEVATION, RISE, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { checkedSlope, type SlopeCheck } from './check-slope.js';
import { shortfallOf } from './shortfall.js';
import { slopeBetween } from './slope-between.js';
import { limitsOf } from './slope-limit.js';

/** A finished level at a distance from the wall. */
export interface LevelAwayInput {
  /** Elevation of finished grade there [length], up to 10 km either way. */
  readonly elevation: LengthInput;
  /** Plan distance from the wall [length], more than 0 and at most 100 km. */
  readonly distance: LengthInput;
}

/** A sill and the paving below it. */
export interface SillClearanceOptions {
  /** Elevation of the sill, slab edge or damp-proof course [length], up to 10 km either way. */
  readonly sill: LengthInput;
  /** Elevation of finished grade at the wall [length], up to 10 km either way. */
  readonly finishedGradeAtWall: LengthInput;
  /**
   * Minimum height of the sill above the paving [length], more than 0 and at most 100 m. You choose
   * it; `DAMP_PROOF_FREEBOARD` quotes one guide.
   */
  readonly minimumClearance: LengthInput;
  /** A level away from the wall, to check that water runs away from it. Default: not checked. */
  readonly away?: LevelAwayInput;
  /** Uncertainty of a difference of two levels [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const AWAY = shapeOf<LevelAwayInput>()({
  elevation: quantity(ELEVATION),
  distance: quantity(DISTANCE),
});

const OPTIONS = shapeOf<SillClearanceOptions>()({
  sill: quantity(ELEVATION),
  finishedGradeAtWall: quantity(ELEVATION),
  minimumClearance: quantity(RISE),
  away: optional(object(AWAY)),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** Clearance of a sill, slab edge or damp-proof course above the paving. */
export interface SillClearance extends Cautioned, Worked {
  /** Sill less finished grade; negative if the paving is higher. */
  readonly clearance: Length;
  /** Clearance less the minimum; negative if it is not enough. */
  readonly margin: Length;
  /** Lower the paving by this; 0 if the clearance is enough. */
  readonly shortfall: Length;
  /** The worse of the clearance and the fall away from the wall. */
  readonly verdict: Verdict;
  /** Fall away from the wall; null if no level away from it is given. */
  readonly fallAway: SlopeCheck | null;
}

/**
 * Clearance of a sill above the paving, `clearance = sill - finished grade at the wall`, against
 * your minimum, and the fall away from the wall against the minimum for hard surfaces at a
 * foundation.
 *
 * @param options - see {@link SillClearanceOptions}
 * @returns clearance, margin and shortfall [length], verdict, the check of the fall away, cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source nhbc-drives
 * @source residential-code
 * @example
 * const door = sillClearance({
 *   sill: '30.2 m',
 *   finishedGradeAtWall: '30.04 m',
 *   minimumClearance: '150 mm',
 *   away: { elevation: '29.97 m', distance: '3.05 m' },
 * });
 * door.clearance.to('mm').toString() //=> '160'
 * door.fallAway?.fall.to('percent').toFixed(3) //=> '2.295'
 * door.verdict //=> 'pass'
 */
export function sillClearance(options: SillClearanceOptions): SillClearance {
  const read = readOptions(options, OPTIONS);
  const { sill, finishedGradeAtWall: finish, minimumClearance, uncertainty } = read;
  const clearance = sill.minus(finish);
  const margin = clearance.minus(minimumClearance);
  const fallAway = fallAwayOf(read);
  const own = verdictOf(margin, uncertainty);
  const result = {
    clearance,
    margin,
    shortfall: shortfallOf(margin),
    verdict: worstVerdict(fallAway === null ? [own] : [own, fallAway.verdict]),
    fallAway,
    cautions: cautionsFor('drainage'),
  };
  return withWorking(result, () => [
    derivedStep({
      title: 'Clearance of the sill above the paving',
      formula: 'F = z1 - z2',
      given: [given('z1', 'sill', sill), given('z2', 'finished grade at the wall', finish)],
      result: given('F', 'clearance', clearance),
    }),
    ...(fallAway?.working ?? []),
  ]);
}

function fallAwayOf({
  away,
  finishedGradeAtWall,
  uncertainty,
}: Values<typeof OPTIONS>): SlopeCheck | null {
  if (away === undefined) return null;
  const fall = slopeBetween(finishedGradeAtWall.minus(away.elevation), away.distance);
  return checkedSlope(fall, limitsOf('hard-surface-at-foundation'), {
    uncertainty: slopeBetween(uncertainty, away.distance),
    caution: 'drainage',
  });
}
