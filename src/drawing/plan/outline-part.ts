import { cornerName } from '../../job/tables/corner-name.js';
import { textWidth } from '../svg/text-width.js';
import { polygon, type Point } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import { innerPoint } from './inner-point.js';
import { boundsOf } from './plan-view.js';
import { sidesOf, type PlanLabel, type PlanPart, type PlanPen } from './parts.js';
import type { ScenePavement } from './plan-scene.js';
import type { RingInMetres } from './rings-in-metres.js';

/** A ring in the picture. Internal. */
export const ringInView = ({ points }: RingInMetres, { view }: PlanPen): readonly Point[] =>
  points.map(view.to);

/** The area of a paving; its holes show the paper. Internal. */
export const pavingArea = ({ paving }: ScenePavement, pen: PlanPen): string[] =>
  paving.map((ring, index) =>
    polygon(index === 0 ? 'bare ground-paver' : 'bare paper', ringInView(ring, pen)),
  );

/** The edges of paving, base and dig, the name of the pavement and the letters of its corners. Internal. */
export function outlinePart(pavement: ScenePavement, pen: PlanPen): PlanPart {
  const { paving, base, dig, top } = pavement;
  const lines = (rings: readonly RingInMetres[] | null, style: string) =>
    (rings ?? []).map((ring) => polygon(`open ${style}`, ringInView(ring, pen)));
  return {
    marks: [
      ...lines(top, 'dig-top'),
      ...lines(dig, 'dig'),
      ...lines(base, 'base'),
      ...lines(paving, 'finish'),
    ],
    labels: [nameLabel(pavement, pen), ...letterLabels(pavement, pen)],
    lines: [...paving, ...dig].flatMap((ring) => sidesOf(ringInView(ring, pen))),
  };
}

const nameLabel = ({ plan, paving }: ScenePavement, pen: PlanPen): PlanLabel => {
  const { size } = pen.style;
  const rings = paving.map((ring) => ringInView(ring, pen));
  return labelInside(labelName(plan.name, size), size, rings);
};

/** A text in the middle of a figure; it reads upward in one that is too narrow for it. Internal. */
export function labelInside(
  text: string,
  size: number,
  rings: readonly (readonly Point[])[],
): PlanLabel {
  const { west, east, south, north } = boundsOf(rings[0] ?? []);
  const [wide, high] = [east - west, north - south];
  return {
    ...{ text, size, style: 'strong', rank: 0 },
    at: innerPoint(rings),
    isCentred: true,
    isTurned: high > wide && wide < textWidth(text, size, true),
  };
}

/** Letters stand inside their corners, so that neighbours keep theirs apart. */
function letterLabels({ paving }: ScenePavement, { view, style }: PlanPen): PlanLabel[] {
  return paving
    .flatMap(({ corners, edges }) =>
      corners.map((corner, index) => {
        const after = edges[index]?.outward ?? [0, 0];
        const before = edges.at(index - 1)?.outward ?? [0, 0];
        const inward = Math.atan2(-after[1] - before[1], -after[0] - before[0]);
        return { at: view.to(corner), toward: inward };
      }),
    )
    .map(({ at, toward }, index) => ({
      text: cornerName(index),
      size: style.size,
      style: 'strong corner',
      at,
      toward,
      clearance: 5,
      rank: 1,
    }));
}
