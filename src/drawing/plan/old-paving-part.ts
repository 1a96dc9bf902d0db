import { polyline } from '../svg/shapes.js';
import type { DrawStyle } from '../draw-options.js';
import { labelName } from '../surface-rows.js';
import { clipPolygon, clipRing } from './clip.js';
import { innerPoint } from './inner-point.js';
import { joined, NO_PART, sidesOf, type PlanPart, type PlanPen } from './parts.js';
import type { PlanScene } from './plan-scene.js';
import { ringsInMetres } from './rings-in-metres.js';

/** Old paving where the job has an outline of it, with what it is and how thick. Internal. */
export function oldPavingPart({ job }: PlanScene, { view, style }: PlanPen): PlanPart {
  return joined(
    (job.oldPaving ?? []).map(({ outline, material, thickness }): PlanPart => {
      if (outline === undefined) return NO_PART;
      const whole = ringsInMetres(outline).map(({ points }) => points.map(view.to));
      const rings = whole
        .map((ring) => clipPolygon(ring, view.area))
        .filter((ring) => ring.length > 2);
      if (rings.length === 0) return NO_PART;
      const text = style.label('old-paving-piece', {
        material,
        thickness: style.units.depthWithUnit(thickness),
      });
      const label = { text, size: style.small, at: innerPoint(rings), rank: 6 };
      return {
        marks: whole.flatMap((ring) =>
          clipRing(ring, view.area).map((part) => polyline('old', part)),
        ),
        labels: [label],
        taken: [],
        lines: rings.flatMap(sidesOf),
      };
    }),
  );
}

/** Old paving that is told as a share of a dig, in words. Internal. */
export const oldPavingElsewhere = (
  { job, plan }: PlanScene,
  { label, units }: DrawStyle,
): string[] =>
  (job.oldPaving ?? []).flatMap(({ outline, material, thickness, pavement }) => {
    if (outline !== undefined) return [];
    const name = plan.pavements.find(({ id }) => id === pavement)?.name ?? '';
    return [
      label('old-paving-elsewhere', {
        material,
        thickness: units.depthWithUnit(thickness),
        pavement: labelName(name),
      }),
    ];
  });
