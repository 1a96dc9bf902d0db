import { orderOfPacks } from '../../materials/packs/order-of-packs.js';
import { packsOf, type OrderPacks } from '../../materials/packs/order-packs.js';
import { sum } from '../../units/aggregate.js';
import type { Decimal } from '../../units/decimal.js';
import {
  exactOf,
  type AnyQuantity,
  type Area,
  type Mass,
  type Quantity,
  type Volume,
} from '../../units/quantity.js';
import { decimalRatio, wholeRatio } from '../../units/ratio.js';
import { withWorking, type Step, type Worked } from '../../working.js';
import type { BaseOrder } from '../../volumes/base-order.js';
import type { JobPlan, LooseTotalPlan, PavementPlan } from '../plan/plan.js';
import { jobOfPlan } from '../saved/job-of-plan.js';
import { requirePlan } from '../require-plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { fabricRolls } from './fabric-rolls.js';

/** What is ordered. */
export type MaterialKind =
  'stone' | 'sand' | 'pavers' | 'joint-sand' | 'edge-restraint' | 'spikes' | 'geotextile';

/** An amount: a quantity, or a number of pieces. */
export type Amount = AnyQuantity | number;

/** One line of the order list. */
export interface MaterialLine {
  /** What is ordered. */
  readonly kind: MaterialKind;
  /** Id of the stone, sand or paver in the materials of the job; null for what has none. */
  readonly material: string | null;
  /** Name on the order. */
  readonly name: string;
  /** What `need`, `ordered` and `surplus` say: loose volume, mass, pieces, area. */
  readonly measure: 'loose-volume' | 'delivered-mass' | 'dry-mass' | 'pieces' | 'area';
  /** What each pavement needs. */
  readonly parts: readonly {
    /** Name of the pavement. */
    readonly pavement: string;
    /** Name of the layer, `fill` for what fills low ground; null for what is no layer. */
    readonly layer: string | null;
    /** What the pavement needs. */
    readonly need: Amount;
  }[];
  /** What the job needs, before packs. */
  readonly need: Amount;
  /** The need rounded up to what is sold; the need itself where no pack is given. */
  readonly ordered: Amount;
  /** What is left over of the order. */
  readonly surplus: Amount;
  /** The order as it comes, largest packs first; empty where no pack is given. */
  readonly packs: readonly {
    /** What a pack is called. */
    readonly name: string;
    /** How many packs. */
    readonly count: number;
  }[];
  /** Truck loads, for what comes loose. */
  readonly loads: number | null;
}

/** The order list of a job. */
export interface MaterialList extends Worked {
  /** Tells an order list from other results. */
  readonly kind: 'settline-materials';
  /** Name of the site. */
  readonly name: string;
  /** One line for each material. */
  readonly lines: readonly MaterialLine[];
}

/**
 * The order list of a planned job: each stone and sand loose, units of each paver, and joint sand, edge restraint,
 * spikes and fabric if the job includes them, each by pavement and in total, rounded up to what is
 * sold with what is left over. The packs are in `materials` of the job; without one the need stands
 * as it is, and loose goods come in truck loads. The fabric of all pavements is cut from the same rolls.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @returns a frozen list; `JSON.stringify` keeps all of it but the working
 * @throws `PLAN_INVALID` if it is not a plan
 * @source derived
 * @example
 * const list = materialList(planJob(job));
 * list.lines.map(({ kind }) => kind) //=> ['stone', 'sand', 'pavers']
 * list.lines[2]?.ordered //=> 6817
 */
export function materialList(plan: JobPlan): MaterialList {
  requirePlan(plan);
  const job = jobOfPlan(plan);
  const worked: Worked[] = [];
  const { stones, sands } = plan.totals;
  const lines = [
    ...stones.map((total) => looseLine(plan, job, { kind: 'stone', total, worked })),
    ...sands.map((total) => looseLine(plan, job, { kind: 'sand', total, worked })),
    ...paverLines(plan, job, worked),
    ...sandLines(plan, job),
    ...restraintLines(plan),
    ...fabricLines(plan, job, worked),
  ];
  return withWorking({ kind: 'settline-materials', name: plan.name, lines } as const, () =>
    worked.flatMap(({ working }): readonly Step[] => working),
  );
}

