import { entry } from '../../invariant.js';
import { element } from '../svg/element.js';
import { HAND_DIG, hatched } from '../frame/hatches.js';
import { line, polygon, polyline, type Point } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import { LOCATE_COLOURS } from '../../sources/locate-colours.js';
import { isInside } from '../frame/box.js';
import { clipLine, clipPolygon, clipRing } from './clip.js';
import { boxRound, joined, NO_PART, type PlanPart, type PlanPen, type Segment } from './parts.js';
import type { PlanScene } from './plan-scene.js';
import type { Place } from './rings-in-metres.js';

/** A colour that marked lines are marked in. */
export type LocateColour = keyof typeof LOCATE_COLOURS;

/** The colours of lines by their ids. Internal. */
export type LineColours = ReadonlyMap<string, LocateColour>;

interface Line {
  readonly id: string;
  readonly path: readonly Place[];
  /** Half the width of the zone. */
  readonly reach: number;
}

const linesOf = ({ job }: PlanScene): Line[] =>
  (job.utilities ?? []).map(({ id, path, width, tolerance }) => ({
    id,
    path: path.map(({ x, y }): Place => [x.toNumber('m'), y.toNumber('m')]),
    reach: width.toNumber('m') / 2 + tolerance.toNumber('m'),
  }));

const stretches = ({ path }: Line): readonly (readonly [Place, Place])[] =>
  path.slice(1).map((to, index) => [entry(path, index), to]);

/** The zones of marked lines: strips carried on by the zone past both ends of each stretch. Internal. */
export function zoneMarks(scene: PlanScene, { view }: PlanPen): string[] {
  const zones = linesOf(scene).flatMap((one) =>
    stretches(one).flatMap(([a, b]) => {
      const seen = clipPolygon(stripRound(a, b, one.reach).map(view.to), view.area);
      return seen.length < 3 ? [] : [seen];
    }),
  );
  return [
    ...zones.map((zone) => polygon('open dimension', zone)),
    ...zones.map((zone) => hatched('bare', zone, HAND_DIG)),
  ];
}

function stripRound(a: Place, b: Place, reach: number): Place[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = [((b[0] - a[0]) / long) * reach, ((b[1] - a[1]) / long) * reach];
  return [
    [a[0] - ux - uy, a[1] - uy + ux],
    [a[0] - ux + uy, a[1] - uy - ux],
    [b[0] + ux + uy, b[1] + uy - ux],
    [b[0] + ux - uy, b[1] + uy + ux],
  ];
}

/** Marked lines, in their colours where they are told, and trees with their root zones. Internal. */
export function nearbyPart(scene: PlanScene, colours: LineColours, pen: PlanPen): PlanPart {
  const all = [
    ...linesOf(scene).map((one) => ({ id: one.id, part: linePart(one, colours, pen) })),
    ...(scene.job.trees ?? []).map(({ id, x, y }) => ({
      id,
      part: treePart(id, [x.toNumber('m'), y.toNumber('m')], { scene, pen }),
    })),
  ];
  const beyond = all.filter(({ part }) => part.labels.length === 0).map(({ id }) => labelName(id));
  const names = beyond.join(', ');
  return {
    ...joined(all.map(({ part }) => part)),
    told: beyond.length === 0 ? [] : [pen.style.label('beyond-picture', { names })],
  };
}

function linePart(one: Line, colours: LineColours, { view, style }: PlanPen): PlanPart {
  const seen = stretches(one).flatMap(([a, b]) => {
    const part = clipLine(view.to(a), view.to(b), view.area);
    return part === null ? [] : [part];
  });
  const colour = colours.get(one.id);
  const names =
    colour === undefined || style.theme === 'print'
      ? ['line-plain']
      : ['casing', `marked marked-${colour}`];
  const [longest] = [...seen].sort((a, b) => spanOf(b) - spanOf(a));
  const id = labelName(one.id);
  const text =
    colour === undefined
      ? style.label('line-plain', { line: id })
      : style.label('line-coloured', { line: id, colour, kind: LOCATE_COLOURS[colour] });
  return {
    marks: names.flatMap((name) => seen.map((part) => line(name, ...part))),
    labels:
      longest === undefined
        ? []
        : [{ text, size: style.small, at: middle(longest), clearance: 7, rank: 4 }],
    taken: [],
    lines: seen,
  };
}

const spanOf = ([a, b]: Segment): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
const middle = ([a, b]: Segment): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

const SIDES = 72;

function treePart(
  id: string,
  place: Place,
  { scene: { plan }, pen: { view, style } }: { readonly scene: PlanScene; readonly pen: PlanPen },
): PlanPart {
  const tree = labelName(id);
  const at = view.to(place);
  const trees = plan.pavements.flatMap(({ nearby }) => nearby.trees);
  const radius = trees.find((one) => one.id === id)?.zone.radius;
  const zone = radius === undefined ? [] : circle(place, radius.toNumber('m')).map(view.to);
  const ring = clipRing(zone, view.area).map((part) => polyline('root-zone', part));
  if (!isInside(boxRound(at, 6), view.area)) return { ...NO_PART, marks: ring };
  const text =
    radius === undefined
      ? tree
      : style.label('tree-zone', { tree, radius: style.units.long(radius) });
  return {
    marks: [...ring, element('circle', { class: 'solid', cx: at[0], cy: at[1], r: 5 })],
    labels: [{ text, size: style.small, at, clearance: 9, rank: 4 }],
    taken: [boxRound(at, 7)],
  };
}

const circle = ([x, y]: Place, radius: number): Place[] =>
  Array.from({ length: SIDES }, (_, k) => {
    const turn = (2 * Math.PI * k) / SIDES;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
