import { makeReader, type Reader } from '../input/reader.js';
import { max } from '../units/aggregate.js';
import { length, type LengthInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { edgePath, type EdgePath } from './edge-path.js';
import type { GradeLine } from './grade-line.js';
import { DISTANCE, MARGIN, STATION } from './limits.js';
import { readPath, type PlanPointInput } from './read-points.js';
import { requireGradeLine } from './require-grade-line.js';
import {
  anchorsOf,
  levelReasons,
  turnReasons,
  type Anchor,
  type StakeReason,
} from './stake-reasons.js';

/** A stake that is needed. */
export interface RequiredStake {
  readonly station: Length;
  readonly reasons: readonly StakeReason[];
  /** Distance to the next stake; the last one of a closed edge leads back to the first. */
  readonly toNext?: Length;
  /** Place in plan, where an edge was given. */
  readonly x?: Length;
  readonly y?: Length;
  /** Finished grade, where a grade line was given. */
  readonly elevation?: Length;
  /** True where the grade line had to be carried on beyond its ends. */
  readonly extrapolated?: boolean;
}

/** Where stakes must stand along an edge. */
export interface RequiredStakes extends Worked {
  readonly stakes: readonly RequiredStake[];
  readonly count: number;
  readonly longestGap: Length;
}

/** A place that the caller wants staked: a door jamb, a drain, a change of width. */
export interface NamedPlaceInput {
  readonly station: LengthInput;
  readonly reason: string;
}

/**
 * Lists the stakes that an edge needs: one at every end, turn, high or low point, grade break, fixed
 * level and named place, and as many between that no two stand further apart than `spacing`
 * (`n = ceil(gap / spacing)` equal parts). Each stake carries its reasons.
 *
 * @param options.path - the edge in plan, two or more points `{ x, y }` [length]; without it the
 *   stakes run along `line`
 * @param options.closed - true where the edge runs back to its first point, default false
 * @param options.line - from {@link gradeLine}; its stations are distances along the edge from its
 *   first point, and what it has beyond the edge needs no stake there
 * @param options.places - further places by `station` [length] and `reason`
 * @param options.spacing - greatest distance between stakes [length]
 * @param options.mergeWithin - places no further apart than this share a stake [length], which stands
 *   at the one that comes first in the list above; default 0
 * @returns stakes in order with station, reasons, place, finished grade and distance to the next
 *   [length]; their number and the longest gap [length]
 * @throws `REQUIRED`, `TOO_FEW_POINTS`, `POINTS_COINCIDE`, `OUT_OF_RANGE` (a place beyond the edge),
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
export function requiredStakes(options: {
  readonly path?: readonly PlanPointInput[];
  readonly closed?: boolean;
  readonly line?: GradeLine;
  readonly places?: readonly NamedPlaceInput[];
  readonly spacing: LengthInput;
  readonly mergeWithin?: LengthInput;
}): RequiredStakes {
  const { edge, line, closed, places, spacing, mergeWithin, span } = readOptions(options);
  const wanted: StakeReason[] = [
    { kind: 'start', text: 'start', station: span.from },
    ...(closed ? [] : [{ kind: 'end', text: 'end', station: span.to } as const]),
    ...(edge === undefined ? [] : turnReasons(edge)),
    ...(line === undefined ? [] : levelReasons(line)).filter(({ station }) =>
      isWithin(span, station),
    ),
    ...places,
  ];
  // on a closed edge the end is the start
  const placed = closed ? wanted.map((reason) => broughtRound(reason, span)) : wanted;
  const anchors = anchorsOf(placed, mergeWithin);
  const gaps = gapsBetween(closed ? [...anchors, { station: span.to, reasons: [] }] : anchors);
  const spaced = gaps.flatMap((gap) => filled(gap, spacing));
  const last = anchors.at(-1);
  const all = closed || last === undefined ? spaced : [...spaced, last];
  const stakes = all.map((stake) => described(stake, edge, line));
  const longestGap = max(spaced.map(({ toNext }) => toNext));
  return withWorking({ stakes, count: stakes.length, longestGap }, () => [
    {
      title: 'Stakes along the edge',
      formula: 'n = sum over gaps of ceil(gap / spacing), and the end',
      given: [
        given('spacing', 'greatest distance between stakes', spacing),
        given('N', 'stakes needed for other reasons', anchors.length),
      ],
      result: given('n', 'stakes', stakes.length),
      source: 'derived',
    },
  ]);
}

const MOST_STAKES = 10_000;
const NOTHING = length(0, 'm');

interface Span {
  readonly from: Length;
  readonly to: Length;
}

function readOptions(options: unknown) {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const closed = reader.flag(fields['closed'] ?? false, ['closed']);
  const hasPath = fields['path'] !== undefined;
  if (!hasPath && fields['line'] === undefined) {
    reader.fail('REQUIRED', ['path'], 'is missing: give the edge in plan, or a grade line');
  }
  if (closed && !hasPath) {
    reader.fail('REQUIRED', ['path'], 'is missing: only an edge in plan can be closed');
  }
  const points = hasPath ? readPath(reader, fields['path'], { path: ['path'], closed }) : [];
  const line =
    fields['line'] === undefined ? undefined : requireGradeLine(reader, fields['line'], ['line']);
  const spacing = reader.quantity('length', fields['spacing'], ['spacing'], DISTANCE);
  const within = fields['mergeWithin'] ?? NOTHING;
  const mergeWithin = reader.quantity('length', within, ['mergeWithin'], MARGIN);
  const places = readPlaces(reader, fields['places']);
  reader.finish();
  const edge = hasPath ? edgePath(points, closed) : undefined;
  const span = spanOf(edge, line);
  checkSpan(reader, span, places, spacing);
  reader.finish();
  return { edge, line, closed, places, spacing, mergeWithin, span };
}

function readPlaces(reader: Reader, value: unknown): StakeReason[] {
  if (value === undefined) return [];
  return reader.list(value, ['places']).map((item, k) => {
    const fields = reader.object(item, ['places', k]);
    const path = ['places', k, 'station'];
    return {
      kind: 'named',
      text: reader.text(fields['reason'], ['places', k, 'reason']),
      station: reader.quantity('length', fields['station'], path, STATION),
    };
  });
}

function spanOf(edge: EdgePath | undefined, line: GradeLine | undefined): Span {
  if (edge !== undefined) return { from: NOTHING, to: edge.length };
  const from = line?.points[0]?.station ?? NOTHING;
  return { from, to: line?.points.at(-1)?.station ?? NOTHING };
}

function checkSpan(reader: Reader, span: Span, places: readonly StakeReason[], spacing: Length) {
  places.forEach(({ station }, k) => {
    if (isWithin(span, station)) return;
    reader.fail('OUT_OF_RANGE', ['places', k, 'station'], 'lies beyond the edge');
  });
  if (wholeNumberUp(span.to.minus(span.from), spacing) > MOST_STAKES) {
    reader.fail('CAPACITY_EXCEEDED', ['spacing'], `makes more than ${MOST_STAKES} stakes`);
  }
}

const isWithin = ({ from, to }: Span, station: Length): boolean =>
  station.compare(from) >= 0 && station.compare(to) <= 0;

const broughtRound = (reason: StakeReason, { from, to }: Span): StakeReason =>
  reason.station.equals(to) ? { ...reason, station: from } : reason;

interface Gap {
  readonly start: Anchor;
  readonly size: Length;
}

const gapsBetween = (anchors: readonly Anchor[]): Gap[] =>
  anchors.slice(1).map(({ station }, k) => {
    const start = anchors[k] ?? { station, reasons: [] };
    return { start, size: station.minus(start.station) };
  });

/** The stake at the start of a gap and those that fill it. */
function filled({ start, size }: Gap, spacing: Length) {
  const parts = wholeNumberUp(size, spacing);
  const toNext = size.dividedBy(parts);
  return Array.from({ length: parts }, (_, k) => {
    if (k === 0) return { ...start, toNext };
    const station = start.station.plus(toNext.times(k));
    const reason: StakeReason = { kind: 'spacing', text: 'spacing', station };
    return { station, reasons: [reason], toNext };
  });
}

function described(
  stake: Anchor & { readonly toNext?: Length },
  edge: EdgePath | undefined,
  line: GradeLine | undefined,
): RequiredStake {
  const level = line?.at(stake.station);
  return {
    ...stake,
    ...edge?.pointAt(stake.station),
    ...(level === undefined
      ? {}
      : { elevation: level.elevation, extrapolated: level.extrapolated }),
  };
}
