import { entry } from '../../invariant.js';
import { length } from '../../units/construct.js';
import type { LaidOut } from '../plan/lay-out.js';
import type { PlanWarning, StringLinePlan } from '../plan/plan.js';
import type { StakesById } from '../plan/stake-grounds.js';
import type { ExistingAt } from './existing-surface.js';
import { lengthFigure, placeFrom, slopeFigure, type Place } from './figures.js';
import { warning } from './warning.js';

/**
 * Two accounts of the same ground may differ by so much: it is rough, and rods sink in. Common practice,
 * no source.
 */
const SAME_GROUND = /* #__PURE__ */ length(50, 'mm');

const nameOf = ({ pavement }: LaidOut): string => pavement.name ?? pavement.id;

/** Ground at stakes that is not where the spot heights have it. Internal. */
export function groundWarnings(
  laid: readonly LaidOut[],
  existingAt: ExistingAt | null,
): PlanWarning[] {
  if (existingAt === null) return [];
  const found = new Map<string, PlanWarning>();
  for (const { id, spot } of laid.flatMap(({ measured }) => measured.flat())) {
    const shown = spot === null ? null : existingAt(spot);
    if (spot === null || shown === null || found.has(id)) continue;
    const off = spot.z.minus(shown);
    if (off.abs().compare(SAME_GROUND) <= 0) continue;
    const values = {
      off: off.abs(),
      side: off.isNegative() ? 'below' : 'above',
      ground: spot.z,
      shown,
    };
    found.set(id, warning('GROUND_DIFFERS', `stake ${id}`, values));
  }
  return [...found.values()];
}

/** Ground as measured, against what the job says of the existing surface. Internal. */
export function existingWarnings(laid: LaidOut): PlanWarning[] {
  const { pavement, dig, stack } = laid;
  const declared = pavement.existingAboveFinish;
  if (declared === undefined || dig.basis === 'uniform') return [];
  const shown = dig.depth.minus(stack.total);
  const off = shown.minus(declared);
  if (off.abs().compare(SAME_GROUND) <= 0) return [];
  const side = (above: typeof shown) => (above.isNegative() ? 'below' : 'above');
  return [
    warning('EXISTING_DIFFERS', nameOf(laid), {
      declared: declared.abs(),
      declaredSide: side(declared),
      shown: lengthFigure(shown.abs().toNumber('m')),
      shownSide: side(shown),
    }),
  ];
}

/** Cross slopes may differ by so much: levels are rounded. */
const SAME_FALL = 0.0025;
/** And the levels behind them by so much [metres]. */
const SAME_LEVEL = 0.005;
/** Of a long string no more stakes than these are compared. */
const MOST_COMPARED = 200;

/** A declared cross slope that the finished grades at the strings on both sides do not have. Internal. */
export function crossSlopeWarnings(
  laid: LaidOut,
  lines: readonly StringLinePlan[],
  stakes: StakesById,
): PlanWarning[] {
  const { crossSlope, outline } = laid.pavement;
  if (crossSlope === undefined || lines.length < 2) return [];
  const declared = Math.abs(crossSlope.toNumber('ratio'));
  const strings = lines.map((line) =>
    line.stakes.flatMap(({ id, finishElevation }): Known[] => {
      const stake = stakes.get(id);
      if (stake === undefined || finishElevation === null) return [];
      const z = finishElevation.toNumber('m');
      return [{ id, ...placeFrom(outline.origin, stake), z }];
    }),
  );
  const found = strings.flatMap((from, index) =>
    strings.slice(index + 1).flatMap((to) => acrossStrings(from, to)),
  );
  const worst = found
    .map((one) => ({ off: Math.abs(one.slope - declared), ...one }))
    .filter(({ off, run }) => off > SAME_FALL && off * run > SAME_LEVEL)
    .sort((a, b) => b.off - a.off)[0];
  if (worst === undefined) return [];
  const { stake, from, to, slope } = worst;
  const values = { declared: crossSlope.abs(), shown: slopeFigure(slope), stake, from, to };
  return [warning('CROSS_SLOPE_DIFFERS', nameOf(laid), values)];
}

interface Known extends Place {
  readonly id: string;
  readonly z: number;
}

interface Across {
  /** From this stake, square to its string, to the other string between these two. */
  readonly stake: string;
  readonly from: string;
  readonly to: string;
  /** Without its sign. */
  readonly slope: number;
  readonly run: number;
}

/** Slopes from the stakes of one string to the spans of another that lie square across from them. */
function acrossStrings(one: readonly Known[], other: readonly Known[]): Across[] {
  const every = Math.max(1, Math.ceil(one.length / MOST_COMPARED));
  return one
    .filter((_, index) => index % every === 0)
    .flatMap((stake) => {
      const found = other
        .slice(1)
        .map((to, index) => acrossTo(stake, entry(other, index), to))
        .find((across) => across !== null);
      return found === undefined || found === null ? [] : [found];
    });
}

/** A hair: a stake that is square across from a stake may be off by it, as a share of the span. */
const HAIR = 1e-3;
/** Strings nearer than this [metres] are not on two sides. */
const LEAST_WIDTH = 0.5;

function acrossTo(stake: Known, from: Known, to: Known): Across | null {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const share = ((stake.x - from.x) * x + (stake.y - from.y) * y) / (x * x + y * y);
  if (share < -HAIR || share > 1 + HAIR) return null;
  const run = Math.hypot(stake.x - from.x - x * share, stake.y - from.y - y * share);
  if (run < LEAST_WIDTH) return null;
  const slope = Math.abs(from.z + (to.z - from.z) * share - stake.z) / run;
  return { stake: stake.id, from: from.id, to: to.id, slope, run };
}
