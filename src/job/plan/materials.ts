import { fault } from '../../errors.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { Pavement } from '../schema/layer-kinds.js';

type Materials = ReadJob['materials'];

/** Finds a stone, sand or paver by its id. Reading the job has checked that it exists. Internal. */
export function looseOf<T extends { readonly id: string }>(
  group: readonly T[],
  id: string | undefined,
): T {
  const found = group.find((one) => one.id === id);
  if (found === undefined)
    throw fault('UNKNOWN_ID', 'no material has this id. Check the id', {}, ['materials']);
  return found;
}

/** A paver of a job. Internal. */
export type Paver = NonNullable<Materials['pavers']>[number];

/** The paver of the field of a pavement; null if pavers are not counted. Internal. */
export function paverOf({ pavers = [] }: Materials, { layers }: Pavement): Paver | null {
  const id = layers.find(({ kind }) => kind === 'paver')?.material;
  return id === undefined ? null : looseOf(pavers, id);
}

/** The bedding sand of a pavement. Internal. */
export const sandOf = ({ sands }: Materials, { layers }: Pavement): Materials['sands'][number] =>
  looseOf(sands, layers.find(({ kind }) => kind === 'bedding')?.material);
