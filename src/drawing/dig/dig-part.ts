import { entry, known } from '../../invariant.js';
import { tapeOfSheet } from '../../job/sheet/layout/tape-of-sheet.js';
import { groundRows } from '../../job/sheet/sections/depth-rows.js';
import type { DeepestPlan } from '../../job/plan/plan.js';
import type { Length } from '../../units/quantity.js';
import { line, polygon, rectangle, polyline, type Point } from '../svg/shapes.js';
import { overlaps, type Box } from '../frame/box.js';
import { textMark, textBox } from '../frame/text-label.js';
import { element } from '../svg/element.js';
import { labelName } from '../surface-rows.js';
import { isInRings } from '../plan/inner-point.js';
import { boxRound, joined, sidesOf, type PlanPart, type PlanPen } from '../plan/parts.js';
import { labelInside } from '../plan/outline-part.js';
import { boundsOf } from '../plan/plan-view.js';
import type { PlanScene, ScenePavement } from '../plan/plan-scene.js';
import { inMetres, type Place } from '../plan/rings-in-metres.js';
import { zeroLines, type DepthAt } from './depth-field.js';
import { gridPlaces, gridStep, multiples } from './grid-steps.js';

/** What a plan of depths is drawn from. Internal. */
export interface DigScene {
  readonly scene: PlanScene;
  readonly pavement: ScenePavement;
  /** Null where one depth holds for the whole dig. */
  readonly depthAt: DepthAt | null;
  /** Where dig turns to fill, inside the dig [m]. */
  readonly zeros: readonly (readonly [Place, Place])[];
}

/** Room of a figure, in pixels. */
const ROW = 40;
const ROOM = { us: { wide: 72, narrow: 64 }, metric: { wide: 60, narrow: 44 } } as const;

/** The steps of the grid in a view: figures are wider than high. Internal. */
export const stepsIn = ({ view, style }: PlanPen): { readonly x: Length; readonly y: Length } => {
  const room = ROOM[style.system][style.isNarrow ? 'narrow' : 'wide'];
  return {
    x: gridStep(style.system, room / view.pixelsPerMetre),
    y: gridStep(style.system, ROW / view.pixelsPerMetre),
  };
};

/** The edges of dig and paving. Internal. */
export function digLines({ pavement }: DigScene, { view }: PlanPen): PlanPart {
  const rings = (all: ScenePavement['dig']) => all.map(({ points }) => points.map(view.to));
  const [dig, paving] = [rings(pavement.dig), rings(pavement.paving)];
  return {
    marks: [
      ...dig.map((ring, k) => polygon(k === 0 ? 'bare ground-cut' : 'bare paper', ring)),
      ...dig.map((ring) => polygon('open dig', ring)),
      ...paving.map((ring) => polygon('open dimension', ring)),
    ],
  };
}

/** Letters of the corners of the paving, as on the sheet. Internal. */
export const cornerLetters = (part: PlanPart): PlanPart => ({
  labels: (part.labels ?? [])
    .filter(({ style = '' }) => style.includes('corner'))
    .map((one) => ({ ...one, rank: 6, rings: 2, isSpare: true })),
});

/** Figures on a grid inside the dig, but for those that a mark would cover. Internal. */
export function gridPart(
  of: DigScene,
  depthAt: DepthAt,
  marks: readonly Box[],
  pen: PlanPen,
): Required<Pick<PlanPart, 'marks' | 'taken'>> {
  const { view, style } = pen;
  const bounds = boundsOf(entry(of.pavement.dig, 0).points.concat());
  const step = stepsIn(pen);
  const xs = multiples(step.x, bounds.west, bounds.east);
  const ys = multiples(step.y, bounds.south, bounds.north);
  const figures = gridPlaces(xs, ys)
    .filter((place) => isInDig(of, place))
    .flatMap((place) => {
      const depth = depthAt(place);
      if (depth === null) return [];
      const one = figure(view.to(place), style.units.depth(depth), style.small);
      return marks.some((mark) => overlaps(mark, one.box)) ? [] : [one];
    });
  return {
    marks: figures.flatMap(({ marks }) => marks),
    taken: figures.map(({ box }) => box),
  };
}

const isInDig = ({ pavement }: Pick<DigScene, 'pavement'>, place: Place): boolean =>
  isInRings(
    pavement.dig.map(({ points }) => points),
    place,
  );

/** A small cross with its figure above. */
function figure([x, y]: Point, text: string, size: number) {
  const label = { text, x, y: y - 6, size, anchor: 'middle', style: 'depth' } as const;
  return {
    marks: [
      line('dimension', [x - 4, y], [x + 4, y]),
      line('dimension', [x, y - 4], [x, y + 4]),
      rectangle('knock', textBox(label)),
      textMark(label),
    ],
    box: unite(textBox(label), y + 5),
  };
}

const unite = (box: ReturnType<typeof textBox>, bottom: number) => ({
  ...box,
  height: Math.max(box.height, bottom - box.y),
});

