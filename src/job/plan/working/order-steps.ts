import { capital } from '../../../capital.js';
import { entry } from '../../../invariant.js';
import type { FieldPath } from '../../../errors.js';
import { given } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { isStone, type Pavement } from '../../schema/layer-kinds.js';
import { placeBy, take, worked, done, type PlacedStep, type Taken } from '../placed.js';
import type { LooseOrderPlan, PavementPlan } from '../plan.js';

/** The working of the stone and sand to order. Internal. */
export function orderSteps(job: ReadJob, pavement: Pavement, plan: PavementPlan): PlacedStep[] {
  const { stones, bedding, areas, earth } = plan;
  const layers = pavement.layers.flatMap((layer, index) =>
    isStone(layer) ? [{ layer, index }] : [],
  );
  const base = take('A', 'area of the base, counted here', areas.ownBase, ['areas', 'ownBase']);
  const placed = stones.flatMap((one, k) => {
    const at: FieldPath = ['stones', k];
    const of = { job, group: 'stones', at, one } as const;
    if (one.layer === 'fill' && k >= layers.length) {
      const fill = take('F', 'fill', earth.fill.volume, ['earth', 'fill', 'volume']);
      return [...volumeSteps(of, 'Vc = F', [fill]), ...partSteps(of, {})];
    }
    const layer = entry(layers, k);
    const thickness: readonly FieldPath[] = [['given', 'layers', layer.index, 'thickness']];
    if (pavement.taperedBase !== true) {
      return partSteps(of, { A: base.from, t: thickness });
    }
    const t = take('t', 'compacted thickness', layer.layer.thickness, ...thickness);
    const lacks = areas.ownBase.times(layer.layer.thickness).minus(one.order.compacted.volume);
    const name = `stone that the tapered edge of ${one.layer} leaves out`;
    return [
      done({
        title: capital(name),
        procedure: 'planJob',
        method:
          'Takes the volume that narrows evenly from the foot of the base to the back of the restraint from the same volume with upright sides.',
        takes: [
          base,
          t,
          take(
            'b',
            'base outside each edge',
            plan.edges.map((edge) => edge.base),
            ...plan.edges.map((_, index) => ['edges', index, 'base']),
          ),
        ],
        result: given('x', name, lacks),
        gives: [],
      }),
      ...volumeSteps(of, 'Vc = A * t - x', [base, t, take('x', name, lacks)]),
      ...partSteps(of, {}),
    ];
  });
  const bed = pavement.layers.findIndex(({ kind }) => kind === 'bedding');
  const beds = pavement.layers.filter(({ kind }) => kind === 'bedding').length;
  const sand = partSteps(
    { job, group: 'sands', at: ['bedding'], one: bedding },
    {
      A: [['areas', 'paving']],
      ...(beds === 1 ? { t: [['given', 'layers', bed, 'thickness']] } : {}),
    },
  );
  return [...placed, ...sand];
}

interface Ordered {
  readonly job: ReadJob;
  readonly group: 'stones' | 'sands';
  readonly at: FieldPath;
  readonly one: LooseOrderPlan;
}

const volumes = (at: FieldPath, field: string): FieldPath[] => [
  [...at, 'order', field, 'volume'],
  [...at, 'order', 'parts', 0, field, 'volume'],
];

const volumeSteps = (
  { at, one }: Ordered,
  formula: string,
  takes: readonly Taken[],
): PlacedStep[] => [
  worked({
    title: `Compacted volume, ${one.layer}`,
    formula,
    takes,
    result: given('Vc', 'compacted volume', one.order.compacted.volume),
    gives: volumes(at, 'compacted'),
  }),
];

/** The steps of an order, and those of its masses. */
function partSteps(
  { job, group, at, one }: Ordered,
  size: Readonly<Record<string, readonly FieldPath[]>>,
): PlacedStep[] {
  const { order, layer, material } = one;
  const index = job.materials[group].findIndex(({ id }) => id === material);
  const loose = job.materials[group][index];
  const from = (field: 'compactedPerLoose' | 'compactedDryDensity' | 'moisture' | 'waste') =>
    loose?.[field] === undefined ? [] : [['job', 'materials', group, index, field]];
  const factors = { q: from('waste'), r: from('compactedPerLoose'), w: from('moisture') };
  const d = from('compactedDryDensity');
  const Vc = volumes(at, 'compacted').slice(0, 1);
  const steps = placeBy(
    order.working.map((step) => ({ ...step, title: `${step.title}, ${layer}` })),
    {
      Vc: volumes(at, 'compacted'),
      Vl: volumes(at, 'loose'),
      M: [
        [...at, 'order', 'deliveredMass'],
        [...at, 'order', 'parts', 0, 'deliveredMass'],
      ],
    },
    { ...size, ...factors, d, Vc },
  );
  const waste = take('q', 'waste', loose?.waste ?? 0, ...factors.q);
  const density = take('d', 'dry density in place', order.compactedDryDensity, ...d);
  return [
    ...steps,
    worked({
      title: `Dry mass, ${layer}`,
      formula: 'Md = Vc * (1 + q) * d',
      takes: [take('Vc', 'compacted volume', order.compacted.volume, ...Vc), waste, density],
      result: given('Md', 'dry mass', order.dryMass),
      gives: [[...at, 'order', 'dryMass']],
    }),
    worked({
      title: `Water in the delivered mass, ${layer}`,
      formula: 'W = M - Md',
      takes: [
        take('M', 'delivered mass', order.deliveredMass, [...at, 'order', 'deliveredMass']),
        take('Md', 'dry mass', order.dryMass, [...at, 'order', 'dryMass']),
      ],
      result: given('W', 'water', order.water),
      gives: [[...at, 'order', 'water']],
    }),
  ];
}
