import {
  drawDig,
  drawPlan,
  drawProfile,
  drawSection,
  drawStakeRow,
  drawSteps,
  type DrawOptions,
} from 'settline/drawing';
import { planJob, workSteps, type JobPlan } from 'settline/job';
import { cedarCourtJob } from '../cedar-court.js';
import { heronYardJob } from '../heron-yard.js';
import { millGarthJob } from '../mill-garth.js';
import { slateWharfJob } from '../slate-wharf.js';

/** The plans of the built-in sites. */
export const PLANS: readonly JobPlan[] = [
  cedarCourtJob(),
  millGarthJob(),
  slateWharfJob(),
  heronYardJob(),
].map((job) => planJob(job));

/** Both systems and both layouts. */
export const STYLES: readonly DrawOptions[] = [
  { system: 'us' },
  { system: 'metric', theme: 'screen' },
  { system: 'us', narrow: true, theme: 'screen' },
  { system: 'metric', narrow: true },
];

/** Sections and profiles of a plan. */
export const drawingsOf = (plan: JobPlan, style: DrawOptions): string[] => [
  ...plan.pavements.map(({ id }) => drawSection(plan, { ...style, pavement: id })),
  ...plan.stringLines.map(({ id }) => drawProfile(plan, { ...style, string: id })),
];

/** Every drawing of a plan. */
export const allDrawingsOf = (plan: JobPlan, style: DrawOptions): string[] => [
  ...drawingsOf(plan, style),
  drawPlan(plan, style),
  ...plan.pavements.flatMap(({ id }) => [
    drawPlan(plan, { ...style, pavement: id, edgeRows: false }),
    drawDig(plan, { ...style, pavement: id }),
  ]),
  ...plan.stringLines.map((line) => drawStakeRow(line, style)),
  drawSteps(workSteps(plan), style),
];
