import type { PlanPoint } from '../../units/vector.js';
import { element } from '../svg/element.js';
import { HAND_DIG, hatched } from '../frame/hatches.js';
import { line, polygon, polyline, type Point } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import { LOCATE_COLOURS } from '../../sources/locate-colours.js';
import { along, clipLine, isInside } from '../frame/box.js';
import { clipPolygon, clipRing } from './clip.js';
import { boxRound, joined, sidesOf, type PlanPart, type PlanPen, type Segment } from './parts.js';
import type { PlanScene } from './plan-scene.js';
import { inMetres } from './rings-in-metres.js';

/** A colour that marked lines are marked in. */
export type LocateColour = keyof typeof LOCATE_COLOURS;

/** The colours of lines by their ids. Internal. */
export type LineColours = ReadonlyMap<string, LocateColour>;

/** A marked line as it lies in the picture. */
interface Line {
  readonly id: string;
  readonly stretches: readonly Segment[];
  /** Half the width of the zone. */
  readonly reach: number;
}

const linesOf = ({ job }: PlanScene, { view }: PlanPen): Line[] =>
  (job.utilities ?? []).map(({ id, path, width, tolerance }) => ({
    id,
    stretches: sidesOf(path.map((place) => view.to(inMetres(place)))).slice(0, -1),
    reach: (width.toNumber('m') / 2 + tolerance.toNumber('m')) * view.pixelsPerMetre,
  }));

/** The zones of marked lines: strips extended by the zone past both ends of each stretch. Internal. */
export function zoneMarks(scene: PlanScene, pen: PlanPen): string[] {
  const zones = linesOf(scene, pen)
    .flatMap(({ stretches, reach }) => stretches.map((one) => stripRound(one, reach)))
    .map((strip) => clipPolygon(strip, pen.view.area))
    .filter((seen) => seen.length > 2);
  return [
    ...zones.map((zone) => polygon('open dimension', zone)),
    ...zones.map((zone) => hatched('bare', zone, HAND_DIG)),
  ];
}

function stripRound([[ax, ay], [bx, by]]: Segment, reach: number): Point[] {
  const share = reach / Math.hypot(bx - ax, by - ay);
  const [x, y] = [(bx - ax) * share, (by - ay) * share];
  return [
    [ax - x - y, ay - y + x],
    [ax - x + y, ay - y - x],
    [bx + x + y, by + y - x],
    [bx + x - y, by + y + x],
  ];
}

/** Marked lines, in their colours where they are told, and trees with their root zones. Internal. */
export function nearbyPart(scene: PlanScene, colours: LineColours, pen: PlanPen): PlanPart {
  const { utilities = [], trees = [] } = scene.job;
  const parts = [
    ...linesOf(scene, pen).map((one) => linePart(one, colours, pen)),
    ...trees.map((tree) => treePart(tree, scene, pen)),
  ];
  const beyond = [...utilities, ...trees].filter((_, k) => parts[k]?.labels === undefined);
  const names = beyond.map(({ id }) => labelName(id)).join(', ');
  return joined([
    ...parts,
    { told: names === '' ? [] : [pen.style.label('beyond-picture', { names })] },
  ]);
}

function linePart(of: Line, colours: LineColours, { view, style }: PlanPen): PlanPart {
  const { label } = style;
  const lines = of.stretches.flatMap((one) => clipLine(...one, view.area));
  const [longest] = [...lines].sort((a, b) => spanOf(b) - spanOf(a));
  if (longest === undefined) return {};
  const colour = colours.get(of.id);
  const names =
    colour === undefined || style.theme === 'print'
      ? ['line-plain']
      : ['casing', `marked marked-${colour}`];
  const id = labelName(of.id);
  const text =
    colour === undefined
      ? label('line-plain', { line: id })
      : label('line-coloured', { line: id, colour, kind: LOCATE_COLOURS[colour] });
  return {
    marks: names.flatMap((name) => lines.map((part) => line(name, ...part))),
    labels: [{ text, at: along(...longest, 0.5), clearance: 7, rank: 2 }],
    lines,
  };
}

const spanOf = ([a, b]: Segment): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

const SIDES = 72;

function treePart(
  tree: PlanPoint & { readonly id: string },
  { plan }: PlanScene,
  { view, style }: PlanPen,
): PlanPart {
  const at = view.to(inMetres(tree));
  const trees = plan.pavements.flatMap(({ nearby }) => nearby.trees);
  const radius = trees.find(({ id }) => id === tree.id)?.zone.radius;
  const reach = (radius?.toNumber('m') ?? 0) * view.pixelsPerMetre;
  const ring = clipRing(circle(at, reach), view.area).map((part) => polyline('root-zone', part));
  if (!isInside(boxRound(at, 6), view.area)) return { marks: ring };
  const name = labelName(tree.id);
  const text =
    radius === undefined
      ? name
      : style.label('tree-zone', { tree: name, radius: style.units.long(radius) });
  return {
    marks: [...ring, element('circle', { class: 'solid', cx: at[0], cy: at[1], r: 5 })],
    labels: [{ text, at, clearance: 9, rank: 4 }],
    taken: [boxRound(at, 7)],
  };
}

const circle = ([x, y]: Point, radius: number): Point[] =>
  Array.from({ length: radius > 0 ? SIDES : 0 }, (_, k) => {
    const turn = (2 * Math.PI * k) / SIDES;
    return [x + radius * Math.cos(turn), y - radius * Math.sin(turn)];
  });
