import type { BuildUp } from '../build-up/build-up.js';
import type { Lifts } from '../build-up/lifts.js';
import { optional, quantity } from '../input/field.js';
import { ELEVATION, ROD_LENGTH } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import { sight, sightSteps, type InstrumentHeightInput } from './instrument-height.js';
import { checkLifts, STACK, surfacesOf, type Surface } from './surfaces.js';

/** A stake, its build-up and the instrument. */
export interface RodTargetsOptions {
  /** Elevation of the line of sight [length], or the set-up `{ benchmark, back }` that gives it. */
  readonly instrumentHeight: InstrumentHeightInput;
  /** Elevation of finished grade at the stake [length], up to 10 km either way. */
  readonly finishedGrade: LengthInput;
  /** The layers, from `buildUp`. */
  readonly buildUp: BuildUp;
  /** Lifts of the lowest layer, from `lifts`, to include their tops. Default: none. */
  readonly lifts?: Lifts;
  /** Longest reading of the rod [length], more than 0 and at most 20 m. Default: not checked. */
  readonly rodLength?: LengthInput;
}

const OPTIONS = shapeOf<RodTargetsOptions>()({
  instrumentHeight: sight,
  finishedGrade: quantity(ELEVATION),
  ...STACK,
  rodLength: optional(quantity(ROD_LENGTH)),
});

/** Whether a reading can be set: on the rod, above the line of sight, or beyond the end of the rod. */
export type RodReach = 'on-rod' | 'above-instrument' | 'beyond-rod';

/** The reading on the rod when its foot is on a surface. */
export interface RodTarget {
  /** Name of the surface. */
  readonly surface: string;
  /** Elevation of the surface. */
  readonly elevation: Length;
  /** The reading; negative if the surface is above the line of sight. */
  readonly rod: Length;
  /** Whether the rod can show it. */
  readonly reach: RodReach;
}

/** The rod reading of each surface of a build-up, from finished grade down. */
export type RodTargets = readonly RodTarget[] & Worked;

/**
 * The reading on the rod for each surface of a build-up, `rod = HI - elevation`, from finished grade
 * down to the subgrade. A larger reading is lower ground.
 *
 * @param options - see {@link RodTargetsOptions}
 * @returns a list: `surface`, `elevation` [length], `rod` [length], and whether the rod can show it
 * @throws `REQUIRED`, `WRONG_TYPE`, `CONFLICTING_FIELDS` (lifts of another layer), `OUT_OF_RANGE` and
 *   the reading codes
 * @source grade-with-a-level
 * @example
 * const walk = buildUp({
 *   layers: [
 *     { name: 'paver', thickness: '60 mm' },
 *     { name: 'bedding', thickness: '25 mm' },
 *     { name: 'base', thickness: '150 mm' },
 *   ],
 * });
 * const setUp = { benchmark: '30 m', back: '1.42 m' };
 * const targets = rodTargets({ instrumentHeight: setUp, finishedGrade: '30 m', buildUp: walk });
 * targets.map(({ surface }) => surface) //=> ['finished grade', 'bedding top', 'base top', 'subgrade']
 * targets.map(({ rod }) => rod.to('m').toString()) //=> ['1.42', '1.48', '1.505', '1.655']
 */
export function rodTargets(options: RodTargetsOptions): RodTargets {
  const read = readOptions(options, OPTIONS, checkLifts);
  const { instrumentHeight, finishedGrade: finish, buildUp, lifts, rodLength } = read;
  const { height } = instrumentHeight;
  const surfaces = surfacesOf(buildUp, lifts);
  const targets = targetsFrom({ height, finish, surfaces, rodLength });
  return withWorking(targets, () => [
    ...sightSteps(instrumentHeight),
    ...targetSteps(height, targets),
  ]);
}

/** What a list of readings is made from. Internal. */
export interface TargetBasis {
  readonly height: Length;
  readonly finish: Length;
  readonly surfaces: readonly Surface[];
  readonly rodLength: Length | undefined;
}

/** Readings on surfaces below a finished grade. Internal. */
export const targetsFrom = ({ height, finish, surfaces, rodLength }: TargetBasis): RodTarget[] =>
  surfaces.map(({ surface, depth }) => {
    const elevation = finish.minus(depth);
    const rod = height.minus(elevation);
    return { surface, elevation, rod, reach: reachOf(rod, rodLength) };
  });

/** Whether a rod can show a reading. Internal. */
export function reachOf(rod: Length, rodLength: Length | undefined): RodReach {
  if (rod.isNegative()) return 'above-instrument';
  return rodLength !== undefined && rod.compare(rodLength) > 0 ? 'beyond-rod' : 'on-rod';
}

/** The working of a list of readings. Internal. */
export const targetSteps = (height: Length, targets: readonly RodTarget[]): Step[] =>
  targets.map(({ surface, elevation, rod }) =>
    formulaStep({
      title: `Rod on the ${surface}`,
      formula: 'r = HI - z',
      given: [
        given('HI', 'height of instrument', height),
        given('z', `elevation of the ${surface}`, elevation),
      ],
      result: given('r', 'rod reading', rod),
      source: 'grade-with-a-level',
    }),
  );
