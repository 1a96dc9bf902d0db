import { choice, flag, list, object, optional, quantity, text } from '../../input/field.js';
import { FALL, SITE_LENGTH } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { entry } from '../../invariant.js';
import { referenceQuantity } from '../../reference-quantity.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { ROUTE_LIMITS, type RouteEdition, type RouteLimits } from '../../sources/route-limits.js';
import { sum } from '../../units/aggregate.js';
import type { LengthInput, SlopeInput } from '../../units/construct.js';
import type { Length, Slope } from '../../units/quantity.js';
import { NO_LENGTH, NO_SLOPE } from '../../units/zero.js';
import type { Verdict } from '../../verdict.js';
import { formulaStep, given, withWorking, type Step, type Worked } from '../../working.js';

const EDITIONS = Object.keys(ROUTE_LIMITS) as [RouteEdition, ...RouteEdition[]];

/** A stretch of a route between two rests. */
export interface RouteSegmentInput {
  /** What the crew calls it. Each name once. */
  readonly name: string;
  /** Length in plan from rest to rest [length], more than 0 and at most 10 km. */
  readonly length: LengthInput;
  /** Running slope, up or down, without its sign [slope], 0 to 100%. */
  readonly slope: SlopeInput;
  /** Slope across the way of travel, without its sign [slope], 0 to 100%. Default: 0. */
  readonly crossSlope?: SlopeInput;
}

/** A route and the edition that it is held to. */
export interface CheckRouteOptions {
  /** Kind of route and edition: a name of `ROUTE_LIMITS`. */
  readonly edition: RouteEdition;
  /** Stretches from rest to rest, 1 to 10 000. */
  readonly segments: readonly RouteSegmentInput[];
  /** False for a surface that is not paved. Default: true; pavers are paved. */
  readonly isPaved?: boolean;
}

const SEGMENT = shapeOf<RouteSegmentInput>()({
  name: text(),
  length: quantity(SITE_LENGTH),
  slope: quantity(FALL),
  crossSlope: optional(quantity(FALL), NO_SLOPE),
});

const OPTIONS = shapeOf<CheckRouteOptions>()({
  edition: choice(EDITIONS),
  segments: list(object(SEGMENT), { of: 'segments', unique: 'name' }),
  isPaved: optional(flag, true),
});

/** What is wrong with a stretch of a route. */
export type RouteFault = 'too-steep' | 'too-long' | 'rises-too-far' | 'cross-slope';

/** A stretch of a route, judged. */
export interface CheckedSegment {
  /** What the crew calls it. */
  readonly name: string;
  /** Rise over the stretch. */
  readonly rise: Length;
  /** Maximum length between rests at this slope; null for no limit, or if the slope is not permitted. */
  readonly maximumLength: Length | null;
  /** `pass` or `fail`. */
  readonly verdict: Verdict;
  /** What is wrong; empty for a pass. */
  readonly faults: readonly RouteFault[];
  /** What to do about it, in words. */
  readonly notes: readonly string[];
}

/** A route, judged. */
export interface RouteCheck extends Cautioned, Worked {
  /** `pass` if every stretch passes, and the share of steep ones. */
  readonly verdict: Verdict;
  /** Every stretch. */
  readonly segments: readonly CheckedSegment[];
  /** Steepest running slope permitted. */
  readonly steepest: Slope;
  /** Maximum slope across. */
  readonly maximumCross: Slope;
  /** Share of the length that is steeper than 1:12. */
  readonly steepShare: number;
  /** Maximum of that share; null if the edition has none. */
  readonly maximumSteepShare: number | null;
}

/**
 * Checks the running slope of each stretch of a route against the length and the rise that an edition
 * permits between rests, its slope across, and the share of the route that is steeper than 1:12. A
 * stretch on the limit passes. Editions differ: the law and its authority say which one applies.
 *
 * @param options - see {@link CheckRouteOptions}
 * @returns verdict; each stretch with rise [length], maximum length [length] and faults; limits [slope]
 * @throws `DUPLICATE_ID`, `EMPTY_LIST`, `TOO_MANY`, `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading codes
 * @source route-slope
 * @source ramps-1991
 * @source outdoor-trails
 * @source outdoor-access-routes
 * @example
 * const walk = checkRoute({
 *   edition: 'trail',
 *   segments: [{ name: 'lower', length: '40 ft', slope: '9%' }],
 * });
 * walk.segments[0]?.faults.join() //=> 'too-long'
 * walk.segments[0]?.maximumLength?.to('ft').toString() //=> '30'
 */
