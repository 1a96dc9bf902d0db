import { attempt } from 'settline/errors';
import { planJob, workSteps, type JobInput } from 'settline/job';
import { shownResult, type Block } from '../block/block.js';
import { pavementField, SITE_FILE } from '../block/one-site.js';
import { refuseUnknown } from '../block/refuse-unknown.js';

const plan = () => planJob(JSON.parse(SITE_FILE) as JobInput);

export const block: Block = {
  title: 'Steps of Cedar Court, an invented site',
  calls: ['planJob', 'workSteps'],
  fields: [pavementField],
  options: { pavement: 'terrace' },
  run: ({ pavement, ...rest }) =>
    attempt(() => {
      refuseUnknown(rest);
      const steps = workSteps(plan()).filter((one) => one.pavement === pavement);
      const sign = steps.filter(({ holdPoints }) => holdPoints.length > 0);
      const rows = steps.map(({ title, before, holdPoints }) => ({
        step: title,
        firstTrue: before.length,
        signs: holdPoints.map(({ who }) => who),
      }));
      const shown = shownResult(
        { steps: rows },
        `${steps.length} steps; after ${sign.length} of them someone has to sign before the work goes on.`,
      );
      const cautions = new Map(steps.flatMap((one) => one.cautions).map((one) => [one.id, one]));
      return {
        ...shown,
        notes: steps.map(({ title }, at) => `${at + 1}. ${title}`),
        cautions: [...cautions.values()],
      };
    }),
};
