import type { BuildUp } from '../build-up/build-up.js';
import type { Lifts } from '../build-up/lifts.js';
import { makeReader, type Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { withWorking, type Worked } from '../working.js';
import { ALLOWED, ELEVATION, READING } from './limits.js';
import { targetsFrom, targetSteps, type RodTarget } from './rod-targets.js';
import { readSurfaces } from './surfaces.js';

/** A stake with its finished grade, and the ground read there if it was. */
export interface RodStakeInput {
  readonly id: string;
  /** Elevation of finished grade. */
  readonly finish: LengthInput;
  /** Reading with the rod on the existing ground. */
  readonly ground?: LengthInput;
}

/** Rod readings at one stake. */
export interface StakeRods {
  readonly id: string;
  readonly finish: Length;
  readonly targets: readonly RodTarget[];
  /** Elevation of the existing ground, where it was read. */
  readonly ground?: Length;
  /** From the existing ground to the subgrade: cut positive, fill negative. */
  readonly cut?: Length;
}

/** Rod readings for every surface at every stake. */
export interface RodTable extends Worked {
  /** The surfaces, from finished grade down: the columns of the table. */
  readonly surfaces: readonly string[];
  readonly stakes: readonly StakeRods[];
}

/**
 * Rod readings for every surface of a build-up at every stake, from one set-up: `rod = HI - elevation`;
 * where the ground was read, the cut to the subgrade `subgrade rod - ground rod`.
 *
 * @param options.instrumentHeight - elevation of the line of sight [length]
 * @param options.buildUp - from `buildUp`
 * @param options.lifts - from `lifts` for the lowest layer, if its lifts are wanted too
 * @param options.stakes - each `id` once, `finish` [length], and the reading on the `ground` [length]
 *   if it was taken
 * @param options.rodLength - longest reading of the rod [length], if it is to be watched
 * @returns the names of the surfaces, and for each stake the readings [length], ground and cut [length]
 * @throws `EMPTY_LIST`, `DUPLICATE_ID`, `WRONG_TYPE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source grade-with-a-level
 * @example
 * const walk = buildUp({ layers: [{ name: 'paver', thickness: '60 mm' }, { name: 'base', thickness: '150 mm' }] });
 * const table = stakeRods({
 *   instrumentHeight: '31.42 m',
 *   buildUp: walk,
 *   stakes: [{ id: 'N1', finish: '30 m', ground: '1.31 m' }, { id: 'N2', finish: '29.9 m' }],
 * });
 * table.stakes[1]?.targets.map(({ rod }) => rod.to('m').toString()) //=> ['1.52', '1.58', '1.73']
 * table.stakes[0]?.cut?.to('mm').toString() //=> '320'
 */
export function stakeRods(options: {
  readonly instrumentHeight: LengthInput;
  readonly buildUp: BuildUp;
  readonly lifts?: Lifts;
  readonly stakes: readonly RodStakeInput[];
  readonly rodLength?: LengthInput;
}): RodTable {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const at = ['instrumentHeight'];
  const height = reader.quantity('length', fields['instrumentHeight'], at, ELEVATION);
  const surfaces = readSurfaces(reader, fields);
  const rodLength =
    fields['rodLength'] === undefined
      ? undefined
      : reader.quantity('length', fields['rodLength'], ['rodLength'], ALLOWED);
  const read = readStakes(reader, fields['stakes']);
  reader.finish();
  const stakes = read.map(({ id, finish, ground }): StakeRods => {
    const targets = targetsFrom({ height, finish, surfaces, rodLength });
    if (ground === undefined) return { id, finish, targets };
    const subgrade = targets.at(-1)?.elevation ?? finish;
    const level = height.minus(ground);
    return { id, finish, targets, ground: level, cut: level.minus(subgrade) };
  });
  return withWorking({ surfaces: surfaces.map(({ surface }) => surface), stakes }, () =>
    stakes.flatMap(({ id, targets }) =>
      targetSteps(height, targets).map((step) => ({
        ...step,
        title: `${step.title}, stake ${id}`,
      })),
    ),
  );
}

function readStakes(reader: Reader, value: unknown) {
  const ids = new Set<string>();
  return reader.list(value, ['stakes']).map((item, k) => {
    const path = ['stakes', k];
    const fields = reader.object(item, path);
    const id = reader.text(fields['id'], [...path, 'id']);
    if (id !== '' && ids.has(id)) {
      reader.fail('DUPLICATE_ID', [...path, 'id'], `the stake ${id} stands twice`);
    }
    ids.add(id);
    const finish = reader.quantity('length', fields['finish'], [...path, 'finish'], ELEVATION);
    const ground =
      fields['ground'] === undefined
        ? undefined
        : reader.quantity('length', fields['ground'], [...path, 'ground'], READING);
    return { id, finish, ground };
  });
}
