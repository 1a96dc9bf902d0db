import { element } from '../svg/element.js';
import { hatched } from '../frame/hatches.js';
import { line, polygon, polyline, type Point } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import { LOCATE_COLOURS } from '../../sources/locate-colours.js';
import { isInside } from '../frame/box.js';
import { clipLine, clipPolygon, clipRing } from './clip.js';
import { boxRound, type PlanLabel, type PlanPart, type PlanPen } from './parts.js';
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
  path.slice(1).map((to, index) => [path[index] ?? to, to]);

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
    ...zones.map((zone) => hatched('bare', zone, 'hand-dig')),
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

/** Marked lines, in their colours where they are told. Internal. */
export function linePart(scene: PlanScene, colours: LineColours, pen: PlanPen): PlanPart {
  const drawn = linesOf(scene).map((one) => drawnLine(one, colours, pen));
  return {
    marks: drawn.flatMap(({ marks }) => marks),
    labels: drawn.flatMap(({ labels }) => labels),
    taken: [],
    lines: drawn.flatMap(({ seen }) => seen),
  };
}

function drawnLine(one: Line, colours: LineColours, { view, style }: PlanPen) {
  const seen = stretches(one).flatMap(([a, b]) => {
    const part = clipLine(view.to(a), view.to(b), view.area);
    return part === null ? [] : [part];
  });
  const colour = colours.get(one.id);
  const marks =
    colour === undefined || style.theme === 'print'
      ? seen.map((part) => line('line-plain', ...part))
      : ['casing', `marked marked-${colour}`].flatMap((name) =>
          seen.map((part) => line(name, ...part)),
        );
  const [longest] = [...seen].sort((a, b) => spanOf(b) - spanOf(a));
  const id = labelName(one.id);
  const text =
    colour === undefined
      ? style.label('line-plain', { line: id })
      : style.label('line-coloured', { line: id, colour, kind: LOCATE_COLOURS[colour] });
  const labels: PlanLabel[] =
    longest === undefined
      ? []
      : [{ text, size: style.small, at: middle(longest), clearance: 7, rank: 4 }];
  return { marks, labels, seen };
}

const spanOf = ([a, b]: readonly [Point, Point]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
const middle = ([a, b]: readonly [Point, Point]): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

const SIDES = 72;

/** Trees with their root zones. Internal. */
export function treePart(scene: PlanScene, pen: PlanPen): PlanPart {
  const drawn = (scene.job.trees ?? []).map(({ id, x, y }) => ({
    id: labelName(id),
    radius: radiusOf(scene, id),
    at: [x.toNumber('m'), y.toNumber('m')] as const,
  }));
  const { view, style } = pen;
  return {
    marks: drawn.flatMap(({ at, radius }) => {
      const ring = radius === null ? [] : circle(at, radius.toNumber('m')).map(view.to);
      return [
        ...clipRing(ring, view.area).map((part) => polyline('root-zone', part)),
        ...(isSeen(view.to(at), pen) ? [trunk(view.to(at))] : []),
      ];
    }),
    labels: drawn
      .filter(({ at }) => isSeen(view.to(at), pen))
      .map(({ id, at, radius }) => ({
        text:
          radius === null
            ? id
            : style.label('tree-zone', { tree: id, radius: style.units.long(radius) }),
        size: style.small,
        at: view.to(at),
        clearance: 9,
        rank: 4,
      })),
    taken: drawn.map(({ at }) => boxRound(view.to(at), 7)),
  };
}

const radiusOf = ({ plan }: PlanScene, id: string) =>
  plan.pavements.flatMap(({ nearby }) => nearby.trees).find((tree) => tree.id === id)?.zone
    .radius ?? null;

const trunk = ([cx, cy]: Point): string => element('circle', { class: 'solid', cx, cy, r: 5 });

const isSeen = (at: Point, { view }: PlanPen): boolean => isInside(boxRound(at, 6), view.area);

const circle = ([x, y]: Place, radius: number): Place[] =>
  Array.from({ length: SIDES }, (_, k) => {
    const turn = (2 * Math.PI * k) / SIDES;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });

/** Lines and trees that the picture does not show. Internal. */
export const beyondPicture = (scene: PlanScene, pen: PlanPen): string[] => [
  ...linesOf(scene)
    .filter((one) =>
      stretches(one).every(
        ([a, b]) => clipLine(pen.view.to(a), pen.view.to(b), pen.view.area) === null,
      ),
    )
    .map(({ id }) => labelName(id)),
  ...(scene.job.trees ?? [])
    .filter(({ x, y }) => !isSeen(pen.view.to([x.toNumber('m'), y.toNumber('m')]), pen))
    .map(({ id }) => labelName(id)),
];
