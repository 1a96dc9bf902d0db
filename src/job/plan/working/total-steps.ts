import { entry, known } from '../../../invariant.js';
import type { FieldPath } from '../../../errors.js';
import { OLD_PAVING_WEIGHTS } from '../../../sources/material-weights.js';
import type { AnyQuantity, Area, Density, Mass, Volume } from '../../../units/quantity.js';
import { formulaStep, given, published } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { place, take, worked, type PlacedStep } from '../placed.js';
import type { JobTotals, PavementPlan } from '../plan.js';
import { added, streamSteps, type Part } from './stream-steps.js';

/** The working of the totals of a job. Internal. */
export function totalSteps(
  job: ReadJob,
  totals: JobTotals,
  pavements: readonly PavementPlan[],
): PlacedStep[] {
  return [
    ...areaSteps(totals, pavements),
    ...(['stones', 'sands'] as const).flatMap((group) =>
      totals[group].flatMap((total, k) => looseSteps({ group, k, total, pavements })),
    ),
    ...spoilSteps(totals, pavements),
    ...totals.oldPaving.flatMap((total, k) => oldPavingSteps(total, k, pavements)),
    ...paverSteps(totals, pavements),
  ].map((step) => truckOf(job, step));
}

/** Box and payload are those of the truck. */
function truckOf({ truck }: ReadJob, step: PlacedStep): PlacedStep {
  if (step.result.symbol !== 'v' || truck === undefined) return step;
  return place(step, known(step.paths, 'fields'), {
    B: [['job', 'truck', 'boxVolume']],
    P: [['job', 'truck', 'payload']],
  });
}

/** What each pavement has of something. */
const partsOf = <T extends AnyQuantity | number>(
  pavements: readonly PavementPlan[],
  pick: (pavement: PavementPlan) => readonly Part<T>[],
): Part<T>[] =>
  pavements.flatMap((pavement, k) =>
    pick(pavement).map(({ value, path }) => ({ value, path: ['pavements', k, ...path] })),
  );

const areaSteps = (totals: JobTotals, pavements: readonly PavementPlan[]): PlacedStep[] =>
  (
    [
      ['digArea', 'ownDig', 'area of the digs'],
      ['baseArea', 'ownBase', 'area of the bases'],
    ] as const
  ).map(([field, own, name]) =>
    added(`Total ${name}`, `total ${name}`, {
      parts: partsOf<Area>(pavements, ({ areas }) => [{ value: areas[own], path: ['areas', own] }]),
      value: totals[field],
      gives: [[field]],
    }),
  );

interface LooseBasis {
  readonly group: 'stones' | 'sands';
  readonly k: number;
  readonly total: JobTotals['stones'][number];
  readonly pavements: readonly PavementPlan[];
}

function looseSteps({ group, k, total, pavements }: LooseBasis): PlacedStep[] {
  const at: FieldPath = [group, k];
  const orders = (
    field: 'loose' | 'compacted' | 'deliveredMass',
    isMeant: (layer: string) => boolean = () => true,
  ) =>
    partsOf<Volume | Mass>(pavements, ({ stones, bedding }) => {
      const own =
        group === 'stones'
          ? stones.map((one, index) => ({ one, path: ['stones', index] }))
          : [{ one: bedding, path: ['bedding'] }];
      return own
        .filter(({ one }) => one.material === total.material && isMeant(one.layer))
        .map(({ one: { order }, path }) =>
          field === 'deliveredMass'
            ? { value: order.deliveredMass, path: [...path, 'order', field] }
            : { value: order[field].volume, path: [...path, 'order', field, 'volume'] },
        );
    });
  const what = total.name;
  return [
    ...streamSteps(what, at, {
      stream: total,
      loose: orders('loose') as Part<Volume>[],
      masses: orders('deliveredMass') as Part<Mass>[],
      density: null,
    }),
    added(`Compacted volume of ${what}`, `compacted volume of ${what}`, {
      parts: orders('compacted'),
      value: total.compacted.volume,
      gives: [[...at, 'compacted', 'volume']],
    }),
    ...(total.fill === null
      ? []
      : [
          added(`Fill of ${what}`, `fill of ${what}`, {
            parts: orders('compacted', (layer) => layer === 'fill'),
            value: total.fill.volume,
            gives: [[...at, 'fill', 'volume']],
          }),
        ]),
  ];
}

function spoilSteps({ spoil }: JobTotals, pavements: readonly PavementPlan[]): PlacedStep[] {
  if (spoil === null) return [];
  const volumes = (field: 'loose' | 'bank') =>
    partsOf<Volume>(pavements, (one) => [
      { value: one.spoil[field].volume, path: ['spoil', field, 'volume'] },
    ]);
  return [
    ...streamSteps('soil', ['spoil'], {
      stream: spoil,
      loose: volumes('loose'),
      masses: partsOf<Mass>(pavements, (one) => [
        { value: one.spoil.mass, path: ['spoil', 'mass'] },
      ]),
      density: null,
    }),
    added('Bank volume of soil', 'bank volume of soil', {
      parts: volumes('bank'),
      value: spoil.bank.volume,
      gives: [['spoil', 'bank', 'volume']],
    }),
  ];
}

function oldPavingSteps(
  total: JobTotals['oldPaving'][number],
  k: number,
  pavements: readonly PavementPlan[],
): PlacedStep[] {
  const { material, density } = total;
  const own = <T extends Volume | Mass | Density>(
    pick: (one: PavementPlan['oldPaving'][number]) => T,
    ...path: readonly string[]
  ) =>
    partsOf<T>(pavements, ({ oldPaving }) =>
      oldPaving.flatMap((one, index) =>
        one.material === material && one.density.equals(density)
          ? [{ value: pick(one), path: ['oldPaving', index, ...path] }]
          : [],
      ),
    );
  const what = `old ${material}`;
  const row = OLD_PAVING_WEIGHTS[material].loose;
  const weight = total.loads.total.volume.isZero()
    ? density
    : total.loads.total.mass.dividedBy(total.loads.total.volume);
  const first = entry(
    own((one) => one.density, 'density'),
    0,
  );
  const step = formulaStep({
    title: `Loose density of ${what}`,
    formula: 'd = p',
    given: [published('p', `loose density of ${what}`, weight, row.source)],
    result: given('d', `loose density of ${what}`, weight),
    source: row.source,
  });
  return [
    worked({
      title: `Density of ${what} in place`,
      formula: 'd = d0',
      takes: [take('d0', 'density in place', density, ['plan', ...first.path])],
      result: given('d', `density of ${what} in place`, density),
      gives: [['oldPaving', k, 'density']],
    }),
    ...streamSteps(what, ['oldPaving', k], {
      stream: total,
      loose: own((one) => one.loose.volume, 'loose', 'volume'),
      masses: own((one) => one.mass, 'mass'),
      density: { value: weight, step },
    }),
  ];
}

const paverSteps = ({ pavers }: JobTotals, pavements: readonly PavementPlan[]): PlacedStep[] =>
  pavers.map(({ paver, name, order }, k) =>
    added(`${name} to order`, `${name} to order`, {
      parts: partsOf<number>(pavements, (one) =>
        (one.pavers?.orders ?? []).flatMap((own, index) =>
          own.paver === paver
            ? [{ value: own.order, path: ['pavers', 'orders', index, 'order'] }]
            : [],
        ),
      ),
      value: order,
      gives: [['pavers', k, 'order']],
    }),
  );
