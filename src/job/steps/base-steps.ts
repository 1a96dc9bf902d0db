import { lastOf } from '../../invariant.js';
import { counted } from '../counted.js';
import type { LiftGroundPlan } from '../plan/plan-of-ground.js';
import type { LiftPlan, LooseOrderPlan, PavementPlan } from '../plan/plan.js';
import { surfacesBelow } from '../plan/surfaces.js';
import { liftNotes } from './ground-notes.js';
import { deliveryHours, NO_HOURS, plateHours, platePasses } from './rated-hours.js';
import { amountOf, looseAmount, piecesOf } from './step-amounts.js';
import {
  finishedHeightsOf,
  heightsOf,
  makeStep,
  orderLineOf,
  surfacePasses,
  type StepBasis,
} from './step-basis.js';
import type { HoldPoint, WorkFigure, WorkStep } from './work-step.js';

/** Laying the geotextile; no step where the job has none. Internal. */
export function layGeotextile(basis: StepBasis, pavement: PavementPlan): WorkStep[] {
  const fabric = pavement.supplies.geotextile;
  if (fabric === null) return [];
  return [
    makeStep(basis, pavement, {
      kind: 'geotextile',
      title: `Lay the geotextile (${pavement.name})`,
      before: [surfacePasses('subgrade')],
      figures: [
        { code: 'count', name: 'strips', value: fabric.strips },
        { code: 'area', name: 'covered', value: fabric.coveredArea },
      ],
      amounts: [
        amountOf({
          action: 'place',
          kind: 'geotextile',
          material: null,
          name: 'geotextile',
          area: fabric.fabricArea,
          pieces: fabric.rolls,
          orderLine: orderLineOf(basis, 'geotextile', null),
        }),
      ],
      notes: [
        'No folds. Lap the strips so that the stone is pushed over the laps, not under them.',
        ...sharedRollNotes(basis),
      ],
    }),
  ];
}

/** That pavements share rolls, where each by itself would take more than are ordered. */
function sharedRollNotes({ plan, list }: StepBasis): string[] {
  const alone = plan.pavements.map(({ supplies }) => supplies.geotextile?.rolls ?? 0);
  const ordered = list.lines.find(({ kind }) => kind === 'geotextile')?.packs[0]?.count;
  if (ordered === undefined || alone.reduce((a, b) => a + b, 0) <= ordered) return [];
  return [`Keep what is left of each roll: ${counted(ordered, 'roll')} must do for all pavements.`];
}

/** Each lift of each stone layer, from the subgrade up. Internal. */
export function placeLifts(basis: StepBasis, pavement: PavementPlan): WorkStep[] {
  const { lifts, stones } = pavement;
  return lifts.map((lift, index) => {
    const [below, above] = [lifts[index - 1], lifts[index + 1]];
    const order = stones.find(({ layer }) => layer === lift.layer);
    return placeLift(basis, pavement, {
      lift,
      order,
      parts: lifts.filter(({ layer }) => layer === lift.layer).length,
      below: below === undefined ? 'subgrade' : topOf(pavement, below),
      // the top of the base is signed when it has been checked
      isSigned: above !== undefined && above.layer !== lift.layer,
    });
  });
}

interface LiftBasis {
  readonly lift: LiftPlan;
  readonly order: LooseOrderPlan | undefined;
  /** Equal lifts that the order of the layer is for. */
  readonly parts: number;
  readonly below: string;
  readonly isSigned: boolean;
}

