import type { CheckedStake, NextStep, SurfaceCheck } from '../check/check-job.js';
import type { SurfaceKind } from '../plan/surfaces.js';
import { unitsOfSheet, type SheetSystem, type SheetUnits } from './units-of-sheet.js';

/**
 * What to do at a stake of a checked surface, in the words of the trade.
 *
 * @param stake - of a {@link SurfaceCheck}
 * @param options.kind - what was checked: `subgrade`, `lift`, `sub-base`, `base`, `bedding`, `pavers`
 * @param options.system - `us` or `metric`
 * @returns for instance `7/8 in high: cut 7/8 in and compact`; `within tolerance` where it passes
 * @example
 * const { surfaces } = checkJob(planJob(job), {
 *   readings: [{ stake: 'K1', surface: 'base top', belowString: '22 7/8 in' }],
 *   tolerances: { base: { over: '3/8 in', under: '3/8 in' } },
 * });
 * const stake = surfaces[0]?.stakes[0];
 * stake && describeStakeAction(stake, { kind: 'base', system: 'us' })
 * //=> '5/8 in low: loosen the top, spread 13/16 in of loose stone and compact'
 */
export function describeStakeAction(
  stake: CheckedStake,
  options: { readonly kind: SurfaceKind; readonly system: SheetSystem },
): string {
  const units = unitsOfSheet(options.system);
  if (stake.verdict === 'pass') return 'within tolerance';
  if (stake.verdict === 'unclear' || stake.move === null) {
    return 'too close to the limit to tell: measure again, more closely';
  }
  const by = units.depthWithUnit(stake.value.abs());
  const off = `${by} ${stake.value.isNegative() ? 'low' : 'high'}`;
  return `${off}: ${actionWords(stake, options.kind, units)}`;
}

function actionWords(stake: CheckedStake, kind: SurfaceKind, units: SheetUnits): string {
  const isHigh = !stake.value.isNegative();
  const by = units.depthWithUnit(stake.value.abs());
  const loose = units.depthWithUnit(stake.looseToAdd ?? stake.value.abs());
  switch (kind) {
    case 'subgrade':
      return isHigh
        ? `cut ${by} and compact`
        : `fill with base stone, ${loose} loose, and compact; never with soil`;
    case 'bedding':
      return isHigh ? `strike off ${by}` : `add sand and screed up ${by}`;
    case 'pavers':
      return isHigh
        ? `lift, take out ${by} of bedding, lay again and compact`
        : `lift, add ${by} of bedding, lay again and compact; if the bed gets too thick, mend the base`;
    default:
      return isHigh
        ? `take off ${by} and compact`
        : `loosen the top, spread ${loose} of loose stone and compact`;
  }
}

/**
 * The next step on a checked surface, in words.
 *
 * @param check - of a {@link SurfaceCheck}
 * @param options.system - `us` or `metric`
 * @returns for instance `Go on to base top: spread 6 7/16 in loose.`
 * @example
 * const readings = ['G1', 'G2', 'G3'].map((stake) => ({
 *   stake,
 *   surface: 'subgrade',
 *   belowString: '18 1/4 in',
 * }));
 * const tolerances = { subgrade: { over: '0 in', under: '3/4 in' } };
 * const { surfaces } = checkJob(planJob(job), { readings, tolerances });
 * surfaces[0] && describeNextStep(surfaces[0], { system: 'us' })
 * //=> 'Go on to base top: spread 6 7/16 in loose.'
 */
export function describeNextStep(
  check: Pick<SurfaceCheck, 'next'>,
  options: { readonly system: SheetSystem },
): string {
  const { step, stakes, surface, spread }: NextStep = check.next;
  const at = stakes.join(', ');
  switch (step) {
    case 'correct':
      return `Correct ${at}, then measure again. Do not cover this surface.`;
    case 'measure-again':
      return `Measure ${at} again, more closely, before you cover this surface.`;
    case 'measure-rest':
      return `Within tolerance so far. Measure ${at} too before you cover this surface.`;
    case 'go-on': {
      if (surface === null) return 'Within tolerance: this was the last surface.';
      const { depthWithUnit } = unitsOfSheet(options.system);
      const how = spread === null ? '' : `: spread ${depthWithUnit(spread)} loose`;
      return `Go on to ${surface}${how}.`;
    }
  }
}
