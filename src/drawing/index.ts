export { drawProfile, type DrawProfileOptions } from './profile/draw-profile.js';
export { drawSection, type DrawSectionOptions } from './section/draw-section.js';
export { DRAWING_TEXTS, type DrawingLabelKey } from './label-texts.js';
export type { DrawingLabel, DrawingLabelValues } from './draw-label.js';
export type { DrawOptions } from './draw-options.js';
export type { DrawTheme } from './frame/themes.js';
export { drawPlan, type DrawPlanOptions, type LineColour } from './plan/draw-plan.js';
export type { LocateColour } from './plan/nearby-part.js';
export {
  renderJobSheetHTML,
  type JobSheetHTMLOptions,
} from './sheet-page/render-job-sheet-html.js';
export type { SheetPaper } from './sheet-page/page-style.js';
export { drawDig, type DrawDigOptions } from './dig/draw-dig.js';
export { drawStakeRow, type DrawStakeRowOptions } from './stake-row/draw-stake-row.js';
export {
  drawStraightedge,
  type DrawStraightedgeOptions,
} from './straightedge/draw-straightedge.js';
export { drawLayerCheck, type DrawLayerCheckOptions } from './layer-check/draw-layer-check.js';
export { drawSteps, type DrawStepsOptions } from './steps/draw-steps.js';
export { drawFrostDepth, type DrawFrostDepthOptions } from './ground/draw-frost-depth.js';
export {
  drawMinimumBuildUp,
  type DrawMinimumBuildUpOptions,
} from './ground/draw-minimum-build-up.js';
export { drawSoilPhases, type DrawSoilPhasesOptions } from './ground/draw-soil-phases.js';
