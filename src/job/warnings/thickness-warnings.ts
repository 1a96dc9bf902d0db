import {
  BASE_ADJUSTMENT,
  MINIMUM_THICKNESS,
  type TwoEditions,
} from '../../sources/minimum-thickness.js';
import { max, min, sum } from '../../units/aggregate.js';
import { length } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import type { PavementPlan, PlanWarning } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { warning } from './warning.js';

type Layer = ReadJob['pavements'][number]['layers'][number];

/**
 * Layers against the published table. It prints each figure in inches and in rounded millimetres,
 * now the one and now the other the smaller: the smaller one decides. Internal.
 */
export function thicknessWarnings(
  layers: readonly Layer[],
  { name, use, minimum }: PavementPlan,
): PlanWarning[] {
  const thickness = (...kinds: readonly Layer['kind'][]): Length =>
    sum([
      length(0, 'm'),
      ...layers.filter(({ kind }) => kinds.includes(kind)).map((layer) => layer.thickness),
    ]);
  const published = MINIMUM_THICKNESS[use];
  const found: PlanWarning[] = [];
  const paver = thickness('paver');
  if (isBelow(paver, smaller(published.paver))) {
    found.push(warning('PAVER_BELOW_MINIMUM', name, { got: paver, least: minimum.paver }));
  }
  const bedding = thickness('bedding');
  if (isOffNominal(bedding, published.bedding)) {
    const values = { got: bedding, nominal: minimum.bedding };
    found.push(warning('BEDDING_OFF_NOMINAL', name, values));
  }
  const base = thickness('base', 'sub-base');
  const added = minimum.adjustments.map(({ reason }) => smaller(BASE_ADJUSTMENT[reason][use]));
  if (isBelow(base, smaller(published.base))) {
    found.push(warning('BASE_BELOW_MINIMUM', name, { got: base, least: minimum.publishedBase }));
  } else if (isBelow(base, sum([smaller(published.base), ...added]))) {
    found.push(warning('BASE_BELOW_PRACTICE', name, { got: base, practice: minimum.base }));
  }
  return found;
}

const editions = (figure: TwoEditions): readonly [Length, Length] => [
  length(figure.in.value, 'in'),
  length(figure.mm.value, 'mm'),
];

const smaller = (figure: TwoEditions): Length => min(editions(figure));

const isBelow = (one: Length, least: Length): boolean => one.compare(least) < 0;

/** Bedding from the smaller edition to the larger is nominal; anything else asks for a second look. */
const isOffNominal = (bedding: Length, nominal: TwoEditions): boolean =>
  isBelow(bedding, smaller(nominal)) || isBelow(max(editions(nominal)), bedding);
