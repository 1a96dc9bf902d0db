import type { FieldPath } from '../../errors.js';
import { borderCourse } from '../../materials/border/border-course.js';
import { outlineEdges } from '../../materials/pavers/outline-edges.js';
import { unitCount, type UnitCount } from '../../materials/pavers/unit-count.js';
import { wholeNumberUp } from '../../units/format-quantity.js';
import type { Area } from '../../units/quantity.js';
import { given, type Step } from '../../working.js';
import type { Pavement } from '../schema/layer-kinds.js';
import { inField } from '../read/in-field.js';
import { plainOutline } from '../read/normal-job.js';
import type { PaverPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';

type Paver = NonNullable<ReadJob['paver']>;

/** Units of a pavement and the working behind them. Internal. */
export interface PlannedPavers {
  readonly plan: PaverPlan | null;
  readonly steps: () => readonly Step[];
}

/**
 * Units that fill a pavement by their module (size with joint), and the order: with a flat share for
 * cuts and breakage, or, where a pattern is named, with the cuts counted along the edges. Internal.
 */
export function planPavers(
  { paver }: ReadJob,
  pavement: Pavement,
  { paving, path }: { readonly paving: Area; readonly path: FieldPath },
): PlannedPavers {
  if (paver === undefined) return { plan: null, steps: () => [] };
  return inField(
    () => countPavers(paver, pavement, paving),
    ([first = '', ...rest]) => {
      if (first === 'unit') return ['paver', ...rest];
      if (PAVER_FIELDS.has(first)) return ['paver', first, ...rest];
      if (BORDER_FIELDS.has(first)) return [...path, 'border', first, ...rest];
      return [...path, 'outline'];
    },
  );
}

const PAVER_FIELDS = new Set<FieldPath[number]>(['axis', 'joint', 'pattern', 'breakage', 'reuse']);
const BORDER_FIELDS = new Set<FieldPath[number]>(['course', 'corner', 'edges']);

function countPavers(paver: Paver, pavement: Pavement, paving: Area): PlannedPavers {
  const edging = borderOf(paver, pavement);
  const field = edging?.field.area ?? paving;
  const counted = countedByPattern(paver, pavement, { field, edging });
  const border = edging?.units ?? 0;
  const module = paver.length.plus(paver.joint).times(paver.width.plus(paver.joint));
  const allowance = paver.breakage?.plus(1) ?? 1;
  const plan: PaverPlan = {
    area: field,
    module,
    whole: counted?.whole ?? wholeNumberUp(field, module),
    cut: counted?.cut ?? null,
    border,
    order:
      (counted?.order ?? wholeNumberUp(field.times(allowance), module)) +
      wholeNumberUp(module.times(border).times(allowance), module),
  };
  return {
    plan,
    steps: () => [...(edging?.working ?? []), ...(counted?.working ?? [shareStep(paver, plan)])],
  };
}

type Border = ReturnType<typeof borderCourse>;

const sizeOf = ({ length, width }: Paver) => ({ length, width });

function borderOf(paver: Paver, { border, outline }: Pavement): Border | null {
  if (border === undefined) return null;
  return borderCourse({
    outline: plainOutline(outline),
    unit: sizeOf(paver),
    joint: paver.joint,
    course: border.course,
    ...(border.corner === undefined ? {} : { corner: border.corner }),
    ...(border.edges === undefined ? {} : { edges: border.edges }),
    ...(paver.axis === undefined ? {} : { axis: paver.axis }),
  });
}

/** Whole and cut units along the edges; null where no pattern is named. */
function countedByPattern(
  paver: Paver,
  { outline }: Pavement,
  { field, edging }: { readonly field: Area; readonly edging: Border | null },
): UnitCount | null {
  const { pattern, axis, reuse, breakage } = paver;
  if (pattern === undefined) return null;
  const turned = axis === undefined ? {} : { axis };
  const edge =
    edging?.field.edges ?? outlineEdges({ outline: plainOutline(outline), ...turned }).edges;
  return unitCount({
    area: field,
    unit: sizeOf(paver),
    joint: paver.joint,
    pattern,
    edge,
    ...(breakage === undefined ? {} : { breakage: breakage.toString() }),
    ...(reuse === undefined ? {} : { reuse: reuse.toString() }),
  });
}

function shareStep(paver: Paver, plan: PaverPlan): Step {
  return {
    title: 'Pavers to order',
    formula: 'n = ceil(A (1 + q) / ((l + j) (w + j))) + ceil(b (1 + q))',
    given: [
      given('A', 'area of the field', plan.area),
      given('q', 'cuts and breakage', paver.breakage ?? 0),
      given('l', 'length of a unit', paver.length),
      given('w', 'width of a unit', paver.width),
      given('j', 'joint', paver.joint),
      given('b', 'units of the border', plan.border),
    ],
    result: given('n', 'units to order', plan.order),
    source: 'derived',
  };
}
