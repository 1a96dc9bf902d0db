import type { Volume } from '../../units/quantity.js';
import { inState } from '../../volumes/state-volume.js';
import type { MaterialKind } from '../order/material-list.js';
import type { LooseOrderPlan } from '../plan/plan.js';
import { orderLineOf, type StepBasis } from './step-basis.js';
import type { WorkAmount } from './work-step.js';

const NOTHING = {
  layer: null,
  state: null,
  inPlace: null,
  loose: null,
  mass: null,
  area: null,
  pieces: null,
  orderLine: null,
  loads: null,
} as const;

/** An amount; what is left out is null. Internal. */
export const amountOf = (
  parts: Pick<WorkAmount, 'action' | 'kind' | 'name' | 'material'> & Partial<WorkAmount>,
): WorkAmount => ({ ...NOTHING, ...parts });

/** What is counted in pieces, and the line that orders it. Internal. */
export const piecesOf = (
  basis: StepBasis,
  kind: MaterialKind,
  of: Pick<WorkAmount, 'material' | 'name'> & Partial<WorkAmount>,
): WorkAmount =>
  amountOf({ action: 'place', kind, orderLine: orderLineOf(basis, kind, of.material), ...of });

/** A share of the order of a stone or sand: one of so many equal parts. Internal. */
export function looseAmount(
  basis: StepBasis,
  kind: 'stone' | 'sand',
  { material, layer, order }: LooseOrderPlan,
  parts = 1,
): WorkAmount {
  const { stones, sands } = basis.plan.totals;
  const stream = (kind === 'stone' ? stones : sands).find((one) => one.material === material);
  const loose: Volume = order.loose.volume.dividedBy(parts);
  return amountOf({
    action: 'place',
    kind,
    material,
    name: stream?.name ?? material,
    layer,
    state: 'compacted',
    inPlace: order.compacted.volume.dividedBy(parts),
    loose: inState(loose, 'loose'),
    mass: order.deliveredMass.dividedBy(parts),
    orderLine: orderLineOf(basis, kind, material),
    loads: basis.countLoads(stream, loose),
  });
}
