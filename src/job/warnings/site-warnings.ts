import { unitSuitability } from '../../materials/pavers/unit-suitability.js';
import { sum } from '../../units/aggregate.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { PavementPlan, PlanWarning } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { warning } from './warning.js';

/** What lines and trees near a dig tell. Internal. */
export function nearbyWarnings({ name, nearby }: PavementPlan): PlanWarning[] {
  const lines = nearby.utilities.flatMap(({ id, handDigArea, cover }) => {
    const inDig = handDigArea.isZero()
      ? []
      : [warning('UTILITY_IN_DIG', name, { line: id, area: handDigArea })];
    const isKept = cover === null || cover.verdict === 'pass';
    if (isKept || handDigArea.isZero()) return inDig;
    const values = { line: id, cover: cover.cover, code: cover.code };
    return [...inDig, warning('UTILITY_COVER', name, values)];
  });
  const trees = nearby.trees.flatMap(({ id, zone: { cut } }) => {
    if (cut === null || cut.area.isZero()) return [];
    const share = `${(cut.share * 100).toPrecision(2)} %`;
    return [warning('ROOTS_CUT', name, { tree: id, reach: cut.distance, share })];
  });
  return [...lines, ...trees];
}

/** Units whose shape does not suit the use. Internal. */
export function shapeWarnings({ paver }: ReadJob, pavement: Pavement, name: string): PlanWarning[] {
  if (paver === undefined) return [];
  const long = paver.length.compare(paver.width) >= 0 ? paver.length : paver.width;
  const thickness = sum(
    pavement.layers.filter(({ kind }) => kind === 'paver').map((layer) => layer.thickness),
  );
  return unitSuitability({ length: long, thickness, use: pavement.use })
    .findings.filter(({ verdict }) => verdict === 'fail')
    .map(({ note }) => warning('UNIT_SHAPE', name, { text: note }));
}
