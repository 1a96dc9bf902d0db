import { attempt } from 'settline/errors';
import { planInWorker } from 'settline/many-jobs';
import { entry, shownResult, type Block } from '../block/block.js';
import { SITE_FILE } from '../block/one-site.js';
import { refuseUnknown } from '../block/refuse-unknown.js';
import { readJson, withValueAt, type Json } from '../page/json-text.js';

/** The job file of Cedar Court with another height of its strings. */
function jobWith(height: Json): Json {
  const reading = readJson(SITE_FILE);
  if (!reading.ok) throw new Error(reading.message);
  return withValueAt(reading.value, ['stringHeight'], height);
}

export const block: Block = {
  title: 'A queue of jobs, one of them with a fault',
  calls: ['planInWorker'],
  fields: [
    {
      kind: 'rows',
      path: ['heights'],
      label: 'The job of Cedar Court, with its strings at these heights',
      one: 'job',
      columns: [entry([], 'string height')],
      fresh: () => '18 in',
    },
  ],
  options: { heights: ['18 in', '18', '20 in'] },
  run: ({ heights, ...rest }) =>
    attempt(() => {
      refuseUnknown(rest);
      const given: readonly Json[] = Array.isArray(heights) ? heights : [];
      const jobs = given.map((height, index) => {
        const outcome = planInWorker(jobWith(height));
        return {
          job: index + 1,
          planned: outcome.ok,
          fault: outcome.ok ? null : outcome.errors.map(({ message }) => message),
        };
      });
      const planned = jobs.filter((one) => one.planned).length;
      const faulty = jobs.flatMap(({ job, fault }) =>
        fault === null ? [] : [`Job ${job}: ${fault.join(' ')}`],
      );
      const shown = shownResult({ jobs }, `${planned} of ${jobs.length} jobs are planned.`);
      return { ...shown, notes: faulty };
    }),
};