function placeLift(basis: StepBasis, pavement: PavementPlan, of: LiftBasis): WorkStep {
  const { lift, order, parts, below, isSigned } = of;
  const surface = topOf(pavement, lift);
  const amounts = order === undefined ? [] : [looseAmount(basis, 'stone', order, parts)];
  const own = pavement.ground?.lifts.find((one) => one.lift === lift.lift) ?? null;
  // the crew's own passes come from a trial strip, and stand before those of the method
  const passes = platePasses(basis.job, 'passes') ?? own?.passes ?? undefined;
  return makeStep(basis, pavement, {
    kind: 'lift',
    number: lift.lift,
    title: `Lift ${lift.lift}, ${lift.layer} (${pavement.name})`,
    before: [surfacePasses(below)],
    heights: heightsOf(basis, pavement, surface),
    figures: [...liftFigures(lift, passes), ...waterFigures(own)],
    amounts,
    hours: {
      ...NO_HOURS,
      plate: plateHours(basis.job, pavement.areas.ownBase, passes),
      trucks: deliveryHours(basis.job, amounts[0]?.loads ?? null),
    },
    notes: ['Spread to the loose height, compact, then measure.', ...liftNotes(own, passes)],
    holdPoints: isSigned ? [layerAccepted(lift.layer, surface)] : [],
    cautions: ['loads'],
  });
}

const liftFigures = ({ loose, compacted }: LiftPlan, passes: number | undefined): WorkFigure[] => [
  { code: 'placed', name: 'spread, loose', value: loose },
  { code: 'finished', name: 'compacted', value: compacted },
  ...(passes === undefined ? [] : [{ code: 'passes', name: 'passes', value: passes } as const]),
];

/** Water to add; what must dry off is a note, because nobody measures it out. */
const waterFigures = (own: LiftGroundPlan | null): WorkFigure[] =>
  own?.action === 'add-water' && own.water !== null
    ? [{ code: 'water', name: 'water to add', value: own.water }]
    : [];

const layerAccepted = (layer: string, surface: string): HoldPoint => ({
  code: 'layer-accepted',
  who: 'person who accepts the work',
  surface,
  note: `The ${layer} is compacted, and its top is on grade at every stake.`,
});

/** What the top of a lift is called. */
const topOf = (pavement: PavementPlan, { lift, belowFinish }: LiftPlan): string =>
  surfacesBelow(pavement).find(({ depth }) => depth.equals(belowFinish))?.surface ??
  `lift ${lift} top`;

/** The top of the base, on which the bedding comes. Internal. */
export function baseTop(pavement: PavementPlan): {
  readonly layer: string;
  readonly surface: string;
} {
  const top = lastOf(pavement.lifts);
  return { layer: top.layer, surface: topOf(pavement, top) };
}

/** Checking the base before anything is set on it. Internal. */
export function checkBase(basis: StepBasis, pavement: PavementPlan): WorkStep {
  const { layer, surface } = baseTop(pavement);
  return makeStep(basis, pavement, {
    kind: 'base-check',
    title: `Check the base (${pavement.name})`,
    heights: finishedHeightsOf(basis, pavement, surface),
    figures: [{ code: 'area', name: 'base', value: pavement.areas.base }],
    notes: [
      'Check height, thickness, flatness and compaction. Correct with base: bedding must not make up for it.',
    ],
    holdPoints: [layerAccepted(layer, surface)],
  });
}

/** Setting the edge restraint; no step where no edge is open. Internal. */
export function setRestraint(basis: StepBasis, pavement: PavementPlan): WorkStep[] {
  const restraint = pavement.supplies.edgeRestraint;
  const isOpen = pavement.edges.some(({ kind }) => kind === null || kind === 'open');
  if (restraint === null && !isOpen) return [];
  return [
    makeStep(basis, pavement, {
      kind: 'edge-restraint',
      title: `Set the edge restraint (${pavement.name})`,
      before: [surfacePasses(baseTop(pavement).surface)],
      amounts:
        restraint === null
          ? []
          : [
              piecesOf(basis, 'edge-restraint', {
                material: null,
                name: 'edge restraint, pieces',
                pieces: restraint.pieces,
              }),
              piecesOf(basis, 'spikes', {
                material: null,
                name: 'spikes',
                pieces: restraint.spikes,
              }),
            ],
      notes: [
        'Set it on the compacted base, never on bedding. Leave it below the top of the pavers.',
      ],
    }),
  ];
}
