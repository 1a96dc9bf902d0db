// string-line uses build-up: the depths below a string are the depths of a build-up, moved up
import type { BuildUp } from '../build-up/build-up.js';
import { builtUp } from '../build-up/built-up.js';
import { soilUnder } from '../build-up/excavation-depth.js';
import { list, object, optional, quantity } from '../input/field.js';
import { LEVEL_DIFFERENCE, STRING_HEIGHT, THICKNESS_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { belowString, digAt } from './below-string.js';
import { TIE, type TieInput } from './ties.js';

/** A stake on the string, and the ground measured below the string there. */
export interface StringStakeInput extends TieInput {
  /**
   * Measured from the string down to the existing surface [length], negative if that is above the
   * string, up to 20 m either way. Default: not measured.
   */
  readonly ground?: LengthInput;
  /** Thickness of old paving to strip here [length], 0 to 5 m. Default: that of the whole string. */
  readonly removedSurface?: LengthInput;
}

/** A string over a build-up, and its stakes. */
export interface StringDepthsOptions {
  /** The layers that go in, from `buildUp`. */
  readonly buildUp: BuildUp;
  /** String above finished grade [length], 0 to 5 m. */
  readonly stringHeight: LengthInput;
  /** At least 1 stake. */
  readonly stakes: readonly StringStakeInput[];
  /** Thickness of old paving to strip [length], 0 to 5 m. Default: none. */
  readonly removedSurface?: LengthInput;
}

const STRING_STAKE = shapeOf<StringStakeInput>()({
  ...TIE,
  ground: optional(quantity(LEVEL_DIFFERENCE)),
  removedSurface: optional(quantity(THICKNESS_OR_NONE)),
});

const OPTIONS = shapeOf<StringDepthsOptions>()({
  buildUp: builtUp,
  stringHeight: quantity(STRING_HEIGHT),
  removedSurface: optional(quantity(THICKNESS_OR_NONE), NO_LENGTH),
  stakes: list(object(STRING_STAKE), { of: 'stakes', unique: 'id' }),
});

/** A layer as depths below the string. */
export interface LayerBelowString {
  /** Name of the layer. */
  readonly name: string;
  /** From the string down to its top [length]. */
  readonly top: Length;
  /** From the string down to its bottom [length]. */
  readonly bottom: Length;
}

/** What to do at a measured stake. */
export type DigAction = 'dig' | 'fill' | 'none';

/** Depths below the string, the same at every stake, positive down. */
export interface DepthsBelowString {
  /** From the string down to finished grade [length]. */
  readonly finish: Length;
  /** From the top down. */
  readonly layers: readonly LayerBelowString[];
  /** From the string down to the subgrade [length]. */
  readonly subgrade: Length;
}

/** Depths below the string at one stake, positive down. */
export interface StakeDepths extends DepthsBelowString {
  /** The stake. */
  readonly id: string;
  /** Distance along the string [length]. */
  readonly station: Length;
  /** From the string down to the existing surface, as measured [length]; null if it was not. */
  readonly ground: Length | null;
  /** From the existing surface down to the subgrade [length], cut positive, fill negative; null without `ground`. */
  readonly dig: Length | null;
  /** Soil to dig after stripping the old surface [length], fill negative; null without `ground`. */
  readonly soil: Length | null;
  /** The dig in one word; null without `ground`. */
  readonly action: DigAction | null;
}

/** Depths below the string for a run of stakes. */
export interface StringDepths extends DepthsBelowString, Cautioned, Worked {
  /** String above finished grade, as given [length]. */
  readonly stringHeight: Length;
  /** Each stake, in the order given. */
  readonly stakes: readonly StakeDepths[];
}

/**
 * Depths below a string set at a constant height above finished grade: `finish = h`,
 * `layer top = h + depth of its top`, `subgrade = h + build-up`. If the ground was measured,
 * `dig = subgrade - ground` (cut positive, fill negative) and `soil = dig - old surface`.
 *
 * The string is taken as straight: `depthTable` deducts its sag between stakes.
 *
 * @param options - see {@link StringDepthsOptions}
 * @returns depths below the string [length], positive down
 * @throws `EMPTY_LIST`, `DUPLICATE_ID`, `NEGATIVE`, `OUT_OF_RANGE` and the
 *   reading codes
 * @source derived
 * @example
 * const drive = buildUp({ layers: [{ name: 'paver', thickness: '3 1/4 in' }, { name: 'base', thickness: '9 in' }] });
 * const depths = stringDepths({
 *   buildUp: drive,
 *   stringHeight: '15 in',
 *   stakes: [{ id: 'S1', station: '0 ft', ground: '17 1/2 in' }],
 * });
 * depths.subgrade.to('in').toString() //=> '27.25'
 * depths.stakes[0]?.dig?.to('in').toString() //=> '9.75'
 */
export function stringDepths(options: StringDepthsOptions): StringDepths {
  const { buildUp, stringHeight: height, stakes, removedSurface } = readOptions(options, OPTIONS);
  const layers = buildUp.layers.map(({ name, top, bottom }) => ({
    name,
    top: belowString(height, top),
    bottom: belowString(height, bottom),
  }));
  const subgrade = belowString(height, buildUp.total);
  const below = { finish: height, layers, subgrade };
  const depths = stakes.map((stake) => atStake(stake, below, removedSurface));
  const cautions = cautionsFor('utilities', 'excavation', 'trees');
  return withWorking({ stringHeight: height, ...below, stakes: depths, cautions }, () =>
    showWorking(buildUp.total, { height, subgrade, stakes: depths }),
  );
}

const NOT_MEASURED = { ground: null, dig: null, soil: null, action: null } as const;

function atStake(
  { id, station, ground, removedSurface }: Values<typeof STRING_STAKE>,
  below: DepthsBelowString,
  removed: Length,
): StakeDepths {
  if (ground === undefined) return { id, station, ...below, ...NOT_MEASURED };
  const dig = digAt(below.subgrade, ground);
  const soil = soilUnder(removedSurface ?? removed, dig);
  const action = dig.isZero() ? 'none' : dig.isNegative() ? 'fill' : 'dig';
  return { id, station, ...below, ground, dig, soil, action };
}

function showWorking(
  total: Length,
  of: {
    readonly height: Length;
    readonly subgrade: Length;
    readonly stakes: readonly StakeDepths[];
  },
): Step[] {
  const first: Step = derivedStep({
    title: 'Subgrade below the string',
    formula: 'B = h + D',
    given: [given('h', 'string above finished grade', of.height), given('D', 'build-up', total)],
    result: given('B', 'subgrade below the string', of.subgrade),
  });
  return [first, ...of.stakes.flatMap((stake) => stakeSteps(stake))];
}

function stakeSteps({ id, subgrade, ground, dig, soil }: StakeDepths): Step[] {
  if (ground === null || dig === null || soil === null) return [];
  return [
    derivedStep({
      title: `Dig at stake ${id}`,
      formula: 'E = B - g',
      given: [
        given('B', 'subgrade below the string', subgrade),
        given('g', 'ground below the string', ground),
      ],
      result: given('E', 'dig (cut +, fill -)', dig),
    }),
    derivedStep({
      title: `Soil at stake ${id} after stripping the old surface`,
      formula: 'S = E - o',
      given: [given('E', 'dig', dig), given('o', 'old surface', dig.minus(soil))],
      result: given('S', 'soil (cut +, fill -)', soil),
    }),
  ];
}
