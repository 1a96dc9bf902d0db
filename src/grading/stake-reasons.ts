import type { Length } from '../units/quantity.js';
import type { EdgePath } from './edge-path.js';
import type { GradeLine } from './grade-line.js';

/** Why a stake must stand somewhere, the weightiest reason first. Internal. */
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

/** Why a stake must stand somewhere. */
export type StakeReasonKind = (typeof KINDS)[number];

/** A reason for a stake in words, and the station that it holds for. */
export interface StakeReason {
  readonly kind: StakeReasonKind;
  readonly text: string;
  readonly station: Length;
}

/** A station that needs a stake. Internal. */
export interface Anchor {
  readonly station: Length;
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
  const others = line.points.filter(
    ({ station }) => !breaks.some((one) => one.station.equals(station)),
  );
  return [
    ...breaks,
    ...others.map(({ station }): StakeReason => ({
      kind: 'fixed-level',
      text: 'fixed level',
      station,
    })),
  ];
}

/** Stations in order; those no further apart than a distance become one, at the weightiest. Internal. */
export function anchorsOf(reasons: readonly StakeReason[], mergeWithin: Length): Anchor[] {
  const inOrder = [...reasons].sort(byStation);
  const anchors: Anchor[] = [];
  for (const reason of inOrder) {
    const last = anchors.at(-1);
    const isNear =
      last !== undefined && reason.station.minus(last.station).compare(mergeWithin) <= 0;
    if (!isNear) {
      anchors.push({ station: reason.station, reasons: [reason] });
      continue;
    }
    const joined = [...last.reasons, reason].sort((a, b) => weight(a) - weight(b));
    anchors[anchors.length - 1] = { station: joined[0]?.station ?? last.station, reasons: joined };
  }
  return anchors;
}

/** In order of stations, the weightiest reason first. */
function byStation(a: StakeReason, b: StakeReason): number {
  const order = a.station.compare(b.station);
  return order === 0 ? weight(a) - weight(b) : order;
}

const weight = ({ kind }: StakeReason): number => KINDS.indexOf(kind);
