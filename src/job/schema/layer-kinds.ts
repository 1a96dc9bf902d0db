import { sum } from '../../units/aggregate.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { ReadJob } from './job-shape.js';
import type { LayerKind } from './pavement-input.js';

/** The group of materials for each kind of layer. Internal. */
export const MATERIALS_OF = {
  paver: 'pavers',
  bedding: 'sands',
  base: 'stones',
  'sub-base': 'stones',
} as const satisfies Readonly<Record<LayerKind, string>>;

/** A pavement that has been read. Internal. */
export type Pavement = ReadJob['pavements'][number];

/** True for a layer of compacted stone. Internal. */
export const isStone = ({ kind }: { readonly kind: LayerKind }): boolean =>
  kind === 'base' || kind === 'sub-base';

/** Thickness of all layers of the given kinds. Internal. */
export function thicknessOf(
  { layers }: Pavement,
  isWanted: (layer: Pavement['layers'][number]) => boolean,
): Length {
  return sum([NO_LENGTH, ...layers.filter(isWanted).map(({ thickness }) => thickness)]);
}
