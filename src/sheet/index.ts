export { readPlan } from '../job/saved/read-plan.js';
export { renderJobSheet } from '../job/sheet/render-job-sheet.js';
export { renderWorkSteps } from '../job/sheet/sections/steps-section.js';
export { renderWorking, type RenderWorkingOptions } from '../job/sheet/render-working.js';
export type { SubjectStep } from '../job/sheet/is-steps.js';
export type { JobSheetOptions } from '../job/sheet/layout/sheet-options.js';
export type { SheetSystem } from '../job/sheet/layout/lengths-of-sheet.js';
export type { JobPlan } from '../job/plan/plan.js';