/** Coordinates of the grid along the left and the bottom of the picture. Internal. */
export function gridScale(of: DigScene, figures: readonly Box[], pen: PlanPen): PlanPart {
  const { view, style } = pen;
  const bounds = boundsOf(entry(of.pavement.dig, 0).points);
  const step = stepsIn(pen);
  const { x: left, y: top, height } = view.area;
  const across = multiples(step.x, bounds.west, bounds.east).map((x) => {
    const at = view.to([x.toNumber('m'), 0])[0];
    const base = top + height - 6;
    const text = style.label('x-value', { value: style.units.long(x) });
    return {
      tick: [
        [at, base - 18],
        [at, base - 24],
      ] as const,
      label: { text, x: at, y: base, size: style.small, anchor: 'middle' } as const,
    };
  });
  const up = multiples(step.y, bounds.south, bounds.north).map((y) => {
    const at = view.to([0, y.toNumber('m')])[1];
    const text = style.label('y-value', { value: style.units.long(y) });
    return {
      tick: [
        [left + 20, at],
        [left + 26, at],
      ] as const,
      label: {
        text,
        x: left + 14,
        y: at,
        size: style.small,
        anchor: 'middle',
        isTurned: true,
      } as const,
    };
  });
  const below = apart(across);
  const stand = [...figures, ...below.map(({ label }) => textBox(label))];
  const beside = apart(up).filter(
    ({ label }) => !stand.some((box) => overlaps(box, textBox(label))),
  );
  const shown = [...below, ...beside];
  return {
    marks: shown.flatMap(({ tick, label }) => [line('dimension', ...tick), textMark(label)]),
    taken: shown.map(({ label }) => textBox(label)),
  };
}

/** Leaves out what would stand on its neighbour. */
function apart<T extends { readonly label: Parameters<typeof textBox>[0] }>(
  all: readonly T[],
): T[] {
  const longest = Math.max(
    0,
    ...all.map(({ label }) => Math.max(textBox({ ...label, isTurned: false }).width)),
  );
  const [a, b] = all;
  if (a === undefined || b === undefined) return [...all];
  const pitch = Math.max(Math.abs(b.label.x - a.label.x), Math.abs(b.label.y - a.label.y));
  const every = Math.max(1, Math.ceil((longest + 8) / pitch));
  return all.filter((_, k) => k % every === 0);
}

/** The places where dig turns to fill, inside the dig. Internal. */
export function zerosOf(pavement: ScenePavement, depthAt: DepthAt): (readonly [Place, Place])[] {
  const { deepestCut, deepestFill } = pavement.plan.earth;
  if (deepestCut === null || deepestFill === null) return [];
  const known = (place: Place): number | null => depthAt(place)?.toNumber('m') ?? null;
  return zeroLines(known, boundsOf(entry(pavement.dig, 0).points)).filter(([a, b]) =>
    isInDig({ pavement }, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]),
  );
}

/** The line where dig turns to fill. Internal. */
export function zeroPart({ zeros }: DigScene, { view }: PlanPen): PlanPart {
  const lines = zeros.map(([a, b]) => [view.to(a), view.to(b)] as const);
  return { marks: lines.map((one) => line('zero', ...one)), lines };
}

/** The one depth, in the middle of the dig. Internal. */
export function evenPart({ pavement }: DigScene, text: string, { view, style }: PlanPen): PlanPart {
  const rings = pavement.dig.map(({ points }) => points.map(view.to));
  return { labels: [labelInside(text, style.title, rings)] };
}

/** The deepest dig and the lowest ground, as the sheet tells them. Internal. */
export function deepestPart({ pavement }: DigScene, pen: PlanPen): PlanPart {
  const { deepestCut, deepestFill } = pavement.plan.earth;
  return joined([
    placePart(deepestCut, 'deepest-dig', pen),
    placePart(deepestFill, 'lowest-ground', pen),
  ]);
}

function placePart(
  found: DeepestPlan | null,
  key: 'deepest-dig' | 'lowest-ground',
  { view, style }: PlanPen,
): PlanPart {
  if (found === null) return {};
  const at = view.to(inMetres(found));
  const text = style.label(key, { depth: style.units.depthWithUnit(found.depth) });
  return {
    marks: [
      element('circle', { class: 'fall open', cx: at[0], cy: at[1], r: 7 }),
      element('circle', { class: 'solid', cx: at[0], cy: at[1], r: 2.5 }),
    ],
    labels: [{ text, size: style.size, style: 'strong', at, clearance: 10, rank: 0 }],
    taken: [boxRound(at, 8)],
  };
}

/** Where one depth holds: the digs that were measured at the stakes, as the sheet prints them. Internal. */
export function stakeDigs({ scene, pavement }: DigScene, { view, style }: PlanPen): PlanPart {
  const digs = scene.stringLines.flatMap(({ stakes }) =>
    groundRows(stakes, tapeOfSheet(style.system).onTape).map(({ id, dig }) => ({
      id,
      dig,
      at: view.to(known(scene.stakes.get(id), 'stake')),
    })),
  );
  return {
    marks: digs.flatMap(({ at }) => [
      polyline('dimension', [
        [at[0] - 4, at[1]],
        [at[0] + 4, at[1]],
      ]),
      line('dimension', [at[0], at[1] - 4], [at[0], at[1] + 4]),
    ]),
    labels: digs.map(({ id, dig, at }) => ({
      text: style.label('depth-at-stake', { stake: labelName(id), depth: style.units.depth(dig) }),
      at,
      clearance: 7,
      rank: 2,
    })),
    taken: digs.map(({ at }) => boxRound(at, 5)),
    lines:
      entry(pavement.dig, 0).points.length > 200
        ? []
        : sidesOf(entry(pavement.dig, 0).points.map(view.to)),
  };
}
