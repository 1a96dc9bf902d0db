import type { Length } from '../units/quantity.js';
import type { EdgePath } from './edge-path.js';
import type { GradeLine } from './grade-line.js';

/** Why a stake is needed, the most important reason first. */
const KINDS = [
  'start',
  'end',
  'turn',
  'high-point',
  'low-point',
  'grade-break',
  'fixed-level',
  'named',
  'spacing',
] as const;

/** Why a stake is needed. */
export type StakeReasonKind = (typeof KINDS)[number];

/** A reason for a stake. */
export interface StakeReason {
  /** Code of the reason. */
  readonly kind: StakeReasonKind;
  /** The reason in words: `high point`, or the words given for a named place. */
  readonly text: string;
  /** The station that needs the stake; a merged stake may be slightly off it. */
  readonly station: Length;
}

/** A station that needs a stake. Internal. */
export interface Anchor {
  /** Distance along the edge. */
  readonly station: Length;
  /** Why it needs one, the most important reason first. */
  readonly reasons: readonly StakeReason[];
}

/** Reasons for stakes at the turns of an edge. Internal. */
export const turnReasons = (edge: EdgePath): StakeReason[] =>
  edge.corners.map(({ station, turn }) => ({ kind: 'turn', text: `turns ${turn}`, station }));

/** Reasons for stakes at the breaks and the other levels of a grade line. Internal. */
export function levelReasons(line: GradeLine): StakeReason[] {
  const breaks = line.breaks.map(({ station, kind, turns }): StakeReason => {
    if (!turns) return { kind: 'grade-break', text: `grade break (${kind})`, station };
    return kind === 'crest'
      ? { kind: 'high-point', text: 'high point', station }
      : { kind: 'low-point', text: 'low point', station };
  });
  const atBreaks = new Set(line.breaks.map(({ station }) => station));
  const others = line.points.filter(({ station }) => !atBreaks.has(station));
  return [
    ...breaks,
    ...others.map(({ station }): StakeReason => ({
      kind: 'fixed-level',
      text: 'fixed level',
      station,
    })),
  ];
}

/**
 * Stations in order; those no farther apart than a distance become one, at the most important.
 * Internal.
 */
export function anchorsOf(reasons: readonly StakeReason[], mergeWithin: Length): Anchor[] {
  const groups: { weightiest: StakeReason; readonly reasons: StakeReason[] }[] = [];
  for (const reason of [...reasons].sort(byStation)) {
    const group = groups.at(-1);
    if (group === undefined || !isNear(reason, group.weightiest, mergeWithin)) {
      groups.push({ weightiest: reason, reasons: [reason] });
      continue;
    }
    group.reasons.push(reason);
    if (weight(reason) < weight(group.weightiest)) group.weightiest = reason;
  }
  return groups.map((group) => ({
    station: group.weightiest.station,
    reasons: group.reasons.sort((a, b) => weight(a) - weight(b)),
  }));
}

const isNear = (reason: StakeReason, to: StakeReason, within: Length): boolean =>
  reason.station.minus(to.station).compare(within) <= 0;

/** In order of stations, the most important reason first. */
function byStation(a: StakeReason, b: StakeReason): number {
  const order = a.station.compare(b.station);
  return order === 0 ? weight(a) - weight(b) : order;
}

const weight = ({ kind }: StakeReason): number => KINDS.indexOf(kind);
