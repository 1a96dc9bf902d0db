import { present } from '../../../invariant.js';
import { given } from '../../../working.js';
import { placeBy, take, worked, type PlacedStep } from '../placed.js';
import { at, inJob, type SupplyBasis } from '../supply-basis.js';
import { paverIndex } from '../materials.js';
import { fabricSteps } from './fabric-steps.js';
import { restraintSteps } from './restraint-steps.js';

/** The working of the supplies of a pavement. Internal. */
export const supplySteps = (basis: SupplyBasis): PlacedStep[] => [
  ...sandSteps(basis),
  ...restraintSteps(basis),
  ...fabricSteps(basis),
];

function sandSteps({ job, pavement, plan, paver, made }: SupplyBasis): PlacedStep[] {
  const { jointSand: sand } = plan.supplies;
  const asked = job.materials.jointSand;
  if (sand === null || asked === undefined || paver === null) return [];
  const { recess, riseFromBed, bag } = asked;
  const pavers = pavement.layers.flatMap(({ kind, thickness }, k) =>
    kind === 'paver' ? [{ thickness, path: ['given', 'layers', k, 'thickness'] }] : [],
  );
  const less = [
    ...(recess === undefined
      ? []
      : [take('c', 'recess below the top', recess, inJob('jointSand', 'recess'))]),
    ...(riseFromBed === undefined
      ? []
      : [
          take('r', 'bedding risen into the joint', riseFromBed, inJob('jointSand', 'riseFromBed')),
        ]),
  ];
  const index = paverIndex(job.materials, paver);
  const size = (field: string) => [['job', 'materials', 'pavers', index, field]];
  const depth = worked({
    title: 'Depth of the joints to fill',
    formula: ['h = sum(t)', ...less.map(({ input }) => input.symbol)].join(' - '),
    takes: [
      take(
        't',
        'thickness of the pavers',
        pavers.map(({ thickness }) => thickness),
        ...pavers.map(({ path }) => path),
      ),
      ...less,
    ],
    result: given('h', 'filled depth', sand.filledDepth),
    gives: [at('jointSand', 'filledDepth')],
  });
  const steps = placeBy(
    present(made.sand, 'joint sand').working,
    { V: [at('jointSand', 'volume')], M: [at('jointSand', 'mass')] },
    {
      A: [['areas', 'paving']],
      l: size('length'),
      w: size('width'),
      j: size('joint'),
      h: [at('jointSand', 'filledDepth')],
      d: [inJob('jointSand', 'density')],
      V: [at('jointSand', 'volume')],
      ...(asked.waste === undefined ? {} : { q: [inJob('jointSand', 'waste')] }),
    },
  );
  const { bags, surplus, mass } = sand;
  if (bag === undefined || bags === null || surplus === null) return [depth, ...steps];
  const one = take('b', 'one bag', bag, inJob('jointSand', 'bag'));
  const all = take('M', 'mass', mass, at('jointSand', 'mass'));
  return [
    depth,
    ...steps,
    worked({
      title: 'Bags of joint sand',
      formula: 'n = ceil(M / b)',
      takes: [all, one],
      result: given('n', 'bags of joint sand', bags),
      gives: [at('jointSand', 'bags')],
    }),
    worked({
      title: 'Joint sand left over',
      formula: 's = n * b - M',
      takes: [take('n', 'bags of joint sand', bags, at('jointSand', 'bags')), one, all],
      result: given('s', 'joint sand left over', surplus),
      gives: [at('jointSand', 'surplus')],
    }),
  ];
}
