import type { BuildUp } from '../build-up/build-up.js';
import type { Lifts } from '../build-up/lifts.js';
import { list, object, optional, quantity, text } from '../input/field.js';
import { ELEVATION, ROD_LENGTH, ROD_READING } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { lastOf } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { withWorking, type Worked } from '../working.js';
import { sight, sightSteps, type InstrumentHeightInput } from './instrument-height.js';
import { targetsFrom, targetSteps, type RodTarget } from './rod-targets.js';
import { checkLifts, STACK, surfacesOf, type Surface } from './surfaces.js';

/** A stake, with the ground reading if there is one. */
export interface RodStakeInput {
  /** Id, each used once. */
  readonly id: string;
  /** Elevation of finished grade at the stake [length], up to 10 km either way. */
  readonly finishedGrade: LengthInput;
  /** Reading with the rod on the existing ground [length], 0 to 20 m. Default: not read. */
  readonly ground?: LengthInput;
}

/** The stakes, their build-up and the instrument. */
export interface StakeRodsOptions {
  /** Elevation of the line of sight [length], or the set-up `{ benchmark, back }` that gives it. */
  readonly instrumentHeight: InstrumentHeightInput;
  /** The layers, from `buildUp`. */
  readonly buildUp: BuildUp;
  /** Lifts of the lowest layer, from `lifts`, to include their tops. Default: none. */
  readonly lifts?: Lifts;
  /** Stakes, 1 to 10 000. */
  readonly stakes: readonly RodStakeInput[];
  /** Longest reading of the rod [length], more than 0 and at most 20 m. Default: not checked. */
  readonly rodLength?: LengthInput;
}

const STAKE = shapeOf<RodStakeInput>()({
  id: text(),
  finishedGrade: quantity(ELEVATION),
  ground: optional(quantity(ROD_READING)),
});

const OPTIONS = shapeOf<StakeRodsOptions>()({
  instrumentHeight: sight,
  ...STACK,
  stakes: list(object(STAKE), { of: 'stakes', unique: 'id' }),
  rodLength: optional(quantity(ROD_LENGTH)),
});

/** Rod readings at one stake. */
export interface StakeRods {
  /** The stake. */
  readonly id: string;
  /** Elevation of finished grade. */
  readonly finishedGrade: Length;
  /** The reading for each surface, from finished grade down. */
  readonly targets: readonly RodTarget[];
  /** Elevation of the existing ground; null if it was not read. */
  readonly ground: Length | null;
  /**
   * Cut (positive) or fill (negative) from the existing ground to the subgrade; null if the ground
   * was not read.
   */
  readonly cut: Length | null;
}

/** Rod readings for every surface at every stake. */
export interface RodTable extends Worked {
  /** Elevation of the line of sight. */
  readonly instrumentHeight: Length;
  /** The surfaces, from finished grade down: the columns of the table. */
  readonly surfaces: readonly string[];
  /** The stakes, in the order given: the rows of the table. */
  readonly stakes: readonly StakeRods[];
}

/**
 * Rod readings for every surface of a build-up at every stake, from one set-up:
 * `rod = HI - elevation`; if the ground was read, the cut to the subgrade is
 * `subgrade rod - ground rod`.
 *
 * @param options - see {@link StakeRodsOptions}
 * @returns height of instrument [length], the names of the surfaces, and for each stake the readings,
 *   ground and cut [length]
 * @throws `REQUIRED`, `EMPTY_LIST`, `DUPLICATE_ID`, `WRONG_TYPE`, `CONFLICTING_FIELDS` (lifts of another
 *   layer), `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source grade-with-a-level
 * @example
 * const walk = buildUp({ layers: [{ name: 'paver', thickness: '60 mm' }, { name: 'base', thickness: '150 mm' }] });
 * const table = stakeRods({
 *   instrumentHeight: '31.42 m',
 *   buildUp: walk,
 *   stakes: [
 *     { id: 'N1', finishedGrade: '30 m', ground: '1.31 m' },
 *     { id: 'N2', finishedGrade: '29.9 m' },
 *   ],
 * });
 * table.stakes[1]?.targets.map(({ rod }) => rod.to('m').toString()) //=> ['1.52', '1.58', '1.73']
 * table.stakes[0]?.cut?.to('mm').toString() //=> '320'
 */
export function stakeRods(options: StakeRodsOptions): RodTable {
  const read = readOptions(options, OPTIONS, checkLifts);
  const { height } = read.instrumentHeight;
  const surfaces = surfacesOf(read.buildUp, read.lifts);
  const stakes = read.stakes.map((stake) =>
    rodsAt(stake, { height, surfaces, rodLength: read.rodLength }),
  );
  const names = surfaces.map(({ surface }) => surface);
  return withWorking({ instrumentHeight: height, surfaces: names, stakes }, () => [
    ...sightSteps(read.instrumentHeight),
    ...stakes.flatMap(({ id, targets }) =>
      targetSteps(height, targets).map((step) => ({
        ...step,
        title: `${step.title}, stake ${id}`,
      })),
    ),
  ]);
}

interface RodBasis {
  readonly height: Length;
  readonly surfaces: readonly Surface[];
  readonly rodLength: Length | undefined;
}

function rodsAt(
  { id, finishedGrade, ground: reading }: Values<typeof STAKE>,
  basis: RodBasis,
): StakeRods {
  const targets = targetsFrom({ ...basis, finish: finishedGrade });
  if (reading === undefined) return { id, finishedGrade, targets, ground: null, cut: null };
  const ground = basis.height.minus(reading);
  const subgrade = lastOf(targets).elevation;
  return { id, finishedGrade, targets, ground, cut: ground.minus(subgrade) };
}
