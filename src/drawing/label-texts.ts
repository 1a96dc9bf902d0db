import { DIG_TEXTS } from './dig/dig-texts.js';
import { GROUND_TEXTS } from './ground/ground-texts.js';
import { LAYER_CHECK_TEXTS } from './layer-check/layer-check-texts.js';
import { PLAN_TEXTS } from './plan/plan-texts.js';
import { SECTION_TEXTS } from './section/section-texts.js';
import { ROW_TEXTS } from './stake-row/row-texts.js';
import { STEPS_TEXTS } from './steps/steps-texts.js';
import { STRAIGHTEDGE_TEXTS } from './straightedge/straightedge-texts.js';

/** The English text of each label; `{name}` stands for a value. */
export const DRAWING_TEXTS = {
  ...SECTION_TEXTS,
  ...PLAN_TEXTS,
  ...DIG_TEXTS,
  ...ROW_TEXTS,
  ...STRAIGHTEDGE_TEXTS,
  ...LAYER_CHECK_TEXTS,
  ...STEPS_TEXTS,
  ...GROUND_TEXTS,
} as const;

/** The name of a label: an app translates by it. */
export type DrawingLabelKey = keyof typeof DRAWING_TEXTS;
