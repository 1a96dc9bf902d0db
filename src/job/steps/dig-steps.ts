import { max, min } from '../../units/aggregate.js';
import { NO_VOLUME } from '../../units/zero.js';
import type { OldPavingPlan, PavementPlan, UtilityPlan } from '../plan/plan.js';
import { looseOf } from '../plan/materials.js';
import {
  deliveryHours,
  haulHours,
  handHours,
  machineHours,
  NO_HOURS,
  plateHours,
  platePasses,
} from './rated-hours.js';
import { subgradeNotes } from './ground-notes.js';
import { amountOf, looseAmount } from './step-amounts.js';
import { condition, heightsOf, makeStep, type StepBasis } from './step-basis.js';
import type { WorkCondition, WorkFigure, WorkHours, WorkStep } from './work-step.js';

/** Stripping the old paving in a dig; no step where none lies in it. Internal. */
export function stripOldPaving(basis: StepBasis, pavement: PavementPlan): WorkStep[] {
  const { oldPaving, name } = pavement;
  if (oldPaving.length === 0) return [];
  const hauled = oldPaving.map((old) => strippedFrom(basis, old));
  const trucks = hauled.flatMap(({ hours }) => (hours.trucks === null ? [] : [hours.trucks]));
  return [
    makeStep(basis, pavement, {
      kind: 'strip',
      title: `Strip the old paving (${name})`,
      figures: oldPaving.flatMap(({ material, thickness, area }): WorkFigure[] => [
        { code: 'thickness', name: `old ${material}, thickness`, value: thickness },
        { code: 'area', name: `old ${material}, area`, value: area },
      ]),
      amounts: hauled.map(({ amount }) => amount),
      hours: {
        ...NO_HOURS,
        trucks: trucks.length === 0 ? null : trucks.reduce((all, one) => all.plus(one)),
      },
      notes: ['Keep asphalt, concrete and soil apart: mixed loads may be refused.'],
      cautions: ['dust', 'utilities'],
    }),
  ];
}

function strippedFrom(basis: StepBasis, old: OldPavingPlan) {
  const { material, density, inPlace, loose, mass } = old;
  const stream = basis.plan.totals.oldPaving.find(
    (one) => one.material === material && one.density.equals(density),
  );
  const loads = basis.countLoads(stream, loose.volume);
  const amount = amountOf({
    action: 'haul-away',
    kind: 'old-paving',
    material,
    name: `old ${material}`,
    state: 'solid',
    inPlace,
    loose,
    mass,
    loads,
  });
  return { amount, hours: haulHours(basis.job, stream, loads) };
}

/** Digging to the subgrade; no step where nothing is cut. Internal. */
export function dig(basis: StepBasis, pavement: PavementPlan): WorkStep[] {
  const { spoil, name, nearby } = pavement;
  if (spoil.bank.volume.isZero()) return [];
  const stream = basis.plan.totals.spoil ?? undefined;
  const loads = basis.countLoads(stream, spoil.loose.volume);
  const amount = amountOf({
    action: 'haul-away',
    kind: 'soil',
    material: null,
    name: 'soil',
    state: 'bank',
    inPlace: spoil.bank.volume,
    loose: spoil.loose,
    mass: spoil.mass,
    loads,
  });
  const hasLines = nearby.handDig !== null && !nearby.handDig.area.isZero();
  return [
    makeStep(basis, pavement, {
      kind: 'dig',
      title: `Dig (${name})`,
      before: [
        ...linesToAsk(basis, pavement),
        condition(
          'DIG_IS_SAFE',
          'A competent person has decided on slopes, shoring, access and spoil.',
        ),
      ],
      heights: heightsOf(basis, pavement, 'subgrade'),
      figures: digFigures(basis, pavement),
      amounts: [amount],
      hours: digHours(basis, pavement, haulHours(basis.job, stream, loads)),
      notes: [
        ...(hasLines ? ['Dig by hand in the zones of marked lines, until each line is open.'] : []),
        ...(pavement.top === null
          ? []
          : ['Dig the sloped sides from the top of slope, as the work goes down.']),
        'Keep spoil and gear away from the edge of the dig.',
        'Stop above the subgrade and trim the rest. Never put loose soil back under it.',
      ],
      holdPoints: [
        {
          code: 'dig-checked',
          who: 'competent person',
          surface: null,
          note: 'The open dig is checked before anyone works in it, before each shift and after rain.',
        },
      ],
      cautions: ['utilities', 'excavation', 'structure'],
    }),
  ];
}

/** What has to be known of marked lines before the dig. */
function linesToAsk(basis: StepBasis, pavement: PavementPlan): WorkCondition[] {
  const inDig = pavement.nearby.utilities.filter(({ handDigArea }) => !handDigArea.isZero());
  if (inDig.length === 0) return [];
  const toStop = inDig.filter((line) => isTooHigh(basis, pavement, line));
  const named = (lines: readonly UtilityPlan[]) => lines.map(({ id }) => id).join(', ');
  return [
    condition(
      'LINES_OPENED',
      `Test holes show where these lines lie, and how deep: ${named(inDig)}.`,
    ),
    ...(toStop.length === 0
      ? []
      : [
          condition(
            'LINE_OWNER_AGREES',
            `The owner agrees in writing, because these lines lie in the dig or too little cover is left over them: ${named(toStop)}.`,
          ),
        ]),
  ];
}

