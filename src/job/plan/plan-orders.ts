import { entry } from '../../invariant.js';
import { baseOrder } from '../../volumes/base-order.js';
import type { Area, Length, Volume } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { numberText } from '../read/normal-job.js';
import type { ReadJob } from '../schema/job-shape.js';
import { isStone, thicknessOf, type Pavement } from '../schema/layer-kinds.js';
import { looseOf, sandOf } from './materials.js';
import type { LooseOrderPlan } from './plan.js';
import { taperedVolume, type TaperedBase } from './areas/tapered-base.js';

type Loose = ReadJob['materials']['sands'][number];

/** Areas and volumes that need stone and sand. Internal. */
export interface Amounts {
  /** Base area counted with the pavement. */
  readonly base: Area;
  readonly paving: Area;
  /** Fill in low ground up to the subgrade. */
  readonly fill: Volume;
  /** Base that tapers beyond the restraint; null for full thickness. */
  readonly taper: TaperedBase | null;
}

/** Orders stone layer by layer, fill for low ground and bedding sand, layer by layer. Internal. */
export function planOrders(
  job: ReadJob,
  pavement: Pavement,
  amounts: Amounts,
): {
  readonly stones: readonly LooseOrderPlan[];
  readonly bedding: LooseOrderPlan;
} {
  const { materials } = job;
  const layers = pavement.layers.filter(isStone);
  const spans = spansOf(layers);
  const stones = layers.map((layer, index): LooseOrderPlan => {
    const stone = looseOf(materials.stones, layer.material);
    const size =
      amounts.taper === null
        ? { area: amounts.base, thickness: layer.thickness }
        : { volume: taperedVolume(amounts.taper, entry(spans, index)) };
    return {
      material: stone.id,
      layer: layer.name ?? layer.kind,
      order: baseOrder(Object.assign(factorsOf(stone), size)),
    };
  });
  if (!amounts.fill.isZero()) {
    const stone = looseOf(materials.stones, materials.fill ?? layers.at(-1)?.material);
    const order = baseOrder({ volume: amounts.fill, ...factorsOf(stone) });
    stones.push({ material: stone.id, layer: 'fill', order });
  }
  const sand = sandOf(materials, pavement);
  const thickness = thicknessOf(pavement, ({ kind }) => kind === 'bedding');
  const bedding = {
    material: sand.id,
    layer: 'bedding',
    order: baseOrder({ area: amounts.paving, thickness, ...factorsOf(sand) }),
  };
  return { stones, bedding };
}

/** Foot and top of each layer of stone above the subgrade. */
function spansOf(layers: Pavement['layers']): { readonly from: Length; readonly to: Length }[] {
  let from = NO_LENGTH;
  const spans = [...layers].reverse().map(({ thickness }) => {
    const span = { from, to: from.plus(thickness) };
    from = span.to;
    return span;
  });
  return spans.reverse();
}

const factorsOf = ({
  compactedDryDensity,
  compactedPerLoose,
  moisture,
  waste,
}: Omit<Loose, 'settlement'>) => ({
  compactedDryDensity,
  compactedPerLoose: numberText(compactedPerLoose),
  moisture: moisture === undefined ? 0 : numberText(moisture),
  waste: waste === undefined ? 0 : numberText(waste),
});
