import { entry } from '../../invariant.js';
import type { Box } from '../frame/box.js';
import type { LabelRequest } from '../frame/place-labels.js';
import type { Point } from '../svg/shapes.js';
import type { DrawStyle } from '../draw-options.js';
import type { PlanView } from './plan-view.js';

/** A label of a plan. Internal. */
export interface PlanLabel extends LabelRequest {
  /** Low ranks choose their places first. */
  readonly rank: number;
  /** True for what stands below the picture too. */
  readonly isSpare?: boolean;
}

/** What one part of a plan puts into the picture. Internal. */
export interface PlanPart {
  readonly marks?: readonly string[];
  readonly labels?: readonly PlanLabel[];
  /** Where no label may stand. */
  readonly taken?: readonly Box[];
  /** Lines that labels stand clear of where they can. */
  readonly lines?: readonly Segment[];
  /** What the picture does not show, in words. */
  readonly told?: readonly string[];
}

/** A straight line of the picture. Internal. */
export type Segment = readonly [Point, Point];

/** The sides of a closed line. Internal. */
export const sidesOf = (ring: readonly Point[]): Segment[] =>
  ring.map((point, index) => [point, entry(ring, (index + 1) % ring.length)]);

/** What the parts of a plan are drawn with. Internal. */
export interface PlanPen {
  readonly view: PlanView;
  readonly style: DrawStyle;
}

/** Several parts as one, in their order. Internal. */
export const joined = (parts: readonly PlanPart[]): Required<PlanPart> => ({
  marks: parts.flatMap(({ marks = [] }) => marks),
  labels: parts.flatMap(({ labels = [] }) => labels),
  taken: parts.flatMap(({ taken = [] }) => taken),
  lines: parts.flatMap(({ lines = [] }) => lines),
  told: parts.flatMap(({ told = [] }) => told),
});

/** A small box round a symbol. Internal. */
export const boxRound = ([x, y]: readonly [number, number], half: number): Box => ({
  x: x - half,
  y: y - half,
  width: 2 * half,
  height: 2 * half,
});
