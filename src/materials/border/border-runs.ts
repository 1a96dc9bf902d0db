// A border is laid along the edges of an outline; `outline` reads them.
import { entry } from '../../invariant.js';
import { ringsOf, type Outline } from '../../outline/ring.js';
import { sum } from '../../units/aggregate.js';
import { exactOf, type Length } from '../../units/quantity.js';
import { wholeUp } from '../whole-number.js';
import type { BorderSide, MovedIn } from './border-geometry.js';

/** A stretch of border from corner to corner. */
export interface BorderRun {
  /** Its edges in order, as in `sides`: more than one where an edge goes on without a corner. */
  readonly edges: readonly number[];
  /** What its pavers have to reach: along the middle of the course, with mitred corners along its longer side. */
  readonly length: Length;
  /** Whole pavers. */
  readonly units: number;
}

/** What the pavers of a run are counted by. Internal. */
export interface RunCount {
  readonly pitch: Length;
  readonly lengthOf: (side: BorderSide) => Length;
}

/** The runs of a border: sides that go on into each other without a corner are one. Internal. */
export function runsOf(
  outline: Outline,
  { sides, moved }: { readonly sides: readonly BorderSide[]; readonly moved: MovedIn },
  { pitch, lengthOf }: RunCount,
): BorderRun[] {
  let first = 0;
  return ringsOf(outline).flatMap(({ points }) => {
    const [start, end] = [first, first + points.length];
    first = end;
    const own = sides.filter(({ edge }) => edge >= start && edge < end);
    return joined(own, { start, end, runsOn: (edge) => entry(moved.edges, edge).runsOn }).map(
      (run) => {
        const length = sum(run.map(lengthOf));
        const units = wholeUp(exactOf(length), exactOf(pitch));
        return { edges: run.map(({ edge }) => edge), length, units };
      },
    );
  });
}

interface RingOfSides {
  readonly start: number;
  readonly end: number;
  readonly runsOn: (edge: number) => boolean;
}

/** Sides of one ring put together; where the ring starts inside a run, the run is not cut there. */
function joined(sides: readonly BorderSide[], { start, end, runsOn }: RingOfSides): BorderSide[][] {
  const runs: BorderSide[][] = [];
  for (const side of sides) {
    const last = runs.at(-1);
    const isNext = last?.at(-1)?.edge === side.edge - 1;
    if (last !== undefined && isNext && runsOn(side.edge)) last.push(side);
    else runs.push([side]);
  }
  const [opening = [], closing = []] = [runs[0], runs.at(-1)];
  const isClosed = opening[0]?.edge === start && closing.at(-1)?.edge === end - 1;
  if (!isClosed || opening === closing || !runsOn(start)) return runs;
  return [[...closing, ...opening], ...runs.slice(1, -1)];
}
