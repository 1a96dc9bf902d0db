import { checkJob, planJob, type JobInput } from 'settline/job';
import { attempt } from 'settline/errors';
import { entry, shownResult, type Block } from '../block/block.js';
import { SITE_FILE } from '../block/one-site.js';

export const block: Block = {
  title: 'Finished grade of Cedar Court, an invented site',
  calls: ['planJob', 'checkJob'],
  fields: [
    {
      kind: 'rows',
      path: ['readings'],
      label: 'Readings below the string',
      one: 'reading',
      columns: [
        entry('stake', 'stake'),
        entry('surface', 'surface'),
        entry('belowString', 'below string'),
      ],
      fresh: () => ({ stake: 'K2', surface: 'finished grade', belowString: '17 in' }),
    },
    entry(['tolerances', 'pavers', 'over'], 'Tolerance, too high'),
    entry(['tolerances', 'pavers', 'under'], 'Tolerance, too low'),
  ],
  options: {
    readings: [
      { stake: 'K1', surface: 'finished grade', belowString: '18 in' },
      { stake: 'F1', surface: 'finished grade', belowString: '24 in' },
    ],
    tolerances: { pavers: { over: '3/8 in', under: '3/8 in' } },
  },
  run: (options) =>
    attempt(() => {
      const plan = planJob(JSON.parse(SITE_FILE) as JobInput);
      const check = checkJob(plan, options);
      const verdicts = check.surfaces.map(
        ({ pavement, surface, verdict }) => `${pavement}, ${surface}: ${verdict}.`,
      );
      const missing = check.surfaces.map(
        (one) => `No reading of ${one.surface} at ${one.missing.join(', ')} (${one.pavement}).`,
      );
      const shown = shownResult(check, verdicts.join(' '));
      return {
        ...shown,
        notes: check.surfaces.some((one) => one.missing.length > 0) ? missing : [],
      };
    }),
};
