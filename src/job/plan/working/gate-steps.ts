import { present } from '../../../invariant.js';
import { formulaStep, given, published, type Worked } from '../../../working.js';
import type { ReachedGate } from '../../../site/excavation/excavation-gates.js';
import { place, placeBy, type PlacedStep } from '../placed.js';
import type { NearbyPlan } from '../plan-of-site.js';

/** What each rule sets a limit for. */
const LIMITS: Readonly<Record<ReachedGate['id'], string>> = {
  egress: 'a way out',
  atmosphere: 'a test of the air',
  'protective-system': 'protection of the sides',
  walkway: 'rails at a walkway',
  engineer: 'a design by an engineer',
  'competent-person': 'inspections',
  'spoil-set-back': 'spoil beside the dig',
  'no-system': 'sides without protection',
  'footing-level': 'a dig beside a footing',
  'footing-line': 'a dig below the line from a footing',
};

/** True for a limit that is measured on the site, not printed in a rule. */
const isOfJob = (id: ReachedGate['id']): boolean => id === 'footing-level' || id === 'footing-line';

/** The working of the rules that an open dig comes under. Internal. */
export function gateSteps({ gates }: NearbyPlan, worker: Worked | null): PlacedStep[] {
  if (gates === null) return [];
  const rules = gates.gates.flatMap(({ id, from, source }, k) =>
    from === null || source === 'derived'
      ? []
      : [
          place(
            formulaStep({
              title: `Limit of the rule on ${LIMITS[id]}`,
              formula: 'l = p',
              given: [
                isOfJob(id)
                  ? given('p', 'bottom of the footing', from)
                  : published('p', `published limit for ${LIMITS[id]}`, from, source),
              ],
              result: given('l', `limit for ${LIMITS[id]}`, from),
              source,
            }),
            [['nearby', 'gates', 'gates', k, 'from']],
          ),
        ],
  );
  return [
    ...placeBy(present(worker, 'rules').working, { x: [['nearby', 'gates', 'daylightOffset']] }),
    ...rules,
  ];
}
