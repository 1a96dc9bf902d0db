import { sum } from '../../units/aggregate.js';
import { length } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import type { ReadJob } from '../schema/job-shape.js';

/** A pavement that has been read. Internal. */
export type Pavement = ReadJob['pavements'][number];

/** No length at all. Internal. */
export const NO_LENGTH = length(0, 'm');

/** True for a layer of compacted stone. Internal. */
export const isStone = ({ kind }: Pavement['layers'][number]): boolean =>
  kind === 'base' || kind === 'sub-base';

/** Thickness of all layers of the given kinds. Internal. */
export function thicknessOf(
  { layers }: Pavement,
  isWanted: (layer: Pavement['layers'][number]) => boolean,
): Length {
  return sum([NO_LENGTH, ...layers.filter(isWanted).map(({ thickness }) => thickness)]);
}
