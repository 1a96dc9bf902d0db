import { length } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { roundTo } from '../../units/rounding.js';
import type { Sheet } from './sheet-context.js';

const STEPS = { us: '1/4 in', metric: '5 mm' } as const;

/** The step that set-outs are rounded up to: that of the job, else 1/4 in or 5 mm. Internal. */
export const setOutStep = ({ job, system }: Pick<Sheet, 'job' | 'system'>): Length =>
  job.setOutStep ?? length(STEPS[system]);

/** A set-out as it is marked: rounded up, so that nothing comes out too narrow. Internal. */
export function setOutText(distance: Length, sheet: Sheet): string {
  return sheet.units.depthUp(roundTo(distance, setOutStep(sheet), 'up'));
}
