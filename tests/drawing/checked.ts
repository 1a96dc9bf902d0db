// Checks to draw: of a surface of a site, of layers, under a straightedge.
import { checkFlatness, checkThickness, type FlatnessCheck } from 'settline/checks';
import { drawLayerCheck, drawStraightedge, type DrawOptions } from 'settline/drawing';
import { checkJob, planJob, type SurfaceCheck } from 'settline/job';
import { cedarCourtJob } from '../cedar-court.js';

/** A subgrade with a stake on grade, one high, one low, and some that nobody read. */
export function checkedSubgrade(): SurfaceCheck {
  const belowString = { K1: '36 3/4 in', K2: '35 7/8 in', K3: '37 3/4 in', F1: '42 1/2 in' };
  const [surface] = checkJob(planJob(cedarCourtJob()), {
    readings: Object.entries(belowString).map(([stake, below]) => ({
      stake,
      surface: 'subgrade',
      belowString: below,
    })),
    tolerances: { subgrade: { over: '1/2 in', under: '3/4 in' } },
  }).surfaces;
  if (surface === undefined) throw new Error('no surface');
  return surface;
}

/** A base along 30 ft, falling 1/4 in a foot, with two low spots. */
export const flatness = (dips: Readonly<Record<number, string>> = { 7: '13/16', 20: '1/2' }) =>
  checkFlatness({
    layer: 'base',
    tolerance: 'paver-guide-in',
    profile: Array.from({ length: 31 }, (_, k) => {
      const dip = dips[k];
      return { station: `${k} ft`, height: `${k / 4 - (dip === undefined ? 0 : inches(dip))} in` };
    }),
  }) satisfies FlatnessCheck;

function inches(fraction: string): number {
  const [over = 0, under = 1] = fraction.split('/').map(Number);
  return over / under;
}

/** A base that is thin at one spot. */
export const thickness = (ids: readonly string[] = ['a', 'b', 'c']) =>
  checkThickness({
    layer: 'base',
    design: '8 in',
    tolerance: { over: '1/2 in', under: '1/2 in' },
    readings: ids.map((id, k) => ({ id, thickness: k === 0 ? '7 in' : '8 1/4 in' })),
  });

/** Drawings of checks: passes and faults, hostile names, many readings. */
export const CHECK_DRAWINGS: readonly ((style: DrawOptions) => string)[] = [
  (style) => drawLayerCheck(checkedSubgrade(), style),
  (style) => drawLayerCheck(thickness(['<b>&"', 'w'.repeat(200), 'חצר \u202e12']), style),
  (style) => drawLayerCheck(thickness(Array.from({ length: 300 }, (_, k) => `r${k}`)), style),
  (style) => drawLayerCheck(flatness(), style),
  (style) => drawStraightedge(flatness(), style),
  (style) => drawStraightedge(flatness({}), style),
  (style) => drawStraightedge(flatness({ 3: '1/64' }), style),
  (style) => drawStraightedge(flatness({ 3: '900/1' }), style),
];
