import { entry, known, lastOf } from '../invariant.js';
import type { FieldPath } from '../errors.js';
import { flag, list, object, optional, quantity, text } from '../input/field.js';
import { DISTANCE, SET_BACK, STATION } from '../input/ranges.js';
import { makeReader, type Reader } from '../input/reader.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { max } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { edgePath, type EdgePath } from './edge-path.js';
import { levelAt, type GradeLine } from './grade-line.js';
import { checkClosed, edgePoints, openEnd, type PlanPointInput } from './read-points.js';
import { workedLine } from './require-grade-line.js';
import { gapsOf, spacedStakes, type SpacedStake } from './spaced-stakes.js';
import {
  anchorsOf,
  levelReasons,
  turnReasons,
  type Anchor,
  type StakeReason,
} from './stake-reasons.js';

/** A place that needs its own stake: a door jamb, a drain, a change of width. */
export interface NamedPlaceInput {
  /** Distance along the edge [length], between its ends. */
  readonly station: LengthInput;
  /** What is there, in your words. */
  readonly reason: string;
}

/** An edge, and where it needs stakes. */
export interface RequiredStakesOptions {
  /**
   * The edge in plan, 2 to 10 000 points in order, at least 3 if it is closed. Default: none; the
   * stakes follow `line`.
   */
  readonly path?: readonly PlanPointInput[];
  /** True if the edge runs back to its first point. Default: false. */
  readonly closed?: boolean;
  /**
   * Grade line of the edge, from {@link gradeLine}; its stations are distances along the edge.
   * Points past the edge need no stake. Default: none, if `path` is given.
   */
  readonly line?: GradeLine;
  /** Further places that need a stake, up to 10 000. Default: none. */
  readonly places?: readonly NamedPlaceInput[];
  /** Maximum distance between stakes [length], more than 0 and at most 100 km. */
  readonly spacing: LengthInput;
  /**
   * Places no farther apart than this share a stake [length], 0 to 100 m. It is set at the most
   * important of them: ends first, then turns, high and low points, breaks, levels, named places.
   * Default: 0.
   */
  readonly mergeWithin?: LengthInput;
}

const PLACE = shapeOf<NamedPlaceInput>()({ station: quantity(STATION), reason: text() });

const OPTIONS = shapeOf<RequiredStakesOptions>()({
  path: optional(edgePoints),
  closed: optional(flag, false),
  line: optional(workedLine),
  places: optional(list(object(PLACE), { of: 'places', least: 0 }), []),
  spacing: quantity(DISTANCE),
  mergeWithin: optional(quantity(SET_BACK), NO_LENGTH),
});

/** A stake that is needed. */
export interface RequiredStake {
  /** Distance along the edge. */
  readonly station: Length;
  /** Why it is needed, the most important reason first. */
  readonly reasons: readonly StakeReason[];
  /**
   * Distance to the next stake. On a closed edge the last one counts to the first; else it is null.
   */
  readonly toNext: Length | null;
  /** Plan coordinate; null if no edge in plan is given. */
  readonly x: Length | null;
  /** Plan coordinate; null if no edge in plan is given. */
  readonly y: Length | null;
  /** Finished grade; null if no grade line is given. */
  readonly elevation: Length | null;
  /** True if the grade line is extended past its ends here. */
  readonly extrapolated: boolean;
}

/** The stakes that an edge needs. */
export interface RequiredStakes extends Worked {
  /** Stakes in order along the edge. */
  readonly stakes: readonly RequiredStake[];
  /** Number of stakes. */
  readonly count: number;
  /** Largest distance from one stake to the next. */
  readonly longestGap: Length;
}

/**
 * Lists the stakes that an edge needs: one at each end, turn, high or low point, grade break, fixed
 * level and named place, and enough between them that no two are farther apart than `spacing`:
 * `n = ceil(gap / spacing)` equal parts of each gap. Each stake lists its reasons.
 *
 * @param options - see {@link RequiredStakesOptions}
 * @returns stakes in order with station, reasons, plan coordinates, finished grade and distance to the
 *   next [length]; their number and the largest gap [length]
 * @throws `REQUIRED`, `TOO_FEW`, `POINTS_COINCIDE`, `OUT_OF_RANGE` (a place beyond the edge),
 *   `CAPACITY_EXCEEDED` (more than 10 000 stakes) and the reading codes
 * @source derived
 * @example
 * const line = gradeLine({
 *   points: [
 *     { station: '0 ft', elevation: '100 ft' },
 *     { station: '20 ft', elevation: '99.5 ft' },
 *     { station: '32 ft', elevation: '98.9 ft' },
 *   ],
 * });
 * const { stakes } = requiredStakes({ line, spacing: '10 ft' });
 * stakes.map(({ station }) => station.to('ft').toString()) //=> ['0', '10', '20', '26', '32']
 * stakes[2]?.reasons[0]?.text //=> 'grade break (crest)'
 */
