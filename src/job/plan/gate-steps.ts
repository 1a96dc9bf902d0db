import { formulaStep, given, published, type Worked } from '../../working.js';
import { place, placeBy, type PlacedStep } from './placed.js';
import type { NearbyPlan } from './plan-of-site.js';

/** The working of the rules that an open dig comes under. Internal. */
export function gateSteps({ gates }: NearbyPlan, worker: Worked | null): PlacedStep[] {
  if (gates === null) return [];
  const rules = gates.gates.flatMap(({ id, from, source }, k) =>
    from === null || source === 'derived'
      ? []
      : [
          place(
            formulaStep({
              title: `Limit of the rule "${id}"`,
              formula: 'l = p',
              given: [published('p', `published limit of "${id}"`, from, source)],
              result: given('l', `limit of "${id}"`, from),
              source,
            }),
            [['nearby', 'gates', 'gates', k, 'from']],
          ),
        ],
  );
  return [
    ...placeBy(worker?.working ?? [], { x: [['nearby', 'gates', 'daylightOffset']] }),
    ...rules,
  ];
}
