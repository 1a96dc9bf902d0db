import { optional, quantity } from '../../input/field.js';
import { SMALL, THICKNESS } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import { NO_LENGTH } from '../../units/zero.js';
import { withWorking, type Worked } from '../../working.js';
import {
  fillJoints,
  JOINTS,
  jointSteps,
  type FilledJoints,
  type JointsInput,
} from './fill-joints.js';

/** Joints to fill. */
export interface JointSandOptions extends JointsInput {
  /** Depth of the joint, the thickness of the paver [length], more than 0 and at most 5 m. */
  readonly depth: LengthInput;
  /** Joint fill depth, from the top of the paver down to the fill [length], 0 to 1 m. Default: 0. */
  readonly recess?: LengthInput;
  /** Depth filled from below by the bed [length], 0 to 1 m; see {@link beddingSand}. Default: 0. */
  readonly riseFromBed?: LengthInput;
}

const OPTIONS = shapeOf<JointSandOptions>()({
  ...JOINTS,
  depth: quantity(THICKNESS),
  recess: optional(quantity(SMALL), NO_LENGTH),
  riseFromBed: optional(quantity(SMALL), NO_LENGTH),
});

/** Sand for the joints. */
export interface JointSand extends FilledJoints, Worked {}

/**
 * Sand to fill the joints: the share of joint is `1 - l w / ((l + j) (w + j))`, with the corner
 * where two joints cross counted once; `V = A x share x (depth - recess - rise)`,
 * `M = V x density x (1 + waste)`. A 4 mm joint takes a third more than a 3 mm joint. Chamfered and
 * tumbled pavers take more than this. For bound sands follow the maker.
 *
 * @param options - see {@link JointSandOptions}
 * @returns share of joint, filled depth, volume, mass, whole bags and surplus
 * @throws `OUT_OF_RANGE`, also where recess and rise leave nothing to fill, `NOT_POSITIVE`,
 *   `NEGATIVE`, `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const sand = jointSand({
 *   area: '60 m2',
 *   unit: { length: '200 mm', width: '100 mm' },
 *   joint: '3 mm',
 *   depth: '60 mm',
 *   recess: '3 mm',
 *   density: '1600 kg/m3',
 *   waste: 0.1,
 *   bag: '22.7 kg',
 * });
 * sand.volume.to('m3').toFixed(4) //=> '0.1487'
 * sand.mass.to('kg').toFixed(1) //=> '261.7'
 * sand.bags //=> 12
 */
export function jointSand(options: JointSandOptions): JointSand {
  const read = readOptions(options, OPTIONS, checkDepth);
  const filled = fillJoints(read, read.depth.minus(read.recess).minus(read.riseFromBed));
  return withWorking({ ...filled }, () => jointSteps(read, filled));
}

const checkDepth: Check<typeof OPTIONS> = (reader, { depth, recess, riseFromBed }, path) => {
  if (depth === undefined || recess === undefined || riseFromBed === undefined) return;
  if (recess.plus(riseFromBed).compare(depth) < 0) return;
  const message =
    'recess and riseFromBed leave no joint to fill. Write less than the depth of the joint in all';
  reader.fail('OUT_OF_RANGE', [...path, 'recess'], message);
};
