import { wholeNumberUp } from '../../units/format-quantity.js';
import type { Volume } from '../../units/quantity.js';
import { NO_VOLUME } from '../../units/zero.js';
import type { StreamPlan } from '../plan/plan.js';
import type { WorkLoads } from './work-step.js';

/** Counts the loads of a stream as its steps take them, one after the other. Internal. */
export type LoadCounter = (stream: StreamPlan | undefined, loose: Volume) => WorkLoads | null;

/**
 * Starts counting. Steps take what they need from where the step before left off, so one load may
 * serve two steps: it comes for the first of them. Internal.
 */
export function loadCounter(): LoadCounter {
  const taken = new Map<StreamPlan, Volume>();
  return (stream, loose) => {
    if (stream === undefined || loose.isZero()) return null;
    const full = stream.loads.perLoad.volume;
    const start = taken.get(stream) ?? NO_VOLUME;
    const end = start.plus(loose);
    taken.set(stream, end);
    const come = wholeNumberUp(start, full);
    const last = wholeNumberUp(end, full);
    const isShared = !full.times(come).equals(start);
    return {
      first: isShared ? come : come + 1,
      last,
      count: last - come,
      of: stream.loads.count,
    };
  };
}
