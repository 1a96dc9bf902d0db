import type { EdgePlan, JobPlan, LiftPlan, PavementPlan } from '../plan/plan.js';
import { presence, valueOf, type EntryOwner, type PlanEntry } from './plan-entry.js';

/** What is compared of every pavement. Internal. */
export const pavementEntries = ({ pavements }: JobPlan): PlanEntry[] =>
  pavements.flatMap((pavement, index) => {
    const owner: EntryOwner = {
      about: 'pavement',
      subject: pavement.name,
      key: `pavement ${pavement.id}`,
      path: ['pavements', index],
    };
    return [
      presence(owner, 'name', pavement.name, { at: ['name'] }),
      ...layerEntries(owner, pavement),
      ...depthEntries(owner, pavement),
      ...pavement.lifts.flatMap((lift, at) => liftEntries(owner, lift, at)),
      ...pavement.edges.flatMap((edge, at) => edgeEntries(owner, edge, at)),
      ...areaEntries(owner, pavement),
    ];
  });

const layerEntries = (owner: EntryOwner, { buildUp }: PavementPlan): PlanEntry[] =>
  buildUp.layers.map(({ name, thickness }, at) =>
    valueOf(owner, ['buildUp', 'layers', at, 'thickness'], `thickness of ${name}`, thickness, {
      about: 'layer',
    }),
  );

function depthEntries(owner: EntryOwner, pavement: PavementPlan): PlanEntry[] {
  const { dig, buildUp, settlement, earth, grade, nearby } = pavement;
  const about = { about: 'depth' } as const;
  return [
    valueOf(owner, ['buildUp', 'total'], 'depth of all layers', buildUp.total, about),
    valueOf(owner, ['dig', 'depth'], 'depth of dig, on average', dig.depth, about),
    valueOf(owner, ['dig', 'soil'], 'depth of soil to dig, on average', dig.soil, about),
    valueOf(owner, ['settlement'], 'settlement of the bedding', settlement, about),
    valueOf(owner, ['earth', 'deepestCut'], 'deepest dig', earth.deepestCut?.depth ?? null, about),
    valueOf(
      owner,
      ['earth', 'deepestFill'],
      'deepest fill',
      earth.deepestFill?.depth ?? null,
      about,
    ),
    valueOf(owner, ['earth', 'cut', 'volume'], 'soil to dig, bank', earth.cut.volume, about),
    valueOf(owner, ['earth', 'fill', 'volume'], 'fill, compacted', earth.fill.volume, about),
    valueOf(owner, ['nearby', 'handDig'], 'to dig by hand', nearby.handDig?.volume ?? null, about),
    valueOf(owner, ['grade'], 'flattest fall', grade?.flattest ?? null, about),
    valueOf(owner, ['grade'], 'steepest fall', grade?.steepest ?? null, about),
  ];
}

const liftEntries = (
  owner: EntryOwner,
  { lift, layer, loose, compacted }: LiftPlan,
  at: number,
): PlanEntry[] => {
  const key = `${owner.key} lift ${lift}`;
  const one: EntryOwner = {
    about: 'layer',
    subject: owner.subject,
    key,
    path: [...owner.path, 'lifts', at],
  };
  return [
    presence(one, `lift ${lift}, compacted`, compacted, { owner: owner.key, at: ['compacted'] }),
    valueOf(one, ['loose'], `lift ${lift}, loose`, loose),
    valueOf(one, ['layer'], `layer of lift ${lift}`, layer),
  ];
};

const edgeEntries = (
  owner: EntryOwner,
  { edge, kind, length, base, top }: EdgePlan,
  at: number,
): PlanEntry[] => {
  const one: EntryOwner = {
    about: 'edge',
    subject: owner.subject,
    key: `${owner.key} edge ${edge}`,
    path: [...owner.path, 'edges', at],
  };
  return [
    presence(one, `dig line outside edge ${edge}`, top, { owner: owner.key, at: ['top'] }),
    valueOf(one, ['base'], `base outside edge ${edge}`, base),
    valueOf(one, ['length'], `length of edge ${edge}`, length, { printed: 'length' }),
    valueOf(one, ['kind'], `what lies along edge ${edge}`, kind),
  ];
};

const areaEntries = (owner: EntryOwner, { areas, top }: PavementPlan): PlanEntry[] => [
  valueOf(owner, ['areas', 'paving'], 'area of paving', areas.paving, { about: 'area' }),
  valueOf(owner, ['areas', 'base'], 'area of base', areas.base, { about: 'area' }),
  valueOf(owner, ['areas', 'dig'], 'area of dig', areas.dig, { about: 'area' }),
  valueOf(owner, ['top'], 'area of dig at the top of sloped sides', top?.area ?? null, {
    about: 'area',
  }),
];
