import { attempt } from 'settline/errors';
import { planFromJSON, planJob, type JobInput } from 'settline/job';
import { entry, shownResult, type Block } from '../block/block.js';
import { SITE_FILE } from '../block/one-site.js';
import { refuseUnknown } from '../block/refuse-unknown.js';
import { readJson, valueAt, withValueAt } from '../page/json-text.js';

const ORDER = ['totals', 'pavers', 0, 'order'] as const;

/** What `JSON.stringify` of the plan gives, read again. */
function savedPlan() {
  const reading = readJson(JSON.stringify(planJob(JSON.parse(SITE_FILE) as JobInput)));
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
}

export const block: Block = {
  title: 'A saved plan of Cedar Court, with one figure in reach',
  calls: ['planJob', 'planFromJSON'],
  fields: [entry([...ORDER], 'Pavers to order, in the saved plan', { isNumber: true })],
  options: { totals: { pavers: [{ order: 6817 }] } },
  run: ({ totals, ...rest }) =>
    attempt(() => {
      refuseUnknown(rest);
      const order = valueAt({ totals: totals ?? null }, [...ORDER]);
      const plan = planFromJSON(withValueAt(savedPlan(), [...ORDER], order));
      const { figures, name } = plan;
      return shownResult(
        { name, figures, pavers: plan.totals.pavers.map((one) => one.order) },
        'Every figure of the saved plan agrees with its job.',
      );
    }),
};