export function checkRoute(options: CheckRouteOptions): RouteCheck {
  const read = readOptions(options, OPTIONS);
  const limits: RouteLimits = ROUTE_LIMITS[read.edition];
  const cross = read.isPaved ? limits.cross : (limits.crossUnpaved ?? limits.cross);
  const maximumCross = referenceQuantity('slope', cross);
  const segments = read.segments.map((one) => checkSegment(one, limits, maximumCross));
  const steepShare = steepShareOf(read.segments);
  const most = limits.steeperShare;
  const maximumSteepShare =
    most === null ? null : referenceQuantity('slope', most).toNumber('ratio');
  const isSteep = maximumSteepShare !== null && steepShare > maximumSteepShare;
  const passes = !isSteep && segments.every(({ verdict }) => verdict === 'pass');
  const found = {
    verdict: passes ? 'pass' : 'fail',
    segments,
    steepest: bandsOf(limits).at(-1)?.upTo ?? NO_SLOPE,
    maximumCross,
    steepShare,
    maximumSteepShare,
    cautions: cautionsFor('access'),
  } as const;
  return withWorking(found, () =>
    read.segments.map((one, k) => riseStep(one, entry(segments, k).rise, limits)),
  );
}

type Segment = Values<typeof SEGMENT>;

interface Band {
  readonly upTo: Slope;
  readonly length: Length | null;
  readonly rise: Length | null;
}

const bandsOf = ({ bands }: RouteLimits): readonly Band[] =>
  bands.map((band) => ({
    upTo: referenceQuantity('slope', band.upTo),
    length: band.length === null ? null : referenceQuantity('length', band.length),
    rise: band.rise === null ? null : referenceQuantity('length', band.rise),
  }));

function checkSegment(segment: Segment, limits: RouteLimits, maximumCross: Slope): CheckedSegment {
  const { name, length, slope, crossSlope } = segment;
  const rise = length.times(slope);
  const band = bandsOf(limits).find(({ upTo }) => slope.atMost(upTo));
  const maximumLength = band === undefined ? null : longest(band, slope);
  const faults: RouteFault[] = [];
  if (band === undefined) faults.push('too-steep');
  const most = band?.length ?? null;
  if (most !== null && length.greaterThan(most)) faults.push('too-long');
  const highest = band?.rise ?? null;
  if (highest !== null && rise.greaterThan(highest)) faults.push('rises-too-far');
  if (crossSlope.greaterThan(maximumCross)) faults.push('cross-slope');
  return {
    name,
    rise,
    maximumLength,
    verdict: faults.length === 0 ? 'pass' : 'fail',
    faults,
    notes: faults.map((fault) => NOTES[fault]),
  };
}

/** The length at which a stretch of this slope needs a rest. */
function longest({ length, rise }: Band, slope: Slope): Length | null {
  if (length !== null) return length;
  return rise === null || slope.isZero() ? null : rise.dividedBy(slope);
}

const NOTES: Readonly<Record<RouteFault, string>> = Object.freeze({
  'too-steep': 'The stretch is steeper than the edition permits. Lengthen the way up.',
  'too-long': 'The stretch is too long for its slope. Put in a level rest.',
  'rises-too-far': 'The stretch rises too far without a landing. Put one in.',
  'cross-slope':
    'The slope across is over the limit. Aim at 1.5%, so that building it stays within.',
});

/** Share of the length that is steeper than 1:12. */
function steepShareOf(segments: readonly Segment[]): number {
  const steep = segments.filter(({ slope }) => slope.greaterThan(ONE_IN_TWELVE()));
  const total = sum(segments.map(({ length }) => length));
  return sum([NO_LENGTH, ...steep.map(({ length }) => length)])
    .dividedBy(total)
    .toNumber();
}

const ONE_IN_TWELVE = (): Slope =>
  referenceQuantity(
    'slope',
    ROUTE_LIMITS['ramp-2010'].bands[0]?.upTo ?? ROUTE_LIMITS['ramp-2010'].cross,
  );

const riseStep = ({ name, length, slope }: Segment, rise: Length, limits: RouteLimits): Step =>
  formulaStep({
    title: `Rise of ${name}`,
    formula: 'h = l * s',
    given: [given('l', 'length', length), given('s', 'running slope', slope)],
    result: given('h', 'rise', rise),
    source: limits.bands[0]?.upTo.source ?? 'derived',
  });
