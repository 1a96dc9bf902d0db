import { makeReader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { ELEVATION, READING, TOLERANCE } from './limits.js';
import { reachOf, type RodReach } from './rod-targets.js';

/** What is left to cut or fill where the rod stands. */
export interface CutFill extends Worked {
  /** The surface that the work goes to. */
  readonly surface: string;
  /** Elevation where the rod stands. */
  readonly ground: Length;
  /** What the rod will read when the surface is made; negative above the line of sight. */
  readonly gradeRod: Length;
  /** Ground less surface: cut positive, fill negative. */
  readonly cut: Length;
  readonly action: 'cut' | 'fill' | 'none';
  readonly reach: RodReach;
  /** Whether the ground is within the tolerance, where one was given. */
  readonly verdict?: Verdict;
}

/**
 * Cut or fill from one reading: `grade rod = HI - target`, `cut = grade rod - reading`. A reading
 * smaller than the grade rod means that the ground is high.
 *
 * @param options.instrumentHeight - elevation of the line of sight [length]
 * @param options.reading - on the rod where it stands [length, 0 to 20 m]
 * @param options.surface - the name of the surface that the work goes to, such as `subgrade`
 * @param options.target - elevation of that surface [length]
 * @param options.tolerance - up or down [length], if the ground is to be judged
 * @param options.uncertainty - of the cut [length], for the verdict, default none
 * @returns ground, grade rod and cut [length, cut positive], what to do, the verdict
 * @throws `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY` and the reading codes
 * @source grade-with-a-level
 * @example
 * const shot = cutFill({
 *   instrumentHeight: '104.32 ft',
 *   reading: '6.18 ft',
 *   surface: 'subgrade',
 *   target: '97.25 ft',
 * });
 * shot.gradeRod.to('ft').toString() //=> '7.07'
 * describeCutFill(shot, { as: 'in', nearest: '1/8 in' }) //=> 'cut 10 5/8 in to subgrade'
 */
export function cutFill(options: {
  readonly instrumentHeight: LengthInput;
  readonly reading: LengthInput;
  readonly surface: string;
  readonly target: LengthInput;
  readonly tolerance?: LengthInput;
  readonly uncertainty?: LengthInput;
}): CutFill {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const at = ['instrumentHeight'];
  const height = reader.quantity('length', fields['instrumentHeight'], at, ELEVATION);
  const reading = reader.quantity('length', fields['reading'], ['reading'], READING);
  const surface = reader.text(fields['surface'], ['surface']);
  const target = reader.quantity('length', fields['target'], ['target'], ELEVATION);
  const tolerance =
    fields['tolerance'] === undefined
      ? undefined
      : reader.quantity('length', fields['tolerance'], ['tolerance'], TOLERANCE);
  const doubt = fields['uncertainty'] ?? NOTHING;
  const uncertainty = reader.quantity('length', doubt, ['uncertainty'], TOLERANCE);
  reader.finish();
  const gradeRod = height.minus(target);
  const cut = gradeRod.minus(reading);
  const result: Omit<CutFill, 'working'> = {
    surface,
    ground: height.minus(reading),
    gradeRod,
    cut,
    action: cut.isZero() ? 'none' : cut.isNegative() ? 'fill' : 'cut',
    reach: reachOf(gradeRod, undefined),
    ...(tolerance === undefined
      ? {}
      : { verdict: verdictOf(tolerance.minus(cut.abs()), uncertainty) }),
  };
  return withWorking(result, () => [
    {
      title: `Rod reading for the ${surface}`,
      formula: 'g = HI - z',
      given: [given('HI', 'height of instrument', height), given('z', 'elevation', target)],
      result: given('g', 'grade rod', gradeRod),
      source: 'grade-with-a-level',
    },
    {
      title: `Cut (+) or fill (-) to the ${surface}`,
      formula: 'c = g - r',
      given: [given('g', 'grade rod', gradeRod), given('r', 'reading', reading)],
      result: given('c', 'cut (+) or fill (-)', cut),
      source: 'grade-with-a-level',
    },
  ]);
}

const NOTHING = length(0, 'm');
