// string-line stands on build-up: the depths below a string are the depths of a build-up, moved up
import type { BuildUp } from '../build-up/build-up.js';
import { THICKNESS_OR_NONE } from '../input/ranges.js';
import { requireBuildUp } from '../build-up/built-up.js';
import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { LEVEL } from './limits.js';
import { readTies, type Tie } from './read-ties.js';

/** A stake on the string, and the ground measured below the string there. */
export interface StringStakeInput {
  readonly id: string;
  readonly station: LengthInput;
  /** Measured depth of the existing surface below the string; negative where it stands above. */
  readonly ground?: LengthInput;
}

/** A layer as depths below the string. */
export interface LayerBelowString {
  readonly name: string;
  readonly top: Length;
  readonly bottom: Length;
}

/** What is left to do at a measured stake. */
export type DigAction = 'dig' | 'fill' | 'none';

/** Depths below the string at one stake, positive down. */
export interface StakeDepths {
  readonly id: string;
  readonly station: Length;
  readonly finish: Length;
  readonly layers: readonly LayerBelowString[];
  readonly subgrade: Length;
  /** Measured existing surface, where given. */
  readonly ground?: Length;
  /** From the existing surface down to the subgrade: cut positive, fill negative. */
  readonly dig?: Length;
  /** The same once the old surface is stripped. */
  readonly soil?: Length;
  readonly action?: DigAction;
}

/** Depths below the string for a run of stakes. */
export interface StringDepths extends Worked {
  readonly stringHeight: Length;
  /** Depth below the string to finished grade, layers and subgrade: the same at every stake. */
  readonly finish: Length;
  readonly layers: readonly LayerBelowString[];
  readonly subgrade: Length;
  readonly stakes: readonly StakeDepths[];
  readonly cautions: readonly Caution[];
}

/**
 * Depths below a string set at a constant height above finished grade: `finish = h`,
 * `layer top = h + depth of its top`, `subgrade = h + build-up`; where the ground was measured,
 * `dig = subgrade - ground` (cut positive, fill negative) and `soil = dig - old surface`.
 *
 * The string is taken as straight: `depthTable` takes off its sag between stakes.
 *
 * @param options.buildUp - from `buildUp`
 * @param options.stringHeight - string above finished grade [length], not negative, at most 5 m
 * @param options.stakes - each `id` once, `station` along the string [length], `ground` [length]
 *   measured from the string down to the existing surface, if it was measured
 * @param options.removedSurface - old paving to strip [length], default none
 * @returns depths below the string [length], positive down
 * @throws `STRING_BELOW_FINISH`, `EMPTY_LIST`, `DUPLICATE_ID`, `NEGATIVE`, `OUT_OF_RANGE` and the
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
export function stringDepths(options: {
  readonly buildUp: BuildUp;
  readonly stringHeight: LengthInput;
  readonly stakes: readonly StringStakeInput[];
  readonly removedSurface?: LengthInput;
}): StringDepths {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const buildUp = requireBuildUp(reader, fields['buildUp'], ['buildUp']);
  const stringHeight = readStringHeight(reader, fields['stringHeight']);
  const removed = reader.quantity(
    'length',
    fields['removedSurface'] ?? '0 m',
    ['removedSurface'],
    THICKNESS_OR_NONE,
  );
  const stakes = readStakes(reader, fields['stakes']);
  reader.finish();

  const layers = buildUp.layers.map(({ name, top, bottom }) => ({
    name,
    top: stringHeight.plus(top),
    bottom: stringHeight.plus(bottom),
  }));
  const subgrade = stringHeight.plus(buildUp.total);
  const below = { finish: stringHeight, layers, subgrade };
  const depths = stakes.map((stake) => atStake(stake, below, removed));
  return withWorking(
    {
      stringHeight,
      ...below,
      stakes: depths,
      cautions: cautionsFor('utilities', 'excavation', 'trees'),
    },
    () => showWorking(stringHeight, buildUp.total, subgrade, depths, removed),
  );
}

function readStringHeight(reader: Reader, value: unknown): Length {
  const height = reader.quantity('length', value, ['stringHeight'], {
    ...THICKNESS_OR_NONE,
    sign: 'any',
  });
  if (height.isNegative()) {
    reader.fail(
      'STRING_BELOW_FINISH',
      ['stringHeight'],
      'the string must stand at or above finished grade',
    );
  }
  return height;
}

interface ReadStake extends Tie {
  readonly ground?: Length;
}

const readStakes = (reader: Reader, value: unknown): ReadStake[] =>
  readTies(reader, value, (fields, path) =>
    fields['ground'] === undefined
      ? {}
      : { ground: reader.quantity('length', fields['ground'], [...path, 'ground'], LEVEL) },
  );

function atStake(
  { id, station, ground }: ReadStake,
  below: Pick<StringDepths, 'finish' | 'layers' | 'subgrade'>,
  removed: Length,
): StakeDepths {
  if (ground === undefined) return { id, station, ...below };
  const dig = below.subgrade.minus(ground);
  const soil = dig.minus(removed);
  const action = dig.isZero() ? 'none' : dig.isNegative() ? 'fill' : 'dig';
  return { id, station, ...below, ground, dig, soil, action };
}

function showWorking(
  height: Length,
  total: Length,
  subgrade: Length,
  stakes: readonly StakeDepths[],
  removed: Length,
): Step[] {
  const first: Step = {
    title: 'Subgrade below the string',
    formula: 'B = h + D',
    given: [given('h', 'string above finished grade', height), given('D', 'build-up', total)],
    result: given('B', 'subgrade below the string', subgrade),
    source: 'derived',
  };
  return [first, ...stakes.flatMap((stake) => stakeSteps(stake, removed))];
}

function stakeSteps({ id, subgrade, ground, dig, soil }: StakeDepths, removed: Length): Step[] {
  if (ground === undefined || dig === undefined || soil === undefined) return [];
  return [
    {
      title: `Dig at stake ${id}`,
      formula: 'E = B - g',
      given: [
        given('B', 'subgrade below the string', subgrade),
        given('g', 'ground below the string', ground),
      ],
      result: given('E', 'dig (cut +, fill -)', dig),
      source: 'derived',
    },
    {
      title: `Soil at stake ${id} once the old surface is stripped`,
      formula: 'S = E - o',
      given: [given('E', 'dig', dig), given('o', 'old surface', removed)],
      result: given('S', 'soil (cut +, fill -)', soil),
      source: 'derived',
    },
  ];
}
