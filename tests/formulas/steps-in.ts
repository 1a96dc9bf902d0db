import type { Step } from 'settline';

/** Every step of working in a result and in the results that it holds. */
export function stepsIn(result: unknown, seen = new Set<unknown>()): Step[] {
  if (typeof result !== 'object' || result === null || seen.has(result)) return [];
  seen.add(result);
  const own = (result as { working?: unknown }).working;
  const parts = Object.values(result).flatMap((part) => stepsIn(part, seen));
  return Array.isArray(own) ? [...(own as Step[]), ...parts] : parts;
}
