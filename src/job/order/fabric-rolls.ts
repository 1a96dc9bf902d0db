import { present } from '../../invariant.js';
import { cutsOf, type Roll } from '../../materials/fabric/roll-cuts.js';
import type { Area, Length } from '../../units/quantity.js';
import { derivedStep, given, procedureStep, withWorking, type Worked } from '../../working.js';
import type { SuppliesPlan } from '../plan/plan-of-site.js';

type Fabric = NonNullable<SuppliesPlan['geotextile']>;

/** Fabric in whole rolls. */
interface FabricRolls extends Worked {
  readonly need: Area;
  readonly ordered: Area;
  readonly surplus: Area;
  readonly load: readonly { readonly name: string; readonly count: number }[];
}

/**
 * The rolls for the strips of all pavements together: cut as those of one pavement are, so a strip of one
 * may come from what another leaves of a roll. Internal.
 */
export function fabricRolls(
  fabrics: readonly Fabric[],
  roll: Roll & { readonly length: Length },
): FabricRolls {
  const strips = fabrics.flatMap(({ laid }) => laid);
  const { fabricArea: need, rolls } = cutsOf(strips, roll);
  const count = present(rolls, 'number of rolls');
  const ordered = roll.length.times(roll.width).times(count);
  const surplus = ordered.minus(need);
  const order = { need, ordered, surplus, load: [{ name: 'roll', count }] };
  return withWorking(order, () => {
    const R = given('R', 'roll length', roll.length);
    const w = given('w', 'roll width', roll.width);
    const n = given('n', 'rolls', count);
    const A = given('A', 'area to order', ordered);
    const K = given('K', 'area needed', need);
    const f = given(
      'f',
      'fabric to cut for each strip',
      strips.map(({ cutLength }) => cutLength),
    );
    return [
      procedureStep({
        title: 'Rolls of geotextile for all pavements',
        procedure: 'materialList',
        method: 'Cuts whole rolls and last pieces, which share rolls and are not pieced again.',
        source: 'derived',
        given: [f, R],
        result: n,
      }),
      derivedStep({
        title: 'Area of geotextile needed',
        formula: 'K = sum(f) * w',
        given: [f, w],
        result: K,
      }),
      derivedStep({
        title: 'Area of geotextile to order',
        formula: 'A = n * R * w',
        given: [n, R, w],
        result: A,
      }),
      derivedStep({
        title: 'Geotextile left over',
        formula: 'c = A - K',
        given: [A, K],
        result: given('c', 'geotextile left over', surplus),
      }),
    ];
  });
}