/** True for a line with too little cover left, or one that was found no deeper than the dig goes. */
function isTooHigh(
  { plan, job }: StepBasis,
  { id: pavement, dig: { depth }, earth }: PavementPlan,
  { id, cover }: UtilityPlan,
): boolean {
  if (cover !== null && cover.verdict !== 'pass') return true;
  const found = job.utilities?.find((line) => line.id === id)?.found;
  const measured = plan.stringLines
    .filter((line) => line.pavement === pavement)
    .flatMap(({ stakes }) => stakes.flatMap((stake) => stake.dig ?? []));
  const deepest = max([
    depth,
    ...measured,
    ...(earth.deepestCut === null ? [] : [earth.deepestCut.depth]),
  ]);
  return found?.atMost(deepest) === true;
}

function digFigures({ job }: StepBasis, { edges, nearby, top }: PavementPlan): WorkFigure[] {
  const { handDig } = nearby;
  const spoilDistance = job.excavation?.spoilDistance;
  return [
    ...(handDig === null || handDig.area.isZero()
      ? []
      : [
          figure('hand-dig-area', 'by hand, area', handDig.area),
          figure('hand-dig-volume', 'by hand, bank, no more than', handDig.volume),
        ]),
    ...(top === null
      ? []
      : edges
          .filter((edge) => edge.top.greaterThan(edge.dig))
          .map(({ edge, top: up, dig }) =>
            figure('slope-run', `edge ${edge}: top of slope set back`, up.minus(dig)),
          )),
    ...(spoilDistance === undefined
      ? []
      : [figure('spoil-distance', 'spoil and gear from the edge, minimum', spoilDistance)]),
  ];
}

const figure = (
  code: WorkFigure['code'],
  name: string,
  value: WorkFigure['value'],
): WorkFigure => ({ code, name, value });

/** Machine and hands share the soil: by hand what lies in the zones, no more than all of it. */
function digHours(
  { job }: StepBasis,
  { spoil, nearby }: PavementPlan,
  hauled: Pick<WorkHours, 'trucks' | 'trucksNeeded'>,
): WorkHours {
  const all = spoil.bank.volume;
  const byHand = min([nearby.handDig?.volume ?? NO_VOLUME, all]);
  return {
    machine: machineHours(job, all.minus(byHand)),
    byHand: handHours(job, byHand),
    plate: null,
    ...hauled,
  };
}

/** Filling low ground up to the subgrade; no step where none is low. Internal. */
export function fillLowGround(basis: StepBasis, pavement: PavementPlan): WorkStep[] {
  const order = pavement.stones.find(({ layer }) => layer === 'fill');
  if (order === undefined) return [];
  const amount = looseAmount(basis, 'stone', order);
  const { maxLift } = looseOf(basis.job.materials.stones, order.material);
  const { fillArea, deepestFill } = pavement.earth;
  return [
    makeStep(basis, pavement, {
      kind: 'fill',
      title: `Fill low ground up to the subgrade (${pavement.name})`,
      before: [
        condition(
          'GROUND_IS_SOUND',
          'The ground to fill on is stripped, firm, and free of water, mud and frost.',
        ),
      ],
      heights: heightsOf(basis, pavement, 'subgrade'),
      figures: [
        ...(fillArea === null ? [] : [{ code: 'area', name: 'to fill', value: fillArea } as const]),
        ...(deepestFill === null
          ? []
          : [{ code: 'depth', name: 'deepest fill', value: deepestFill.depth } as const]),
        { code: 'maximum-lift', name: 'compacted lift, maximum', value: maxLift },
      ],
      amounts: [amount],
      hours: { ...NO_HOURS, trucks: deliveryHours(basis.job, amount.loads) },
      notes: ['Compact every lift before the next.'],
      cautions: ['structure'],
    }),
  ];
}

/** Checking and compacting the subgrade. Internal. */
export function checkSubgrade(basis: StepBasis, pavement: PavementPlan): WorkStep {
  const { areas, name } = pavement;
  const passes = platePasses(basis.job, 'subgradePasses');
  return makeStep(basis, pavement, {
    kind: 'subgrade',
    title: `Check and compact the subgrade (${name})`,
    before: [
      condition(
        'GROUND_IS_SOUND',
        'No water, mud or frost on the subgrade, no soft spot and no loose soil.',
      ),
    ],
    heights: heightsOf(basis, pavement, 'subgrade'),
    figures: [
      { code: 'area', name: 'subgrade', value: areas.ownDig },
      ...(passes === undefined ? [] : [{ code: 'passes', name: 'passes', value: passes } as const]),
    ],
    hours: { ...NO_HOURS, plate: plateHours(basis.job, areas.ownDig, passes) },
    notes: [
      'Compact first, then measure. Fill what is too deep with compacted base.',
      'Use a rammer or a padded roller on clay. A plate suits sand and stone.',
      ...subgradeNotes(basis.job, pavement),
    ],
    holdPoints: [
      {
        code: 'subgrade-accepted',
        who: 'person who accepts the work',
        surface: 'subgrade',
        note: 'The subgrade is firm, compacted, and on grade at every stake.',
      },
    ],
    cautions: ['structure'],
  });
}
