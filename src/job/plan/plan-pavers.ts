import type { FieldPath } from '../../errors.js';
import { borderFrom, type BorderCourse } from '../../materials/border/border-course.js';
import { outlineEdges } from '../../materials/pavers/outline-edges.js';
import { unitCount, type UnitCountOptions } from '../../materials/pavers/unit-count.js';
import { edgeCount } from '../../outline/ring.js';
import type { Area } from '../../units/quantity.js';
import { NO_AREA } from '../../units/zero.js';
import { derivedStep, given, type Step } from '../../working.js';
import type { Pavement } from '../schema/layer-kinds.js';
import { inField } from '../read/in-field.js';
import { plainOutline } from '../read/normal-job.js';
import { paverOf, paverWith, type Paver } from './materials.js';
import type { PaverPlan, UnitsPlan } from './plan.js';
import { numberText } from '../read/normal-job.js';
import type { ReadJob } from '../schema/job-shape.js';

/** Pavers of a pavement, with the working. Internal. */
export interface PlannedPavers {
  readonly plan: PaverPlan | null;
  readonly steps: () => readonly Step[];
}

/**
 * Counts the pavers that fill a pavement, by their module (size with joint), and the order. The order
 * adds a flat share for cuts and breakage or, if a pattern is given, the cuts counted along the edges.
 * Internal.
 */
export function planPavers(
  { materials }: ReadJob,
  pavement: Pavement,
  { paving, path }: { readonly paving: Area; readonly path: FieldPath },
): PlannedPavers {
  const paver = paverOf(materials, pavement);
  if (paver === null) return { plan: null, steps: () => [] };
  const edging = pavement.border?.paver;
  const units = {
    paver,
    edging: edging === undefined ? paver : paverWith(materials, edging),
  };
  return inField(
    () => countPavers(units, pavement, paving),
    // what is given of pavers and border has been read: the outline alone can be unfit for them
    () => [...path, 'outline'],
  );
}

interface Units {
  /** Paver of the field. */
  readonly paver: Paver;
  /** Paver of the border. */
  readonly edging: Paver;
}

function countPavers(units: Units, pavement: Pavement, paving: Area): PlannedPavers {
  const { paver } = units;
  const edging = borderOf(units, pavement);
  const field = edging?.field.area ?? paving;
  const border = edging?.units ?? 0;
  const hasPattern = paver.pattern !== undefined;
  const counted = unitCount({
    area: field,
    ...unitOptions(paver),
    ...(hasPattern ? patternOptions(paver, pavement, edging) : {}),
  });
  const { module, whole, cut, order } = counted;
  const plan: PaverPlan = {
    area: field,
    module,
    whole,
    cut: hasPattern ? cut : null,
    border,
    orders: ordersOf(units, { field: order, border }),
  };
  const steps = () => (hasPattern ? counted.working : [shareStep(units, plan)]);
  return { plan, steps: () => [...(edging?.working ?? []), ...steps()] };
}

const sizeOf = ({ length, width }: Paver) => ({ length, width });

function borderOf({ paver, edging }: Units, { border, outline }: Pavement): BorderCourse | null {
  if (border === undefined) return null;
  return borderFrom(1, {
    outline: plainOutline(outline),
    unit: sizeOf(edging),
    joint: edging.joint,
    course: border.course,
    ...(border.corner === undefined ? {} : { corner: border.corner }),
    ...(border.edges === undefined ? {} : { edges: flagsOf(border.edges, outline) }),
    ...(paver.axis === undefined ? {} : { axis: paver.axis }),
  });
}

const unitOptions = (paver: Paver) => ({
  unit: sizeOf(paver),
  joint: paver.joint,
  ...(paver.breakage === undefined ? {} : { breakage: numberText(paver.breakage) }),
});

/** Options for counting cuts: pattern, direction, and share of off-cuts used. */
function patternOptions(
  { pattern, axis, reuse }: Paver,
  { outline }: Pavement,
  edging: BorderCourse | null,
): Pick<UnitCountOptions, 'pattern' | 'edge' | 'reuse'> {
  const turned = axis === undefined ? {} : { axis };
  const edge =
    edging?.field.edges ?? outlineEdges({ outline: plainOutline(outline), ...turned }).edges;
  return {
    ...(pattern === undefined ? {} : { pattern }),
    edge,
    ...(reuse === undefined ? {} : { reuse: numberText(reuse) }),
  };
}

/** Pavers to order for a border, from the area that the same number fills when laid like the field. */
function borderOrder(paver: Paver, border: number): number {
  const options = unitOptions(paver);
  const { module } = unitCount({ area: NO_AREA, ...options });
  return border === 0 ? 0 : unitCount({ area: module.times(border), ...options }).order;
}

/** One order if field and border use the same paver, else two. */
function ordersOf(
  { paver, edging }: Units,
  { field, border }: { readonly field: number; readonly border: number },
): UnitsPlan[] {
  const round = borderOrder(edging, border);
  if (edging.id === paver.id) return [{ paver: paver.id, order: field + round }];
  return [
    { paver: paver.id, order: field },
    { paver: edging.id, order: round },
  ];
}

/** One flag for each edge, true if it is listed; edges are counted from 1. */
function flagsOf(edges: readonly number[], outline: Pavement['outline']): boolean[] {
  const count = edgeCount(outline);
  return Array.from({ length: count }, (_, index) => edges.includes(index + 1));
}

function shareStep({ paver, edging }: Units, plan: PaverPlan): Step {
  return derivedStep({
    title: 'Pavers to order',
    formula: 'n = ceil(A * (1 + q) / ((l + j) * (w + j))) + ceil(b * (1 + qb))',
    given: [
      given('A', 'area of the field', plan.area),
      given('q', 'cuts and breakage', paver.breakage ?? 0),
      given('l', 'length of one paver', paver.length),
      given('w', 'width of one paver', paver.width),
      given('j', 'joint', paver.joint),
      given('b', 'pavers in the border', plan.border),
      given('qb', 'breakage of the pavers in the border', edging.breakage ?? 0),
    ],
    result: given(
      'n',
      'pavers to order',
      plan.orders.reduce((n, { order }) => n + order, 0),
    ),
  });
}
