import { known } from '../../invariant.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { Pavement } from '../schema/layer-kinds.js';

type Materials = ReadJob['materials'];

/** Finds a stone, sand or paver by its id. Reading the job has checked that it exists. Internal. */
export function looseOf<T extends { readonly id: string }>(
  group: readonly T[],
  id: string | undefined,
): T {
  return known(
    group.find((one) => one.id === id),
    'material of this id',
  );
}

/** A paver of a job. Internal. */
export type Paver = NonNullable<Materials['pavers']>[number];

/** A paver of a job by its id. Internal. */
export const paverWith = ({ pavers }: Materials, id: string): Paver =>
  looseOf(known(pavers, 'pavers'), id);

/** The place of a paver among those of its job. Internal. */
export const paverIndex = ({ pavers }: Materials, paver: Paver): number =>
  known(pavers, 'pavers').indexOf(paver);

/** The paver of the field of a pavement; null if pavers are not counted. Internal. */
export function paverOf({ pavers = [] }: Materials, { layers }: Pavement): Paver | null {
  const id = layers.find(({ kind }) => kind === 'paver')?.material;
  return id === undefined ? null : looseOf(pavers, id);
}

/** The bedding sand of a pavement. Internal. */
export const sandOf = ({ sands }: Materials, { layers }: Pavement): Materials['sands'][number] =>
  looseOf(sands, layers.find(({ kind }) => kind === 'bedding')?.material);
