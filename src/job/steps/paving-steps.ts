import { entry, known } from '../../invariant.js';
import type { PavementPlan, UnitsPlan } from '../plan/plan.js';
import { baseTop } from './base-steps.js';
import { deliveryHours, NO_HOURS, plateHours, platePasses } from './rated-hours.js';
import { looseAmount, piecesOf } from './step-amounts.js';
import {
  condition,
  finishedHeightsOf,
  heightsOf,
  makeStep,
  surfacePasses,
  type StepBasis,
} from './step-basis.js';
import type { WorkAmount, WorkFigure, WorkStep } from './work-step.js';

/** Screeding the bedding. Internal. */
export function screedBedding(basis: StepBasis, pavement: PavementPlan): WorkStep {
  const { settlement, bedding, areas, name } = pavement;
  const thickness = entry(pavement.buildUp.layers, 1).thickness;
  const amount = looseAmount(basis, 'sand', bedding);
  return makeStep(basis, pavement, {
    kind: 'bedding',
    title: `Screed the bedding (${name})`,
    before: [surfacePasses(baseTop(pavement).surface)],
    heights: heightsOf(basis, pavement, beddingTop(pavement)),
    figures: [
      { code: 'area', name: 'bedding', value: areas.paving },
      { code: 'finished', name: 'thickness under the pavers, finished', value: thickness },
      ...(settlement === null
        ? []
        : [
            {
              code: 'rails',
              name: 'screed above the base',
              value: thickness.plus(settlement),
            } as const,
            { code: 'settlement', name: 'goes down under the plate', value: settlement } as const,
          ]),
    ],
    amounts: [amount],
    hours: { ...NO_HOURS, trucks: deliveryHours(basis.job, amount.loads) },
    notes: [
      ...(settlement === null
        ? [
            'The settlement of the bed is not known. Plate a trial area, measure it, and set the rails high by it.',
          ]
        : ['Set the screed rails to the height as placed. Take them out and fill the grooves.']),
      'Do not compact the bedding and do not walk on it. Screed no more than you cover today.',
    ],
  });
}

/** Laying the field. Internal. */
export function layPavers(basis: StepBasis, pavement: PavementPlan): WorkStep {
  const { pavers, areas, name } = pavement;
  const border = borderPaver(basis, pavement);
  const orders = pavers?.orders.filter(({ paver }) => paver !== border) ?? [];
  return makeStep(basis, pavement, {
    kind: 'pavers',
    title: `Lay the pavers (${name})`,
    before: [surfacePasses(beddingTop(pavement))],
    heights: heightsOf(basis, pavement, 'finished grade'),
    figures: [{ code: 'area', name: 'to lay', value: pavers?.area ?? areas.paving }],
    amounts: orders.map((order) => unitsAmount(basis, order)),
    notes: [
      'Work from the pavers you have laid, not from the bedding. Mix several packs. Pull lines as you go.',
      ...(pavers === null
        ? ['The job describes no paver for this pavement: count the pavers yourself.']
        : []),
    ],
    cautions: ['handling'],
  });
}

const beddingTop = ({ buildUp }: PavementPlan): string => `${entry(buildUp.layers, 1).name} top`;

/** A paver that the border alone is made of; null where it is that of the field. */
function borderPaver({ job }: StepBasis, { id, pavers }: PavementPlan): string | null {
  const given = job.pavements.find((one) => one.id === id);
  const own = given?.border?.paver;
  const field = given?.layers.find(({ kind }) => kind === 'paver')?.material;
  if (own === undefined || own === field || pavers === null) return null;
  return own;
}

function unitsAmount(basis: StepBasis, { paver, order }: UnitsPlan): WorkAmount {
  const { name } = known(
    basis.plan.totals.pavers.find((one) => one.paver === paver),
    'paver of the totals',
  );
  return piecesOf(basis, 'pavers', { material: paver, name, pieces: order });
}

