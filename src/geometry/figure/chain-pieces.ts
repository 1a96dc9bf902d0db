import { directionAt, type Bound } from './bound.js';
import type { Node, Piece } from './pieces.js';

interface Ground {
  readonly bounds: readonly Bound[];
  readonly nodes: readonly Node[];
}

/**
 * Joins pieces into closed lines. If several leave a node, the line takes the one farthest to the
 * left. A stretch that comes back to its node is a line of its own, so figures that touch at a corner
 * stay apart. Stretches of one edge are joined. Internal.
 *
 * @returns undefined if the pieces do not close
 */
export function chainPieces(pieces: readonly Piece[], ground: Ground): Piece[][] | undefined {
  const leaving = new Map<number, Piece[]>();
  for (const piece of pieces) {
    const list = leaving.get(piece.from);
    if (list === undefined) leaving.set(piece.from, [piece]);
    else list.push(piece);
  }
  const rings: Piece[][] = [];
  for (const start of pieces) {
    const path: Piece[] = [];
    let piece = take(leaving, start.from, undefined, ground);
    while (piece !== undefined) {
      path.push(piece);
      const { to } = piece;
      const back = path.findIndex(({ from }) => from === to);
      if (back >= 0) rings.push(joined(path.splice(back)));
      const last = path.at(-1);
      if (back >= 0 && last === undefined) break;
      piece = take(leaving, to, piece, ground);
      if (piece === undefined) return undefined;
    }
  }
  return rings;
}

/** Takes the piece that leaves a node farthest to the left of the arriving piece. */
function take(
  leaving: ReadonlyMap<number, Piece[]>,
  node: number,
  arriving: Piece | undefined,
  ground: Ground,
): Piece | undefined {
  const list = leaving.get(node) ?? [];
  let best = 0;
  for (let k = 1; k < list.length && arriving !== undefined; k += 1) {
    if (isFurtherLeft(arriving, [list[k], list[best]], ground)) best = k;
  }
  return list.splice(best, 1)[0];
}

/** Turns closer than this [rad] count as equal, and the curves decide. */
const SAME_TURN = 1e-9;

function isFurtherLeft(
  arriving: Piece,
  [one, other]: readonly [Piece | undefined, Piece | undefined],
  { bounds, nodes }: Ground,
): boolean {
  const node = nodes[arriving.to];
  const [from, a, b] = [arriving, one, other].map((piece) => {
    const bound = piece && bounds[piece.bound];
    return bound && node && directionAt(bound, node);
  });
  if (from === undefined || a === undefined || b === undefined) return false;
  const turnTo = ({ x, y }: { readonly x: number; readonly y: number }) =>
    Math.atan2(from.x * y - from.y * x, from.x * x + from.y * y);
  const more = turnTo(a) - turnTo(b);
  return Math.abs(more) > SAME_TURN ? more > 0 : a.turn > b.turn;
}

/** Joins pieces that follow each other on one edge. */
function joined(ring: readonly Piece[]): Piece[] {
  const first = ring.findIndex(({ bound }, index) => bound !== ring.at(index - 1)?.bound);
  const line: Piece[] = [];
  for (const piece of [...ring.slice(first), ...ring.slice(0, first)]) {
    const last = line.at(-1);
    if (last?.bound !== piece.bound) line.push(piece);
    else line[line.length - 1] = { ...last, to: piece.to, endShare: piece.endShare };
  }
  return line;
}
