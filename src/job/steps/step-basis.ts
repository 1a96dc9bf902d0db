import { cautionsFor, type CautionId } from '../../sources/cautions.js';
import type { MaterialKind, MaterialList } from '../order/material-list.js';
import type { JobPlan, PavementPlan } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { LoadCounter } from './count-loads.js';
import { NO_HOURS } from './rated-hours.js';
import type { WorkCondition, WorkHeight, WorkStep } from './work-step.js';

/** The job whose steps are being listed. Internal. */
export interface StepBasis {
  readonly plan: JobPlan;
  readonly job: ReadJob;
  readonly list: MaterialList;
  readonly countLoads: LoadCounter;
  /** The last step listed for a pavement, by its id, and for the whole job under null. */
  readonly last: Map<string | null, WorkStep>;
}

/** What a step says; what is left out is empty. Internal. */
export interface StepParts
  extends
    Pick<WorkStep, 'kind' | 'title'>,
    Partial<Omit<WorkStep, 'id' | 'kind' | 'title' | 'pavement' | 'cautions'>> {
  /** Told from other steps of its kind by this. */
  readonly number?: number;
  readonly cautions?: readonly CautionId[];
}

/**
 * Makes a step. What it waits for first is the step before it: of its pavement, else of the whole job.
 * Internal.
 */
export function makeStep(
  basis: StepBasis,
  pavement: PavementPlan | null,
  { number, cautions = [], before = [], ...parts }: StepParts,
): WorkStep {
  const id = pavement?.id ?? null;
  const previous = basis.last.get(id) ?? basis.last.get(null);
  const kind = number === undefined ? parts.kind : `${parts.kind}-${number}`;
  const step: WorkStep = {
    heights: [],
    figures: [],
    amounts: [],
    hours: NO_HOURS,
    notes: [],
    holdPoints: [],
    ...parts,
    id: id === null ? kind : `${kind}/${id}`,
    pavement: id,
    before: [...(previous === undefined ? [] : [afterStep(previous)]), ...before],
    cautions: cautionsFor(...cautions),
  };
  basis.last.set(id, step);
  return step;
}

const afterStep = ({ id, title, holdPoints }: WorkStep): WorkCondition =>
  holdPoints.length > 0
    ? { code: 'SIGNED', step: id, surface: null, note: `"${title}" is done and signed.` }
    : { code: 'STEP_DONE', step: id, surface: null, note: `"${title}" is done.` };

/** The condition that a surface is checked and passes. Internal. */
export const surfacePasses = (surface: string): WorkCondition => ({
  code: 'SURFACE_PASSES',
  step: null,
  surface,
  note: `The check of the surface below passes at every stake: ${surface}.`,
});

/** A condition that is no step and no surface. Internal. */
export const condition = (code: WorkCondition['code'], note: string): WorkCondition => ({
  code,
  step: null,
  surface: null,
  note,
});

/** A surface below each string of a pavement. Internal. */
export const heightsOf = (
  { plan }: StepBasis,
  pavement: PavementPlan,
  wanted: string,
): WorkHeight[] =>
  plan.stringLines
    .filter((line) => line.pavement === pavement.id)
    .flatMap(({ id, surfaces }) =>
      surfaces
        .filter(({ surface }) => surface === wanted)
        .map(({ surface, placedBelowString, belowString }) => ({
          string: id,
          surface,
          placed: placedBelowString,
          finished: belowString,
        })),
    );

/** The same where nothing is placed any more. Internal. */
export const finishedHeightsOf = (...given: Parameters<typeof heightsOf>): WorkHeight[] =>
  heightsOf(...given).map((height) => ({ ...height, placed: null }));

/** The line of the order list for a material, counted from 1; null for none. Internal. */
export function orderLineOf(
  { list }: StepBasis,
  kind: MaterialKind,
  material: string | null,
): number | null {
  const index = list.lines.findIndex((line) => line.kind === kind && line.material === material);
  return index < 0 ? null : index + 1;
}
