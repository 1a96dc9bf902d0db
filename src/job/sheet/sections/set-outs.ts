import { partOf } from '../../../units/part-of.js';
import type { Length } from '../../../units/quantity.js';
import { roundTo } from '../../../units/rounding.js';
import type { Sheet } from '../layout/sheet-context.js';
import type { SheetLengths, SheetSystem } from '../layout/lengths-of-sheet.js';

/** What set-outs are rounded up to where the job gives no step: 1/4 in or 5 mm. Internal. */
export const usualSetOutStep = (system: SheetSystem): Length =>
  system === 'us' ? partOf(1, 4, 'in') : partOf(5, 1, 'mm');

interface SetOutBasis extends Pick<Sheet, 'system'> {
  readonly job: Pick<Sheet['job'], 'setOutStep'>;
}

/** The step that set-outs are rounded up to: that of the job, else 1/4 in or 5 mm. Internal. */
export const setOutStep = ({ job, system }: SetOutBasis): Length =>
  job.setOutStep ?? usualSetOutStep(system);

/** A set-out as it is marked: rounded up, so that nothing comes out too narrow. Internal. */
export function setOutText(
  distance: Length,
  sheet: SetOutBasis & { readonly units: Pick<SheetLengths, 'depthUp'> },
): string {
  return sheet.units.depthUp(roundTo(distance, setOutStep(sheet), 'up'));
}
