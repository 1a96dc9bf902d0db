import { polyline } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import { clipPolygon, clipRing } from './clip.js';
import { innerPoint } from './inner-point.js';
import { joined, sidesOf, type PlanPart, type PlanPen } from './parts.js';
import type { PlanScene } from './plan-scene.js';
import { ringsInMetres } from './rings-in-metres.js';

/** Old paving with what it is and how thick; in words where the job has only a share of a dig. Internal. */
export const oldPavingPart = ({ job, plan }: PlanScene, { view, style }: PlanPen): PlanPart =>
  joined(
    (job.oldPaving ?? []).map(({ outline, material, thickness, pavement }): PlanPart => {
      const { label, units } = style;
      const old = { material, thickness: units.depthWithUnit(thickness) };
      if (outline === undefined) {
        const name = plan.pavements.find(({ id }) => id === pavement)?.name ?? '';
        const told = [label('old-paving-elsewhere', { ...old, pavement: labelName(name) })];
        return { told };
      }
      const whole = ringsInMetres(outline).map(({ points }) => points.map(view.to));
      const rings = whole
        .map((ring) => clipPolygon(ring, view.area))
        .filter((ring) => ring.length > 2);
      if (rings.length === 0) return {};
      return {
        marks: whole.flatMap((ring) =>
          clipRing(ring, view.area).map((part) => polyline('old', part)),
        ),
        labels: [{ text: label('old-paving-piece', old), at: innerPoint(rings), rank: 6 }],
        lines: rings.flatMap(sidesOf),
      };
    }),
  );
