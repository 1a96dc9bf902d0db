import { lastOf } from '../../../invariant.js';
import { given, type StepInput } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import type { FieldPath } from '../../../errors.js';
import { paverIndex, paverWith, type Paver } from '../materials.js';
import { done, place, take, worked, type PlacedStep } from '../placed.js';
import type { PavementPlan } from '../plan.js';

/** The working of the pavers, with the fields that it gives. Internal. */
export function paverSteps(
  job: ReadJob,
  { pavers, edges, areas }: PavementPlan,
  {
    paver,
    edging: own,
    steps,
  }: {
    readonly paver: Paver | null;
    /** Id of the paver of the border; undefined if it is that of the field. */
    readonly edging: string | undefined;
    readonly steps: readonly PlacedStep[];
  },
): PlacedStep[] {
  if (pavers === null || paver === null) return [];
  const index = paverIndex(job.materials, paver);
  const from = (field: string) => [['job', 'materials', 'pavers', index, field]];
  const edging = own === undefined ? paver : paverWith(job.materials, own);
  const edgeIndex = paverIndex(job.materials, edging);
  const edge = (field: string) => [['job', 'materials', 'pavers', edgeIndex, field]];
  const size = { l: from('length'), w: from('width'), j: from('joint') };
  const isFramed = !pavers.area.equals(areas.paving);
  const area = isFramed ? ['pavers', 'area'] : ['areas', 'paving'];
  const isAlone = pavers.border === 0 || steps.every(({ title }) => title !== 'Pavers to order');
  const order = isAlone === (pavers.orders.length === 1) ? [['pavers', 'orders', 0, 'order']] : [];
  const sides = edges.map((_, k) => ['edges', k, 'length']);
  const lengths = take(
    'L',
    'length of each edge of the paving',
    edges.map(({ length }) => length),
    ...sides,
  );
  const placed = steps.map((step) => {
    const symbols = new Set(step.given.map(({ symbol }) => symbol));
    switch (step.result.symbol) {
      case 'Af':
        return place(step, [['pavers', 'area']], {
          A: [['areas', 'paving']],
          d: courseOf(step, edging, edge),
        });
      case 'N':
        return place(step, [], { A: [area], ...size });
      case 'n':
        if (step.title === 'Pavers of the border') return place(step, [['pavers', 'border']]);
        return place(step, order, {
          ...(symbols.has('l') ? { A: [area], b: [['pavers', 'border']], ...size } : {}),
          ...(paver.breakage === undefined ? {} : { q: from('breakage') }),
          ...(edging.breakage === undefined || !symbols.has('qb') ? {} : { qb: edge('breakage') }),
        });
      default:
        return step;
    }
  });
  return [
    worked({
      title: 'Area of one paver with its joint',
      formula: 'm = (l + j) * (w + j)',
      takes: [
        take('l', 'length of one paver', paver.length, ...size.l),
        take('w', 'width of one paver', paver.width, ...size.w),
        take('j', 'joint', paver.joint, ...size.j),
      ],
      result: given('m', 'area of one paver with its joint', pavers.module),
      gives: [['pavers', 'module']],
    }),
    ...measuredSteps(steps, lengths),
    ...placed,
    ...(isAlone ? [] : borderSteps(pavers, placed, { edging, from: edge })),
  ];
}

/** The pavers of a border, and those of the field if they are the same. */
function borderSteps(
  { border, orders }: NonNullable<PavementPlan['pavers']>,
  steps: readonly PlacedStep[],
  { edging, from }: { readonly edging: Paver; readonly from: (field: string) => FieldPath[] },
): PlacedStep[] {
  const field = steps.find(({ title }) => title === 'Pavers to order');
  const last = orders.length - 1;
  const { order } = lastOf(orders);
  if (field === undefined) return [];
  const breakage = edging.breakage === undefined ? [] : from('breakage');
  const isOne = last === 0;
  return [
    worked({
      title: isOne ? 'Pavers to order, border included' : 'Pavers of the border to order',
      formula: isOne ? 'N = n + ceil(b * (1 + q))' : 'N = ceil(b * (1 + q))',
      takes: [
        ...(isOne ? [{ input: field.result, from: [] }] : []),
        take('b', 'pavers in the border', border, ['pavers', 'border']),
        take('q', 'breakage of the pavers in the border', edging.breakage ?? 0, ...breakage),
      ],
      result: given('N', 'pavers to order', order),
      gives: [['pavers', 'orders', last, 'order']],
    }),
  ];
}

/** The depth of a course is the length of a paver, or its width. */
function courseOf(
  { given: inputs }: PlacedStep,
  { length }: Paver,
  from: (field: string) => FieldPath[],
): FieldPath[] {
  const depth = inputs.find(({ symbol }) => symbol === 'd');
  return from(depth?.text === given('d', '', length).text ? 'length' : 'width');
}

/** The edges and sides that units are counted along, as the outline gives them. */
function measuredSteps(
  steps: readonly PlacedStep[],
  lengths: ReturnType<typeof take>,
): PlacedStep[] {
  const found = new Map<string, StepInput>();
  const keep = (input: StepInput) => found.set(`${input.name} ${input.text}`, input);
  for (const { given: inputs, result, title } of steps) {
    for (const input of inputs) {
      const isOfCuts = result.symbol === 'c' && ['E', 'a', 't', 'L', 'W'].includes(input.symbol);
      const isOfBorder =
        (result.symbol === 'C' && input.symbol === 'c') ||
        (title === 'Pavers of the border' && ['r', 'p'].includes(input.symbol));
      if (isOfCuts || isOfBorder) keep(input);
    }
  }
  return [...found.values()].map((input) =>
    done({
      title: 'Sides and units measured for the count',
      procedure: 'borderCourse',
      method:
        'Follows the outline inside the border, and returns the length of each side, its angle to the units, and the size of a unit along it.',
      takes: [lengths],
      result: input,
      gives: [],
    }),
  );
}