interface Part<A extends Amount> {
  readonly pavement: string;
  readonly layer: string | null;
  readonly need: A;
}

/** Runs through the pavements that have a part. */
function partsOf<T, A extends Amount>(
  { pavements }: JobPlan,
  part: (pavement: PavementPlan) => T | null,
  need: (part: T) => A,
): Part<A>[] {
  return pavements.flatMap((pavement) => {
    const found = part(pavement);
    return found === null ? [] : [{ pavement: pavement.name, layer: null, need: need(found) }];
  });
}

/** Runs through the layers that are made of a stone or sand. */
const layersOf = <A extends Amount>(
  { pavements }: JobPlan,
  material: string,
  need: (order: BaseOrder) => A,
): Part<A>[] =>
  pavements.flatMap(({ name, stones, bedding }) =>
    [...stones, bedding].flatMap((one) =>
      one.material === material
        ? [{ pavement: name, layer: one.layer, need: need(one.order) }]
        : [],
    ),
  );

interface LooseBasis {
  readonly kind: 'stone' | 'sand';
  readonly total: LooseTotalPlan;
  readonly worked: Worked[];
}

/** A stone or sand, in its pack by mass or by volume, or loose. */
function looseLine(plan: JobPlan, job: ReadJob, { kind, total, worked }: LooseBasis): MaterialLine {
  const { material, name } = total;
  const head = { kind, material, name };
  const loads = total.loads.count;
  const group: readonly Loose[] = kind === 'stone' ? job.materials.stones : job.materials.sands;
  const pack = group.find(({ id }) => id === material)?.pack;
  if (pack?.mass !== undefined) {
    const parts = layersOf(plan, material, ({ deliveredMass }) => deliveredMass);
    const need = sum(parts.map(({ need: one }): Mass => one));
    const made = inPacks('mass', need, pack.mass, pack);
    worked.push(made);
    return { ...head, measure: 'delivered-mass', parts, ...orderedAs(made), loads };
  }
  const parts = layersOf(plan, material, ({ loose }) => loose.volume);
  const need = sum(parts.map(({ need: one }): Volume => one));
  if (pack?.volume === undefined) {
    return { ...head, measure: 'loose-volume', parts, ...asNeeded(need), loads };
  }
  const made = inPacks('volume', need, pack.volume, pack);
  worked.push(made);
  return { ...head, measure: 'loose-volume', parts, ...orderedAs(made), loads };
}

type Loose = Omit<ReadJob['materials']['sands'][number], 'settlement'>;

/** The need itself, where no pack is given. */
const asNeeded = <Q extends Mass | Volume | Area>(need: Q) => ({
  need,
  ordered: need,
  surplus: need.times(0),
  packs: [],
});

interface NamedPack {
  readonly name: string;
  /** Minimum order in packs. */
  readonly minimum?: Decimal | undefined;
}

/** A mass or a volume in packs of one size. */
const inPacks = <D extends 'mass' | 'volume'>(
  measure: D,
  need: Quantity<D>,
  holds: Quantity<D>,
  { name, minimum }: NamedPack,
): OrderPacks<Quantity<D>> =>
  packsOf(
    orderOfPacks({
      measure,
      need: exactOf(need),
      packs: [{ name, holds: exactOf(holds) }],
      minimum: minimum === undefined ? undefined : decimalRatio(minimum),
    }),
  ) as OrderPacks<Quantity<D>>;

