import type { FieldPath } from '../../errors.js';
import { materialList, type MaterialLine } from '../order/material-list.js';
import type { JobPlan, StreamPlan } from '../plan/plan.js';
import { presence, valueOf, type EntryOwner, type PlanEntry } from './plan-entry.js';

/** What is compared of the orders and loads of a job. Internal. */
export function orderEntries(plan: JobPlan): PlanEntry[] {
  const { totals } = plan;
  const { spoil } = totals;
  return [
    ...materialList(plan).lines.flatMap((line) => lineEntries(plan, line)),
    ...totals.oldPaving.flatMap((old, at) =>
      streamEntries(
        {
          about: 'haul',
          subject: `old ${old.material}`,
          key: `old ${old.material} ${old.density.toNumber('kg/m3').toPrecision(9)}`,
          path: ['totals', 'oldPaving', at],
        },
        old,
      ),
    ),
    ...(spoil === null
      ? []
      : streamEntries(
          { about: 'haul', subject: 'soil', key: 'soil', path: ['totals', 'spoil'] },
          spoil,
        )),
    ...areaEntries(plan),
  ];
}

const areaEntries = ({ totals }: JobPlan): PlanEntry[] => {
  const owner: EntryOwner = { about: 'area', subject: 'job', key: 'job areas', path: ['totals'] };
  return [
    { ...valueOf(owner, ['digArea'], 'area of all digs', totals.digArea), owner: null },
    { ...valueOf(owner, ['baseArea'], 'area of all bases', totals.baseArea), owner: null },
  ];
};

const streamEntries = (owner: EntryOwner, { loose, mass, loads }: StreamPlan): PlanEntry[] => [
  presence(owner, 'loose', loose.volume, { at: ['loose', 'volume'] }),
  valueOf(owner, ['mass'], 'weight', mass),
  valueOf(owner, ['loads', 'count'], 'loads', loads.count, { about: 'loads' }),
];

/** A line of the order list; what comes loose has its own totals. */
function lineEntries(plan: JobPlan, line: MaterialLine): PlanEntry[] {
  const { kind, material, name, need, ordered, packs } = line;
  const owner: EntryOwner = {
    about: 'order',
    subject: name,
    key: `order ${kind} ${material ?? ''}`,
    path: pathOf(plan, line),
  };
  const total = [...plan.totals.stones, ...plan.totals.sands].find(
    (one) => one.material === material,
  );
  const isLoose = (kind === 'stone' || kind === 'sand') && total !== undefined;
  return [
    ...(isLoose
      ? [
          ...streamEntries(owner, total),
          valueOf(owner, ['compacted', 'volume'], 'compacted', total.compacted.volume),
        ]
      : [presence(owner, 'needed', need)]),
    ...(packs.length === 0
      ? []
      : [
          valueOf(owner, [], 'to order', ordered),
          valueOf(
            owner,
            [],
            'packs',
            packs.map(({ name: pack, count }) => `${count} x ${pack}`).join(', '),
          ),
        ]),
  ];
}

/** Where the plan has a line of the order list: among the totals, else in the materials of the job. */
function pathOf({ totals }: JobPlan, { kind, material }: MaterialLine): FieldPath {
  const within = (list: string, index: number): FieldPath => ['totals', list, index];
  switch (kind) {
    case 'stone':
      return within(
        'stones',
        totals.stones.findIndex((one) => one.material === material),
      );
    case 'sand':
      return within(
        'sands',
        totals.sands.findIndex((one) => one.material === material),
      );
    case 'pavers':
      return within(
        'pavers',
        totals.pavers.findIndex(({ paver }) => paver === material),
      );
    case 'joint-sand':
      return ['job', 'materials', 'jointSand'];
    case 'edge-restraint':
    case 'spikes':
      return ['job', 'materials', 'edgeRestraint'];
    case 'geotextile':
      return ['job', 'materials', 'geotextile'];
  }
}
