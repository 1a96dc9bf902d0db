import { entry } from '../../../invariant.js';
import { fromSI, type Length } from '../../../units/quantity.js';
import { signOfRatio } from '../../../units/ratio.js';
import { between, cross, norm, type PlanPoint } from '../../../units/vector.js';
import { ringsOf, type Outline } from '../../../outline/ring.js';
import { columnTable, paragraph, subheading, type SheetLine } from '../layout/sheet-lines.js';
import { cornersOf, edgeNames } from './corners.js';
import type { Sheet } from '../layout/sheet-context.js';

/** Where the corners of a pavement are: in plan, and by tape from two stakes. Internal. */
export function cornerLines(pavement: string, outline: Outline, sheet: Sheet): SheetLine[] {
  const { units } = sheet;
  const corners = cornersOf(outline);
  const place = (name: 'x' | 'y') => corners.map((corner) => units.long(corner[name]));
  const ends = endStakes(pavement, sheet);
  const tapes = ends.map((stake) => ({
    head: ['from', stake.id] as const,
    cells: corners.map((corner) => units.long(apart(stake, corner))),
  }));
  const [from, to] = ends;
  const isSided = from !== undefined && to !== undefined;
  const sides = isSided
    ? [
        {
          head: ['side of', 'the line'] as const,
          cells: corners.map((corner) => sideOf(corner, from, to)),
          once: `corners, as you face from ${from.id} to ${to.id}`,
        },
      ]
    : [];
  return [
    ...subheading('Corners of the paving'),
    ...columnTable({ head: 'corner', cells: corners.map(({ name }) => name) }, [
      { head: 'x', cells: place('x') },
      { head: 'y', cells: place('y') },
      ...tapes,
      ...sides,
    ]),
    ...(isSided && new Set(sides[0]?.cells).size > 1
      ? paragraph(`Sides are as you face from ${from.id} to ${to.id}.`, '  ')
      : []),
    ...arcLines(outline, sheet),
  ];
}

interface EndStake extends PlanPoint {
  readonly id: string;
}

/** The first and the last stake of the first string of a pavement: fixed points to tape from. */
function endStakes(pavement: string, { job }: Sheet): EndStake[] {
  const ids = job.stringLines.find((line) => line.pavement === pavement)?.stakes ?? [];
  const ends = [ids[0], ids.at(-1)];
  return ends.flatMap((end) => job.stakes.find(({ id }) => id === end) ?? []);
}

const apart = (from: PlanPoint, to: PlanPoint): Length => fromSI('length', norm(between(from, to)));

function sideOf(corner: PlanPoint, from: PlanPoint, to: PlanPoint): string {
  const side = signOfRatio(cross(between(from, to), between(from, corner)));
  return side === 0 ? 'on it' : side > 0 ? 'left' : 'right';
}

/** Edges that are arcs, by what the middle of the arc lies off the chord. */
function arcLines(outline: Outline, { units }: Sheet): SheetLine[] {
  const names = edgeNames(outline);
  const bulges = ringsOf(outline).flatMap(({ points, bulges: own }) =>
    points.map((_, index) => own?.[index]),
  );
  return bulges.flatMap((bulge, edge) => {
    if (bulge === undefined) return [];
    const height = fromSI('length', bulge);
    const way = height.isNegative() ? 'into' : 'out of';
    const text = `Edge ${entry(names, edge)} is an arc: its middle is ${units.depthWithUnit(height.abs())} ${way} the paving from the straight line.`;
    return paragraph(text, '  ');
  });
}