const orderedAs = <A extends Amount>({
  need,
  ordered,
  surplus,
  load,
}: Pick<OrderPacks<A>, 'need' | 'ordered' | 'surplus' | 'load'>) => ({
  need,
  ordered,
  surplus,
  packs: load,
});

const added = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

interface Head {
  readonly kind: MaterialKind;
  readonly material: string | null;
  readonly name: string;
}

const plain = (kind: MaterialKind, name: string): Head => ({ kind, material: null, name });

/** What is counted in pieces and sold by the piece. */
function piecesLine(head: Head, parts: readonly Part<number>[]): MaterialLine[] {
  if (parts.length === 0) return [];
  const need = added(parts.map((part) => part.need));
  const measure = 'pieces';
  return [{ ...head, measure, parts, need, ordered: need, surplus: 0, packs: [], loads: null }];
}

const paverLines = (plan: JobPlan, job: ReadJob, worked: Worked[]): MaterialLine[] =>
  plan.totals.pavers.flatMap(({ paver: id, name, order: units }) => {
    const parts = partsOf(
      plan,
      ({ pavers }) => pavers?.orders.find(({ paver }) => paver === id) ?? null,
      ({ order }) => order,
    );
    const lines = piecesLine({ kind: 'pavers', material: id, name }, parts);
    const packs = job.materials.pavers?.find((paver) => paver.id === id)?.packs;
    if (packs === undefined) return lines;
    const made = packsOf(
      orderOfPacks({
        measure: 'units',
        need: wholeRatio(units),
        packs: packs.map(({ name: pack, holds }) => ({ name: pack, holds: wholeRatio(holds) })),
      }),
    );
    worked.push(made);
    return lines.map((line) => ({ ...line, ...orderedAs(made) }));
  });

function sandLines(plan: JobPlan, job: ReadJob): MaterialLine[] {
  const parts = partsOf(
    plan,
    ({ supplies }) => supplies.jointSand,
    ({ mass }) => mass,
  );
  if (parts.length === 0) return [];
  const need = sum(parts.map((part): Mass => part.need));
  const head = plain('joint-sand', 'joint sand');
  const bag = job.materials.jointSand?.bag;
  if (bag === undefined) {
    return [{ ...head, measure: 'dry-mass', parts, ...asNeeded(need), loads: null }];
  }
  const made = inPacks('mass', need, bag, { name: 'bag' });
  return [{ ...head, measure: 'dry-mass', parts, ...orderedAs(made), loads: null }];
}

function restraintLines(plan: JobPlan): MaterialLine[] {
  const of = ({ supplies }: PavementPlan) => supplies.edgeRestraint;
  return [
    ...piecesLine(
      plain('edge-restraint', 'edge restraint, pieces'),
      partsOf(plan, of, ({ pieces }) => pieces),
    ),
    ...piecesLine(
      plain('spikes', 'spikes'),
      partsOf(plan, of, ({ spikes }) => spikes),
    ),
  ];
}

/** Fabric: the strips of all pavements are cut from the same rolls. */
function fabricLines(plan: JobPlan, job: ReadJob, worked: Worked[]): MaterialLine[] {
  const of = ({ supplies }: PavementPlan) => supplies.geotextile;
  const parts = partsOf(plan, of, ({ fabricArea }) => fabricArea);
  if (parts.length === 0) return [];
  const line = {
    ...plain('geotextile', 'geotextile'),
    measure: 'area',
    parts,
    loads: null,
  } as const;
  const asked = job.materials.geotextile;
  if (asked?.rollLength === undefined) {
    return [{ ...line, ...asNeeded(sum(parts.map((part): Area => part.need))) }];
  }
  const made = fabricRolls(
    plan.pavements.flatMap((pavement) => of(pavement) ?? []),
    {
      width: asked.rollWidth,
      overlap: asked.overlap,
      length: asked.rollLength,
      endLap: asked.endLap ?? asked.overlap,
    },
  );
  worked.push(made);
  return [{ ...line, ...orderedAs(made) }];
}
