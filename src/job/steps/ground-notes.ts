import type { WaterAction } from '../../ground/soil/lift-water.js';
import type { LiftGroundPlan } from '../plan/plan-of-ground.js';
import type { PavementPlan } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';

/** What frost and the storm mean for a subgrade. Internal. */
export function subgradeNotes({ ground: block }: ReadJob, { ground }: PavementPlan): string[] {
  if (ground === null) return [];
  const { frost, runoff } = ground;
  const inlet = block?.storm?.inlet;
  const freezes = frost !== null && !frost.intoSubgrade.isZero() && frost.group !== 'NFS';
  const floods = runoff !== null && inlet !== undefined && runoff.greaterThan(inlet);
  return [
    ...(freezes
      ? ['Frost goes into this subgrade. Give it a way to drain before stone covers it.']
      : []),
    ...(floods
      ? [
          'In the storm more runs off than the drain takes. Settle the drain before stone covers it.',
        ]
      : []),
  ];
}

const WATER_NOTES: Readonly<Record<WaterAction, string>> = {
  'add-water': 'Sprinkle the water over the loose lift and let it soak in before the plate.',
  'let-dry': 'The stone is too wet. Spread it and let it dry before the plate.',
  'compact-now': 'The moisture is right. Compact before it dries.',
};

/** What moisture and the method of compaction mean for a lift that gets these passes. Internal. */
export function liftNotes(own: LiftGroundPlan | null, passes: number | undefined): string[] {
  if (own === null) return [];
  const { action, verdict, passes: required } = own;
  return [
    ...(action === null ? [] : [WATER_NOTES[action]]),
    ...(verdict === 'fail'
      ? [
          'The method does not permit a lift this thick with this machine. Use thinner lifts or a heavier machine.',
        ]
      : []),
    ...(required !== null && passes !== undefined && passes < required
      ? [
          `The published method requires ${required} passes of this machine. Give fewer only if a trial strip showed that they are enough.`,
        ]
      : []),
  ];
}
