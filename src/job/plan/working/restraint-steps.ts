import { entry, present } from '../../../invariant.js';
import { given } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { placeBy, take, worked, type PlacedStep } from '../placed.js';
import { at, inJob, type SupplyBasis } from '../supply-basis.js';
import type { RestraintRun } from '../../../materials/edging/edge-restraint.js';

type RestraintOfJob = NonNullable<ReadJob['materials']['edgeRestraint']>;

/** The working of the edge restraint. Internal. */
export function restraintSteps({ job, plan, made }: SupplyBasis): PlacedStep[] {
  const { edgeRestraint: restraint } = plan.supplies;
  const asked = job.materials.edgeRestraint;
  if (restraint === null || asked === undefined || made.restraint === null) return [];
  const runs = restraint.runs.flatMap((run, k) => runSteps(run, k, { asked, plan, made }));
  const totals = (['pieces', 'spikes'] as const).map((field) =>
    worked({
      title: `All ${field} of the edge restraint`,
      formula: 'N = sum(n)',
      takes: [
        take(
          'n',
          `${field} of each run`,
          restraint.runs.map((run) => run[field]),
          // a run against a wall takes none
          ...(restraint.runs.every(({ spacing }) => spacing !== null)
            ? restraint.runs.map((_, k) => at('edgeRestraint', 'runs', k, field))
            : []),
        ),
      ],
      result: given('N', `all ${field}`, restraint[field]),
      gives: [at('edgeRestraint', field)],
    }),
  );
  return [...runs, ...totals];
}

/** One run: its length, pieces, spikes and what is left over. */
function runSteps(
  run: RestraintRun,
  k: number,
  { asked, plan, made }: Pick<SupplyBasis, 'plan' | 'made'> & { readonly asked: RestraintOfJob },
): PlacedStep[] {
  const { runs: edgesOf } = made;
  const to = (field: string) => at('edgeRestraint', 'runs', k, field);
  const own = entry(edgesOf, k);
  const { edges } = own;
  const length = worked({
    title: `Length of run ${k + 1}`,
    formula: 'L = sum(l)',
    takes: [
      take(
        'l',
        'length of each edge of the run',
        edges.map((edge) => entry(plan.edges, edge - 1).length),
        ...edges.map((edge) => ['edges', edge - 1, 'length']),
      ),
    ],
    result: given('L', 'run', run.length),
    gives: [to('length')],
  });
  const isCurved = own.isCurved && asked.curvedSpikeSpacing !== undefined;
  const spacing = inJob('edgeRestraint', isCurved ? 'curvedSpikeSpacing' : 'spikeSpacing');
  const ownSteps = present(made.restraint, 'edge restraint').working.filter(({ title }) =>
    new RegExp(` (run|ring) ${k + 1}$`).test(title),
  );
  const placed = placeBy(
    ownSteps,
    { p: [to('pieces')], n: [to('spikes')] },
    {
      L: [to('length')],
      P: [inJob('edgeRestraint', 'piece')],
      ...(asked.lap === undefined ? {} : { o: [inJob('edgeRestraint', 'lap')] }),
      p: [to('pieces')],
      s: [spacing],
    },
  );
  const piece = ownSteps.find(({ result }) => result.symbol === 'p');
  const spike = ownSteps.find(({ result }) => result.symbol === 'n');
  const [P, o] = ['P', 'o'].map((symbol) => piece?.given.find((one) => one.symbol === symbol));
  const s = spike?.given.find((one) => one.symbol === 's');
  if (run.spacing === null || P === undefined || o === undefined || s === undefined) {
    return [length, ...placed];
  }
  const isRing = own.isClosed;
  const L = take('L', 'run', run.length, to('length'));
  return [
    length,
    ...placed,
    worked({
      title: `Spacing of the spikes of run ${k + 1}`,
      formula: 'e = L / ceil(L / s)',
      takes: [L, { input: s, from: [spacing] }],
      result: given('e', 'spacing of the spikes', run.spacing),
      gives: [to('spacing')],
    }),
    worked({
      title: `Left over of the last piece of run ${k + 1}`,
      formula: isRing ? 'c = P * p - o * p - L' : 'c = P * p - o * (p - 1) - L',
      takes: [
        { input: P, from: [inJob('edgeRestraint', 'piece')] },
        take('p', 'pieces', run.pieces, to('pieces')),
        { input: o, from: asked.lap === undefined ? [] : [inJob('edgeRestraint', 'lap')] },
        L,
      ],
      result: given('c', 'left over of the last piece', run.surplus),
      gives: [to('surplus')],
    }),
  ];
}
