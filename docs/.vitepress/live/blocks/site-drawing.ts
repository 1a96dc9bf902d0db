import { drawDig, drawPlan, drawSection } from 'settline/drawing';
import { attempt } from 'settline/errors';
import { planJob, type JobInput } from 'settline/job';
import type { UnitSystem } from 'settline/units';
import { shownResult, type Block } from '../block/block.js';
import { pavementField, SITE_FILE } from '../block/one-site.js';
import { refuseUnknown } from '../block/refuse-unknown.js';

const WIDE = 600;

export const block: Block = {
  title: 'Drawings of Cedar Court, an invented site',
  calls: ['planJob', 'drawSection', 'drawDig', 'drawPlan'],
  fields: [
    {
      kind: 'choice',
      path: ['drawing'],
      label: 'Drawing',
      choices: [
        ['section', 'section through the edge'],
        ['dig', 'depths of the dig'],
        ['plan', 'the site from above'],
      ],
    },
    pavementField,
    {
      kind: 'choice',
      path: ['system'],
      label: 'Units',
      choices: [
        ['us', 'feet and inches'],
        ['metric', 'metric'],
      ],
    },
  ],
  options: { drawing: 'section', pavement: 'court', system: 'us' },
  run: ({ drawing, pavement, system, ...rest }) =>
    attempt(() => {
      refuseUnknown(rest);
      const plan = planJob(JSON.parse(SITE_FILE) as JobInput);
      const draw = (width: number): string => {
        const look = {
          system: system as UnitSystem,
          theme: 'screen',
          ...(width < WIDE ? { narrow: true } : {}),
        } as const;
        if (drawing === 'plan') return drawPlan(plan, look);
        const one = { ...look, pavement: pavement as string };
        return drawing === 'dig' ? drawDig(plan, one) : drawSection(plan, one);
      };
      const text = draw(WIDE);
      const title = /<title[^>]*>([^<]*)</.exec(text)?.[1] ?? 'The drawing';
      return shownResult(
        { letters: text.length },
        `${title}: ${text.length} letters of SVG that load nothing.`,
        draw,
      );
    }),
};
