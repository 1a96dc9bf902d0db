import { entry } from '../../invariant.js';
import { textWidth } from '../svg/text-width.js';
import { polygon, type Point } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import { innerPoint } from './inner-point.js';
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
    taken: [],
    lines: [...paving, ...dig].flatMap((ring) => sidesOf(ringInView(ring, pen))),
  };
}

function nameLabel({ plan, paving }: ScenePavement, pen: PlanPen): PlanLabel {
  const { size } = pen.style;
  const text = labelName(plan.name, size);
  const at = innerPoint(paving.map((ring) => ringInView(ring, pen)));
  return {
    text,
    size,
    style: 'strong',
    at,
    clearance: -textWidth(text, size, true) / 2,
    toward: 0,
    rank: 0,
  };
}

/** Letters stand inside their corners, so that neighbours keep theirs apart. */
function letterLabels({ paving, letters }: ScenePavement, { view, style }: PlanPen): PlanLabel[] {
  return paving
    .flatMap(({ corners, edges }) =>
      corners.map((corner, index) => {
        const after = entry(edges, index).outward;
        const before = entry(edges, (index + edges.length - 1) % edges.length).outward;
        const inward = Math.atan2(-after[1] - before[1], -after[0] - before[0]);
        return { at: view.to(corner), toward: inward };
      }),
    )
    .map(({ at, toward }, index) => ({
      text: entry(letters, index),
      size: style.size,
      style: 'strong corner',
      at,
      toward,
      clearance: 5,
      rank: 1,
    }));
}
