import type { BerggrenDepth } from '../../../ground/frost/berggren-depth.js';
import { SURFACE_FACTORS } from '../../../sources/frost-figures.js';
import type { Length } from '../../../units/quantity.js';
import { given, procedureStep, published, type StepInput } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { isStone } from '../../schema/layer-kinds.js';
import { looseOf } from '../materials.js';
import { place, take, worked, type PlacedStep, type Placing } from '../placed.js';
import type { GroundBasis } from '../plan-ground.js';

type Frost = NonNullable<NonNullable<ReadJob['ground']>['frost']>;
type Site = Pick<GroundBasis, 'job' | 'pavement'>;

/** The part of the job that says how cold it gets. Internal. */
export const WINTER = ['job', 'ground', 'frost'] as const;

/** What was worked out of the frost under a pavement. */
interface Found {
  readonly built: BerggrenDepth;
  readonly endless: BerggrenDepth;
  readonly total: Length;
  readonly above: Length;
  readonly into: Length;
}

/** The depths of frost from the fields of the job, and how far frost goes into the subgrade. Internal. */
export function frostSteps(site: Site, frost: Frost, found: Found): PlacedStep[] {
  const winter = winterOf(site, frost);
  return [
    depthsStep(winter, frost, found),
    ...(found.into.isZero() ? [] : [subgradeStep(found)]),
    inBaseStep(winter, found),
    aboveStep(site, found),
  ];
}

interface Winter {
  readonly inputs: readonly StepInput[];
  readonly takes: Placing['takes'];
}

/** The winter and the base, as the job has them. */
function winterOf({ job, pavement }: Site, frost: Frost): Winter {
  const stone = pavement.layers.find(isStone)?.material;
  const index = job.materials.stones.findIndex(({ id }) => id === stone);
  const { airIndex, meanAnnual, surface = 'concrete' } = frost;
  const factor = Number(SURFACE_FACTORS[surface].value);
  const { compactedDryDensity } = looseOf(job.materials.stones, stone);
  return {
    inputs: [
      given('F', `freezing index of the air, in ${airIndex.unit}`, airIndex.value),
      published('n', 'factor of the surface', factor, 'surface-factors'),
      given('t', 'length of the freezing season in days', frost.seasonDays),
      given('v', `mean of the year, in degrees ${meanAnnual.unit}`, meanAnnual.value),
      given('d', 'dry density of the base', compactedDryDensity),
      given('w', 'moisture of the base', frost.baseMoisture),
    ],
    takes: {
      F: [[...WINTER, 'airIndex', 'value']],
      t: [[...WINTER, 'seasonDays']],
      v: [[...WINTER, 'meanAnnual', 'value']],
      d: [['job', 'materials', 'stones', index, 'compactedDryDensity']],
      w: [[...WINTER, 'baseMoisture']],
    },
  };
}

function depthsStep({ inputs, takes }: Winter, frost: Frost, { built, total }: Found): PlacedStep {
  const depths = procedureStep({
    title: 'Depths of frost under the layers',
    procedure: 'berggrenDepth',
    method:
      'goes down through the base and the subgrade until they have used up the index of the surface: with the coefficient in closed form, and with that of two zones',
    given: [
      ...inputs,
      given('T', 'layers, all as base', total),
      given('ds', 'dry density of the subgrade', frost.dryDensity),
      given('ws', 'moisture of the subgrade', frost.moisture),
    ],
    result: given('X', 'depths of frost', [built.depth, built.twoZoneDepth]),
    source: 'frost-depth-formula',
  });
  const gives = [
    ['ground', 'frost', 'depth'],
    ['ground', 'frost', 'twoZoneDepth'],
  ];
  return place(depths, gives, {
    ...takes,
    T: [['buildUp', 'total']],
    ds: [[...WINTER, 'dryDensity']],
    ws: [[...WINTER, 'moisture']],
  });
}

const subgradeStep = ({ built, total, into }: Found): PlacedStep =>
  worked({
    title: 'Frost in the subgrade',
    formula: 'i = X - T',
    takes: [
      take('X', 'depth of frost under the layers', built.depth, ['ground', 'frost', 'depth']),
      take('T', 'layers', total, ['buildUp', 'total']),
    ],
    result: given('i', 'frost in the subgrade', into),
    gives: [['ground', 'frost', 'intoSubgrade']],
  });

function inBaseStep({ inputs, takes }: Winter, { endless }: Found): PlacedStep {
  const inBase = procedureStep({
    title: 'Depth of frost in base without end',
    procedure: 'berggrenDepth',
    method: 'goes down through base alone until it has used up the index of the surface',
    given: inputs,
    result: given('a', 'depth of frost', endless.depth),
    source: 'frost-depth-formula',
  });
  return place(inBase, [], takes);
}

function aboveStep({ pavement }: Site, { above }: Found): PlacedStep {
  const upper = pavement.layers.flatMap((layer, k) => (isStone(layer) ? [] : [{ layer, k }]));
  return worked({
    title: 'Pavers and bedding over the base',
    formula: 'p = sum(t)',
    takes: [
      take(
        't',
        'thickness of the layers above the base',
        upper.map(({ layer }) => layer.thickness),
        ...upper.map(({ k }) => ['given', 'layers', k, 'thickness']),
      ),
    ],
    result: given('p', 'pavers and bedding', above),
    gives: [],
  });
}