export function requiredStakes(options: RequiredStakesOptions): RequiredStakes {
  const read = readOptions(options, OPTIONS, checkOptions);
  const { path, closed, line, spacing, mergeWithin } = read;
  const edge = path === undefined ? undefined : edgePath(openEnd(path, closed), closed);
  const span = spanOf(edge, line);
  checkPlaces(span, read.places);
  const reasons = reasonsFor({ edge, line, closed, span, places: read.places });
  const anchors = anchorsOf(reasons, mergeWithin);
  const spaced = spacedStakes(anchors, { spacing, end: closed ? span.to : undefined });
  const stakes = spaced.map((stake) => described(stake, edge, line));
  const longestGap = max(spaced.map(({ toNext }) => toNext ?? NO_LENGTH));
  return withWorking({ stakes, count: stakes.length, longestGap }, () => [
    countStep(stakes.length, { anchors, spacing, end: closed ? span.to : undefined }),
  ]);
}

/** The working of the number of stakes; an edge that ends has a stake at its end. */
function countStep(
  count: number,
  of: { anchors: readonly Anchor[]; spacing: Length; end: Length | undefined },
): Step {
  return derivedStep({
    title: 'Stakes along the edge',
    formula: of.end === undefined ? 'n = sum(ceil(d[i] / s)) + 1' : 'n = sum(ceil(d[i] / s))',
    given: [
      given('d', 'gaps between the stakes needed for other reasons', gapsOf(of.anchors, of.end)),
      given('s', 'maximum distance between stakes', of.spacing),
    ],
    result: given('n', 'stakes', count),
  });
}

function checkOptions(
  reader: Reader,
  { path: points, closed }: Partial<Values<typeof OPTIONS>>,
  path: FieldPath,
  raw: Readonly<Record<string, unknown>>,
): void {
  const at = [...path, 'path'];
  if (raw['path'] === undefined && closed === true) {
    reader.fail('REQUIRED', at, 'missing. Only an edge in plan can be closed');
  } else if (raw['path'] === undefined && raw['line'] === undefined) {
    reader.fail('REQUIRED', at, 'missing. Give the edge in plan, or a grade line');
  }
  checkClosed(reader, points, { closed, path: at });
}

interface Span {
  readonly from: Length;
  readonly to: Length;
}

function spanOf(edge: EdgePath | undefined, line: GradeLine | undefined): Span {
  if (edge !== undefined) return { from: NO_LENGTH, to: edge.length };
  const { points } = known(line, 'line of grade');
  return { from: entry(points, 0).station, to: lastOf(points).station };
}

type Place = Values<typeof PLACE>;

function checkPlaces(span: Span, places: readonly Place[]): void {
  const reader = makeReader();
  places.forEach(({ station }, k) => {
    if (isWithin(span, station)) return;
    const message = 'is past the ends of the edge. Check the station';
    reader.fail('OUT_OF_RANGE', ['places', k, 'station'], message);
  });
  reader.finish();
}

const isWithin = ({ from, to }: Span, station: Length): boolean =>
  station.compare(from) >= 0 && station.compare(to) <= 0;

interface Wanted {
  readonly edge: EdgePath | undefined;
  readonly line: GradeLine | undefined;
  readonly closed: boolean;
  readonly span: Span;
  readonly places: readonly Place[];
}

function reasonsFor({ edge, line, closed, span, places }: Wanted): StakeReason[] {
  const levels = line === undefined ? [] : levelReasons(line);
  const wanted: StakeReason[] = [
    { kind: 'start', text: 'start', station: span.from },
    ...(closed ? [] : [{ kind: 'end', text: 'end', station: span.to } as const]),
    ...(edge === undefined ? [] : turnReasons(edge)),
    ...levels.filter(({ station }) => isWithin(span, station)),
    ...places.map(({ station, reason }) => ({ kind: 'named', text: reason, station }) as const),
  ];
  // on a closed edge the end is the start
  return closed ? wanted.map((reason) => broughtRound(reason, span)) : wanted;
}

const broughtRound = (reason: StakeReason, { from, to }: Span): StakeReason =>
  reason.station.equals(to) ? { ...reason, station: from } : reason;

function described(
  { station, reasons, toNext }: SpacedStake,
  edge: EdgePath | undefined,
  line: GradeLine | undefined,
): RequiredStake {
  const { x, y } = edge?.pointAt(station) ?? { x: null, y: null };
  const level = line === undefined ? null : levelAt(line.segments, station);
  const { elevation, extrapolated } = level ?? { elevation: null, extrapolated: false };
  return { station, reasons, toNext, x, y, elevation, extrapolated };
}
