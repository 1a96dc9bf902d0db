import type { UnitSystem } from 'settline/units';

/** What the page keeps between visits, on this device alone. */
export interface KeptJob {
  readonly text: string;
  readonly readings: string;
  readonly system: UnitSystem;
}

const KEY = 'settline-job';
/** Name of the state of a job in a link. */
export const LINK_NAME = 'job';

/** What was kept; undefined where there is nothing, or the browser keeps nothing. */
export function keptJob(): KeptJob | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    return isKept(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps the job; a browser that keeps nothing is no fault. */
export function keepJob(job: KeptJob): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(job));
  } catch {
    // private windows and full stores: the page works without
  }
}

function isKept(kept: unknown): kept is KeptJob {
  if (typeof kept !== 'object' || kept === null) return false;
  const { text, readings, system } = kept as Partial<Record<keyof KeptJob, unknown>>;
  return (
    typeof text === 'string' &&
    typeof readings === 'string' &&
    (system === 'us' || system === 'metric')
  );
}
