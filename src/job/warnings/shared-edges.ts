import { isOutwardRight, toRight } from '../../outline/chords.js';
import { forEachEdge, ringsOf } from '../../outline/ring.js';
import { roughNumber } from '../../units/ratio.js';
import type { PlanPoint } from '../../units/vector.js';
import type { Pavement } from '../schema/layer-kinds.js';
import { placeFrom, type Place } from './figures.js';
import { roundOf, type Round } from './round-edge.js';
import type { SaidOfEdge } from './paving-edges.js';

/** Edges this near to each other run together [metres]; they share a stretch if it is longer. */
const NEAR = 0.001;
/** Float noise [metres]. */
const NOISE = 1e-9;

/** An edge of a pavement as it was drawn, in metres from one origin for all. */
interface DrawnEdge {
  readonly edge: number;
  readonly said: SaidOfEdge;
  readonly from: Place;
  readonly to: Place;
  /** Where it is an arc. */
  readonly round: Round | null;
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** An edge, and how far it runs along an edge of another pavement. Internal. */
export interface SharedEdge {
  readonly pavement: Pavement;
  readonly edge: number;
  readonly said: SaidOfEdge;
  readonly other: Pavement;
  readonly otherEdge: number;
  readonly otherSaid: SaidOfEdge;
  /** Length of the stretch in metres. */
  readonly stretch: number;
}

/** The stretches of edges that pavements share, each named from the first of the two. Internal. */
export function sharedEdges(pavements: readonly Pavement[]): SharedEdge[] {
  const [first] = pavements;
  if (first === undefined || pavements.length < 2) return [];
  const drawn = pavements.map((pavement) => {
    const edges = drawnEdges(pavement, first.outline.origin);
    return { pavement, edges, box: boxOf(edges) };
  });
  return drawn.flatMap((one, index) =>
    drawn
      .slice(index + 1)
      .filter((two) => isNear(one.box, two.box))
      .flatMap((two) => sharedBetween(one, two)),
  );
}

interface Drawn {
  readonly pavement: Pavement;
  readonly edges: readonly DrawnEdge[];
}

const sharedBetween = (one: Drawn, two: Drawn): SharedEdge[] =>
  one.edges.flatMap((a) =>
    two.edges.flatMap((b): SharedEdge[] => {
      const stretch = isNear(a, b) ? stretchOf(a, b) : 0;
      if (stretch <= NEAR + NOISE) return [];
      return [
        {
          pavement: one.pavement,
          edge: a.edge,
          said: a.said,
          other: two.pavement,
          otherEdge: b.edge,
          otherSaid: b.said,
          stretch,
        },
      ];
    }),
  );

type Box = Pick<DrawnEdge, 'west' | 'east' | 'south' | 'north'>;

const isNear = (a: Box, b: Box): boolean =>
  a.west <= b.east + NEAR &&
  b.west <= a.east + NEAR &&
  a.south <= b.north + NEAR &&
  b.south <= a.north + NEAR;

const boxOf = (boxes: readonly Box[]): Box => ({
  west: Math.min(...boxes.map(({ west }) => west)),
  east: Math.max(...boxes.map(({ east }) => east)),
  south: Math.min(...boxes.map(({ south }) => south)),
  north: Math.max(...boxes.map(({ north }) => north)),
});

function drawnEdges({ outline, edges }: Pavement, origin: PlanPoint): DrawnEdge[] {
  const base = placeFrom(origin, outline.origin);
  const drawn: DrawnEdge[] = [];
  ringsOf(outline).forEach((ring, index) => {
    const isRight = isOutwardRight(ring, index > 0);
    forEachEdge(ring.points, (a, b, k) => {
      const from = { x: base.x + roughNumber(a.x), y: base.y + roughNumber(a.y) };
      const to = { x: base.x + roughNumber(b.x), y: base.y + roughNumber(b.y) };
      const bulge = ring.bulges?.[k];
      const round = bulge === undefined ? null : roundOf(from, to, toRight(bulge, isRight));
      const number = drawn.length;
      const said = edges?.[number] ?? null;
      drawn.push({ edge: number + 1, said, from, to, round, ...boxRound(from, to, round) });
    });
  });
  return drawn;
}

function boxRound(from: Place, to: Place, round: Round | null): Box {
  if (round === null) {
    const [west, east] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
    return { west, east, south: Math.min(from.y, to.y), north: Math.max(from.y, to.y) };
  }
  const { centre, radius } = round;
  const [west, east] = [centre.x - radius, centre.x + radius];
  return { west, east, south: centre.y - radius, north: centre.y + radius };
}

function stretchOf(a: DrawnEdge, b: DrawnEdge): number {
  if (a.round === null && b.round === null) return straightStretch(a, b);
  return a.round === null || b.round === null ? 0 : roundStretch(a.round, b.round);
}

function straightStretch({ from, to }: DrawnEdge, other: DrawnEdge): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const on = ({ x: px, y: py }: Place) => ({
    along: (px - from.x) * x + (py - from.y) * y,
    off: (py - from.y) * x - (px - from.x) * y,
  });
  const [c, d] = [on(other.from), on(other.to)];
  const run = d.along - c.along;
  if (run === 0) return 0;
  const low = Math.max(0, Math.min(c.along, d.along));
  const high = Math.min(length, Math.max(c.along, d.along));
  if (high <= low) return 0;
  // near at both ends of the stretch
  const isBeside = [low, high].every(
    (along) => Math.abs(c.off + ((d.off - c.off) * (along - c.along)) / run) <= NEAR + NOISE,
  );
  return isBeside ? high - low : 0;
}

function roundStretch(a: Round, b: Round): number {
  const away = Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y);
  if (away + Math.abs(a.radius - b.radius) > NEAR + NOISE) return 0;
  const [low, high] = spanOf(a);
  const [first, last] = spanOf(b);
  const turn = 2 * Math.PI;
  const common = [-turn, 0, turn, 2 * turn, -2 * turn].map(
    (by) => Math.min(high, last + by) - Math.max(low, first + by),
  );
  return Math.max(0, ...common) * a.radius;
}

const spanOf = ({ start, sweep }: Round): readonly [number, number] =>
  sweep < 0 ? [start + sweep, start] : [start, start + sweep];
