import { wholeNumberUp } from '../units/format-quantity.js';
import type { Area } from '../units/quantity.js';
import { given, type Step } from '../working.js';
import type { PaverPlan } from './plan.js';
import type { Job } from './schema.js';

/** Units that fill an area by their module (size with joint), and the order. Internal. */
export function planPavers({ paver }: Job, paving: Area): PaverPlan | null {
  if (paver === undefined) return null;
  const module = paver.length.plus(paver.joint).times(paver.width.plus(paver.joint));
  const allowance = paver.breakage?.plus(1) ?? 1;
  return {
    area: paving,
    module,
    whole: wholeNumberUp(paving, module),
    order: wholeNumberUp(paving.times(allowance), module),
  };
}

/** The working of the paver count. Internal. */
export function paverSteps({ paver }: Job, pavers: PaverPlan | null): Step[] {
  if (paver === undefined || pavers === null) return [];
  return [
    {
      title: 'Pavers to order',
      formula: 'n = ceil(A (1 + q) / ((l + j) (w + j)))',
      given: [
        given('A', 'area of the paving', pavers.area),
        given('q', 'cuts and breakage', paver.breakage ?? 0),
        given('l', 'length of a unit', paver.length),
        given('w', 'width of a unit', paver.width),
        given('j', 'joint', paver.joint),
      ],
      result: given('n', 'units to order', pavers.order),
      source: 'derived',
    },
  ];
}
