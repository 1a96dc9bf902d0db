import type { BuildUp } from '../build-up/build-up.js';
import type { Lifts } from '../build-up/lifts.js';
import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { ALLOWED, ELEVATION } from './limits.js';
import { readSurfaces, type Surface } from './surfaces.js';

/** Whether a reading can be set: on the rod, above the line of sight, or longer than the rod. */
export type RodReach = 'on-rod' | 'above-instrument' | 'beyond-rod';

/** What the rod reads when its foot stands on a surface. */
export interface RodTarget {
  readonly surface: string;
  readonly elevation: Length;
  /** Negative where the surface lies above the line of sight. */
  readonly rod: Length;
  readonly reach: RodReach;
}

/** The surfaces of a build-up as readings, from finished grade down. */
export type RodTargets = readonly RodTarget[] & Worked;

/**
 * What the rod reads on each surface of a build-up: `rod = HI - elevation`, from finished grade down
 * to the subgrade. Readings grow as the ground goes down.
 *
 * @param options.instrumentHeight - elevation of the line of sight [length]
 * @param options.finishedGrade - elevation of finished grade at the stake [length]
 * @param options.buildUp - from `buildUp`
 * @param options.lifts - from `lifts` for the lowest layer, if its lifts are wanted too
 * @param options.rodLength - longest reading of the rod [length], if it is to be watched
 * @returns a list: `surface`, `elevation` [length], `rod` [length], and whether the rod can show it
 * @throws `WRONG_TYPE`, `OUT_OF_RANGE` and the reading codes
 * @source grade-with-a-level
 * @example
 * const walk = buildUp({
 *   layers: [
 *     { name: 'paver', thickness: '60 mm' },
 *     { name: 'bedding', thickness: '25 mm' },
 *     { name: 'base', thickness: '150 mm' },
 *   ],
 * });
 * const targets = rodTargets({ instrumentHeight: '31.42 m', finishedGrade: '30 m', buildUp: walk });
 * targets.map(({ surface }) => surface) //=> ['finished grade', 'bedding top', 'base top', 'subgrade']
 * targets.map(({ rod }) => rod.to('m').toString()) //=> ['1.42', '1.48', '1.505', '1.655']
 */
export function rodTargets(options: {
  readonly instrumentHeight: LengthInput;
  readonly finishedGrade: LengthInput;
  readonly buildUp: BuildUp;
  readonly lifts?: Lifts;
  readonly rodLength?: LengthInput;
}): RodTargets {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const at = ['instrumentHeight'];
  const height = reader.quantity('length', fields['instrumentHeight'], at, ELEVATION);
  const finish = reader.quantity('length', fields['finishedGrade'], ['finishedGrade'], ELEVATION);
  const surfaces = readSurfaces(reader, fields);
  const rodLength =
    fields['rodLength'] === undefined
      ? undefined
      : reader.quantity('length', fields['rodLength'], ['rodLength'], ALLOWED);
  reader.finish();
  const targets = targetsFrom({ height, finish, surfaces, rodLength });
  return withWorking(targets, () => targetSteps(height, targets));
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
  targets.map(({ surface, elevation, rod }) => ({
    title: `Rod on the ${surface}`,
    formula: 'r = HI - z',
    given: [
      given('HI', 'height of instrument', height),
      given('z', `elevation of the ${surface}`, elevation),
    ],
    result: given('r', 'rod reading', rod),
    source: 'grade-with-a-level',
  }));