/** Laying the border; no step where the job has none. Internal. */
export function layBorder(basis: StepBasis, pavement: PavementPlan): WorkStep[] {
  const { pavers, name } = pavement;
  if (pavers === null || pavers.border === 0) return [];
  const border = borderPaver(basis, pavement);
  const orders = pavers.orders.filter(({ paver }) => paver === border);
  return [
    makeStep(basis, pavement, {
      kind: 'border',
      title: `Lay the border (${name})`,
      figures: [{ code: 'count', name: 'pavers of the border', value: pavers.border }],
      amounts: orders.map((order) => unitsAmount(basis, order)),
      notes:
        orders.length > 0 ? [] : ['The order for the field includes the pavers of the border.'],
      cautions: ['handling'],
    }),
  ];
}

/** Cutting pavers at the edges; no step where the pattern shows that none is cut. Internal. */
export function cutPavers(basis: StepBasis, pavement: PavementPlan): WorkStep[] {
  const cut = pavement.pavers?.cut ?? null;
  if (cut === 0) return [];
  return [
    makeStep(basis, pavement, {
      kind: 'cuts',
      title: `Cut in the edges (${pavement.name})`,
      figures: cut === null ? [] : [{ code: 'count', name: 'pavers to cut', value: cut }],
      notes: cut === null ? ['The number of cuts is not known: the job gives no pattern.'] : [],
      cautions: ['cutting'],
    }),
  ];
}

/** Plating the pavers into the bedding. Internal. */
export function compactPavers(basis: StepBasis, pavement: PavementPlan): WorkStep {
  const passes = platePasses(basis.job, 'paverPasses');
  return makeStep(basis, pavement, {
    kind: 'compact-pavers',
    title: `Compact the pavers (${pavement.name})`,
    heights: heightsOf(basis, pavement, 'finished grade'),
    figures: plateFigures(pavement, passes),
    hours: { ...NO_HOURS, plate: plateHours(basis.job, pavement.areas.paving, passes) },
    notes: ['Keep the plate away from edges that are not held yet. Replace cracked pavers now.'],
  });
}

const plateFigures = ({ areas }: PavementPlan, passes: number | undefined): WorkFigure[] => [
  { code: 'area', name: 'to plate', value: areas.paving },
  ...(passes === undefined ? [] : [{ code: 'passes', name: 'passes', value: passes } as const]),
];

/** Sweeping joint sand in, pass by pass. Internal. */
export function fillJoints(basis: StepBasis, pavement: PavementPlan): WorkStep {
  const sand = pavement.supplies.jointSand;
  const passes = platePasses(basis.job, 'jointPasses');
  return makeStep(basis, pavement, {
    kind: 'joint-sand',
    title: `Fill the joints (${pavement.name})`,
    before: [condition('PAVERS_ARE_DRY', 'Pavers and joint sand are dry.')],
    figures: plateFigures(pavement, passes),
    amounts:
      sand === null
        ? []
        : [
            piecesOf(basis, 'joint-sand', {
              material: null,
              name: 'joint sand',
              inPlace: sand.volume,
              mass: sand.mass,
            }),
          ],
    hours: { ...NO_HOURS, plate: plateHours(basis.job, pavement.areas.paving, passes) },
    notes: [
      'Sweep sand in, plate, sweep again. Go on until the joints stay full, then sweep clean.',
    ],
    cautions: ['dust'],
  });
}

/** The last check. Internal. */
export function handOver(basis: StepBasis, pavement: PavementPlan): WorkStep {
  return makeStep(basis, pavement, {
    kind: 'hand-over',
    title: `Final check and hand-over (${pavement.name})`,
    heights: finishedHeightsOf(basis, pavement, 'finished grade'),
    figures: [{ code: 'area', name: 'paving', value: pavement.areas.paving }],
    notes: ['Check levels, falls, flatness, lips and joints. Hose it and look for standing water.'],
    holdPoints: [
      {
        code: 'final-levels',
        who: 'person who accepts the work',
        surface: 'finished grade',
        note: 'Final levels and falls are measured and accepted.',
      },
    ],
    cautions: ['drainage'],
  });
}
