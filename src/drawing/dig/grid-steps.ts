import { lastOf } from '../../invariant.js';
import type { SheetSystem } from '../../job/sheet/layout/lengths-of-sheet.js';
import { length } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import type { Place } from '../plan/rings-in-metres.js';

const STEPS = {
  us: ['6 in', '1 ft', '2 ft', '5 ft', '10 ft', '20 ft', '50 ft', '100 ft', '200 ft', '500 ft'],
  metric: ['0.2 m', '0.5 m', '1 m', '2 m', '5 m', '10 m', '20 m', '50 m', '100 m', '200 m'],
} as const;

/** The smallest round step that is no less than so many metres. Internal. */
export function gridStep(system: SheetSystem, least: number): Length {
  const steps = STEPS[system].map((step) => length(step));
  const last = lastOf(steps);
  const found = steps.find((step) => step.toNumber('m') >= least);
  return found ?? last.times(Math.ceil(least / last.toNumber('m')));
}

/** Whole multiples of a step from one value to another [m]. Internal. */
export function multiples(step: Length, from: number, to: number): Length[] {
  const size = step.toNumber('m');
  const first = Math.ceil(from / size - 1e-9);
  const count = Math.max(0, Math.floor(to / size + 1e-9) - first + 1);
  return Array.from({ length: count }, (_, k) => step.times(first + k));
}

/** The places of a grid, row by row. Internal. */
export const gridPlaces = (xs: readonly Length[], ys: readonly Length[]): Place[] =>
  ys.flatMap((y) => xs.map((x): Place => [x.toNumber('m'), y.toNumber('m')]));
