import type { Block } from '../block/block.js';

/** Every block, loaded when a page shows it. */
export const BLOCKS = {
  'allowable-esals': () => import('./allowable-esals.js'),
  'as-built': () => import('./as-built.js'),
  'base-extension': () => import('./base-extension.js'),
  'base-order': () => import('./base-order.js'),
  'base-rules': () => import('./base-rules.js'),
  'check-slope': () => import('./check-slope.js'),
  'check-square': () => import('./check-square.js'),
  'curve-offsets': () => import('./curve-offsets.js'),
  'excavation-depth': () => import('./excavation-depth.js'),
  'excavation-gates': () => import('./excavation-gates.js'),
  'fit-line': () => import('./fit-line.js'),
  'frost-depth': () => import('./frost-depth.js'),
  'grade-line': () => import('./grade-line.js'),
  'level-check': () => import('./level-check.js'),
  'lift-water': () => import('./lift-water.js'),
  lifts: () => import('./lifts.js'),
  loads: () => import('./loads.js'),
  'minimum-build-up': () => import('./minimum-build-up.js'),
  'old-paving': () => import('./old-paving.js'),
  'outline-area': () => import('./outline-area.js'),
  'plate-time': () => import('./plate-time.js'),
  'queued-jobs': () => import('./queued-jobs.js'),
  'rod-targets': () => import('./rod-targets.js'),
  'root-zone': () => import('./root-zone.js'),
  'saved-plan': () => import('./saved-plan.js'),
  'site-drawing': () => import('./site-drawing.js'),
  'site-steps': () => import('./site-steps.js'),
  'site-volumes': () => import('./site-volumes.js'),
  'soil-phases': () => import('./soil-phases.js'),
  'soil-states': () => import('./soil-states.js'),
  'stake-line': () => import('./stake-line.js'),
  'string-depths': () => import('./string-depths.js'),
  'survey-feet': () => import('./survey-feet.js'),
  'unit-count': () => import('./unit-count.js'),
  'units-reading': () => import('./units-reading.js'),
  'utility-cover': () => import('./utility-cover.js'),
  'widen-outline': () => import('./widen-outline.js'),
} satisfies Readonly<Record<string, () => Promise<{ readonly block: Block }>>>;

/** Name of a block. */
export type BlockName = keyof typeof BLOCKS;

/** True for the name of a block. */
export const isBlockName = (name: string): name is BlockName => Object.hasOwn(BLOCKS, name);
