import { orderPacks, type OrderPacks } from '../../materials/packs/order-packs.js';
import { sum } from '../../units/aggregate.js';
import type { AnyQuantity, Mass, Volume } from '../../units/quantity.js';
import { withWorking, type Step, type Worked } from '../../working.js';
import type { JobPlan, PavementPlan } from '../plan/plan.js';
import { readWholeJob } from '../read/read-job.js';
import { requirePlan } from '../require-plan.js';
import type { ReadJob } from '../schema/job-shape.js';

/** What a job orders. */
export type MaterialName =
  'base' | 'bedding' | 'pavers' | 'joint-sand' | 'edge-restraint' | 'spikes' | 'geotextile';

/** An amount: a quantity, or a number of pieces. */
export type Amount = AnyQuantity | number;

/** One line of the order list. */
export interface MaterialLine {
  /** What is ordered. */
  readonly material: MaterialName;
  /** What `need`, `ordered` and `surplus` say: loose volume, mass, pieces, rolls ... */
  readonly measure: 'loose-volume' | 'delivered-mass' | 'dry-mass' | 'pieces' | 'rolls' | 'area';
  /** What each pavement needs. */
  readonly parts: readonly {
    /** Name of the pavement. */
    readonly pavement: string;
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
 * The order list of a planned job: base and bedding loose, units, and joint sand, edge restraint,
 * spikes and fabric where the job asks for them, each by pavement and in all, rounded up to what is
 * sold with what is left over. The packs stand in `materials` of the job; without one the need stands
 * as it is, and loose goods come in truck loads.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @returns a frozen list; `JSON.stringify` keeps all of it but the working
 * @throws `PLAN_INVALID` for what is no plan
 * @source derived
 * @example
 * const list = materialList(planJob(job));
 * list.lines.map(({ material }) => material) //=> ['base', 'bedding', 'pavers']
 * list.lines[2]?.ordered //=> 6817
 */
export function materialList(plan: JobPlan): MaterialList {
  requirePlan(plan);
  const job = readWholeJob(plan.job);
  const worked: Worked[] = [];
  const lines = [
    stoneLine(plan, job, { material: 'base', worked }),
    stoneLine(plan, job, { material: 'bedding', worked }),
    ...paverLines(plan, job, worked),
    ...sandLines(plan),
    ...restraintLines(plan),
    ...fabricLines(plan),
  ];
  return withWorking({ kind: 'settline-materials', name: plan.name, lines } as const, () =>
    worked.flatMap(({ working }): readonly Step[] => working),
  );
}

/** Runs through the pavements that have a part. */
function partsOf<T, A extends Amount>(
  { pavements }: JobPlan,
  part: (pavement: PavementPlan) => T | null,
  need: (part: T) => A,
): { readonly pavement: string; readonly need: A }[] {
  return pavements.flatMap((pavement) => {
    const found = part(pavement);
    return found === null ? [] : [{ pavement: pavement.name, need: need(found) }];
  });
}

type StoneName = 'base' | 'bedding';

function stoneLine(
  plan: JobPlan,
  job: ReadJob,
  { material, worked }: { readonly material: StoneName; readonly worked: Worked[] },
): MaterialLine {
  const loads = plan.totals[material].loads.count;
  const pack = job.materials?.packs?.[material];
  const order = (pavement: PavementPlan) => pavement[material];
  if (pack?.mass !== undefined) {
    const parts = partsOf(plan, order, ({ deliveredMass }) => deliveredMass);
    const made = orderPacks({
      mass: sum(parts.map(({ need }): Mass => need)),
      packs: [{ name: pack.name, holds: pack.mass }],
      ...smallest(pack.minimum),
    });
    worked.push(made);
    return { material, measure: 'delivered-mass', parts, ...orderedAs(made), loads };
  }
  const parts = partsOf(plan, order, ({ loose }) => loose.volume);
  const need = sum(parts.map(({ need: one }): Volume => one));
  if (pack?.volume === undefined) {
    const surplus = need.minus(need);
    return {
      material,
      measure: 'loose-volume',
      parts,
      need,
      ordered: need,
      surplus,
      packs: [],
      loads,
    };
  }
  const made = orderPacks({
    volume: need,
    packs: [{ name: pack.name, holds: pack.volume }],
    ...smallest(pack.minimum),
  });
  worked.push(made);
  return { material, measure: 'loose-volume', parts, ...orderedAs(made), loads };
}

const smallest = (minimum: { toString: () => string } | undefined) =>
  minimum === undefined ? {} : { minimum: minimum.toString() };

const orderedAs = <A extends Amount>({ need, ordered, surplus, load }: OrderPacks<A>) => ({
  need,
  ordered,
  surplus,
  packs: load,
});

const added = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** What is counted in pieces and sold by the piece. */
function piecesLine(
  material: MaterialName,
  measure: 'pieces' | 'rolls',
  parts: readonly { readonly pavement: string; readonly need: number }[],
): MaterialLine[] {
  if (parts.length === 0) return [];
  const need = added(parts.map((part) => part.need));
  return [{ material, measure, parts, need, ordered: need, surplus: 0, packs: [], loads: null }];
}

function paverLines(plan: JobPlan, job: ReadJob, worked: Worked[]): MaterialLine[] {
  const parts = partsOf(
    plan,
    ({ pavers }) => pavers,
    ({ order }) => order,
  );
  const packs = job.materials?.packs?.pavers;
  const [line] = piecesLine('pavers', 'pieces', parts);
  if (line === undefined || packs === undefined) return line === undefined ? [] : [line];
  const made = orderPacks({
    units: added(parts.map(({ need }) => need)),
    packs: packs,
  });
  worked.push(made);
  return [{ ...line, ...orderedAs(made) }];
}

function sandLines(plan: JobPlan): MaterialLine[] {
  const of = ({ supplies }: PavementPlan) => supplies.jointSand;
  const parts = partsOf(plan, of, ({ mass }) => mass);
  if (parts.length === 0) return [];
  const need = sum(parts.map((part): Mass => part.need));
  const bag = plan.job.materials?.jointSand?.bag;
  if (bag === undefined) {
    const surplus = need.minus(need);
    return [
      {
        material: 'joint-sand',
        measure: 'dry-mass',
        parts,
        need,
        ordered: need,
        surplus,
        packs: [],
        loads: null,
      },
    ];
  }
  const made = orderPacks({ mass: need, packs: [{ name: 'bag', holds: bag }] });
  return [{ material: 'joint-sand', measure: 'dry-mass', parts, ...orderedAs(made), loads: null }];
}

function restraintLines(plan: JobPlan): MaterialLine[] {
  const of = ({ supplies }: PavementPlan) => supplies.edgeRestraint;
  return [
    ...piecesLine(
      'edge-restraint',
      'pieces',
      partsOf(plan, of, ({ pieces }) => pieces),
    ),
    ...piecesLine(
      'spikes',
      'pieces',
      partsOf(plan, of, ({ spikes }) => spikes),
    ),
  ];
}

function fabricLines(plan: JobPlan): MaterialLine[] {
  const of = ({ supplies }: PavementPlan) => supplies.geotextile;
  const areas = partsOf(plan, of, ({ fabricArea }) => fabricArea);
  if (areas.length === 0) return [];
  const rolls = partsOf(
    plan,
    (pavement) => of(pavement)?.rolls ?? null,
    (count) => count,
  );
  if (rolls.length > 0) return piecesLine('geotextile', 'rolls', rolls);
  const need = sum(areas.map((part) => part.need));
  const surplus = need.minus(need);
  return [
    {
      material: 'geotextile',
      measure: 'area',
      parts: areas,
      need,
      ordered: need,
      surplus,
      packs: [],
      loads: null,
    },
  ];
}
