import type { FieldPath } from '../../../errors.js';
import { given } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { done, place, take, worked, type PlacedStep, type Taken } from '../placed.js';
import type { SuppliesPlan } from '../plan-of-site.js';
import { at, inJob, type SupplyBasis } from '../supply-basis.js';

type Fabric = NonNullable<SuppliesPlan['geotextile']>;
type Laying = Fabric | Fabric['across'];
type FabricOfJob = NonNullable<ReadJob['materials']['geotextile']>;

/** The working of the geotextile. Internal. */
export function fabricSteps({ job, plan, made }: SupplyBasis): PlacedStep[] {
  const { geotextile: fabric } = plan.supplies;
  const asked = job.materials.geotextile;
  if (fabric === null || asked === undefined) return [];
  const dig = take('A', 'area of the dig', plan.areas.dig, ['areas', 'dig']);
  const upturn =
    asked.upturn === undefined
      ? []
      : [take('u', 'upturn', asked.upturn, inJob('geotextile', 'upturn'))];
  const covered = done({
    title: 'Area covered with geotextile',
    procedure: 'geotextile',
    method:
      'Moves the outline of the dig out by the upturns, and returns the area inside, holes covered.',
    takes: [dig, ...upturn],
    result: given('K', 'area covered with geotextile', fabric.coveredArea),
    gives: [at('geotextile', 'coveredArea')],
  });
  const length = made.fabric?.working.find(({ result }) => result.symbol === 'F');
  return [
    covered,
    ...layingSteps(fabric, asked, { to: at('geotextile'), dig, length }),
    ...layingSteps(fabric.across, asked, {
      to: at('geotextile', 'across'),
      dig,
      length: undefined,
    }),
  ];
}

function layingSteps(
  laying: Laying,
  asked: FabricOfJob,
  {
    to,
    dig,
    length,
  }: {
    readonly to: FieldPath;
    readonly dig: ReturnType<typeof take>;
    readonly length: PlacedStep | undefined;
  },
): PlacedStep[] {
  const { laid, totalLength } = laying;
  const roll = take('w', 'roll width', asked.rollWidth, inJob('geotextile', 'rollWidth'));
  const lap = take(
    'e',
    'end lap',
    asked.endLap ?? asked.overlap,
    inJob('geotextile', asked.endLap === undefined ? 'overlap' : 'endLap'),
  );
  const which = to.includes('across') ? ', laid the other way' : '';
  const strips = stripsStep(laying, asked, { to, dig, roll, which });
  const S = laid.map((_, k) => [...to, 'laid', k, 'length']);
  const p = laid.map((_, k) => [...to, 'laid', k, 'pieces']);
  const total = [[...to, 'totalLength']];
  const cut =
    length === undefined
      ? cutStep(laying, { S, p, lap, total, which })
      : place(length, total, { S, p, e: lap.from });
  const F = take('F', 'length of fabric', totalLength, ...total);
  return [
    strips,
    ...laid.map((strip, k) =>
      worked({
        title: `Fabric to cut for strip ${k + 1}${which}`,
        formula: 'f = S + (p - 1) * e',
        takes: [
          take('S', 'length of the strip', strip.length, ...S.slice(k, k + 1)),
          take('p', 'pieces of the strip', strip.pieces, ...p.slice(k, k + 1)),
          lap,
        ],
        result: given('f', 'fabric to cut for the strip', strip.cutLength),
        gives: [[...to, 'laid', k, 'cutLength']],
      }),
    ),
    worked({
      title: `Longest strip${which}`,
      formula: 's = max(S)',
      takes: [
        take(
          'S',
          'length of each strip',
          laid.map((strip) => strip.length),
          ...S,
        ),
      ],
      result: given('s', 'longest strip', laying.stripLength),
      gives: [[...to, 'stripLength']],
    }),
    cut,
    worked({
      title: `Area of the fabric${which}`,
      formula: 'A = F * w',
      takes: [F, roll],
      result: given('A', 'area of the fabric', laying.fabricArea),
      gives: [[...to, 'fabricArea']],
    }),
    ...rollSteps(laying, asked, { to, F, which }),
  ];
}

/** The fabric of all strips together, pieces end to end. */
const cutStep = (
  { laid, totalLength }: Laying,
  {
    S,
    p,
    lap,
    total,
    which,
  }: {
    readonly S: readonly FieldPath[];
    readonly p: readonly FieldPath[];
    readonly lap: Taken;
    readonly total: readonly FieldPath[];
    readonly which: string;
  },
): PlacedStep => {
  const lengths = laid.map((strip) => strip.length);
  const pieces = laid.map((strip) => strip.pieces);
  return worked({
    title: `Fabric to cut${which}`,
    formula: 'F = sum(S[i] + (p[i] - 1) * e)',
    takes: [
      take('S', 'length of each strip', lengths, ...S),
      take('p', 'pieces of each strip', pieces, ...p),
      lap,
    ],
    result: given('F', 'length of fabric', totalLength),
    gives: total,
  });
};

function rollSteps(
  { rolls, surplus }: Laying,
  asked: FabricOfJob,
  { to, F, which }: { readonly to: FieldPath; readonly F: Taken; readonly which: string },
): PlacedStep[] {
  if (rolls === null || surplus === null || asked.rollLength === undefined) return [];
  return [
    done({
      title: `Rolls of geotextile${which}`,
      procedure: 'geotextile',
      method: 'Cuts whole rolls and last pieces, which share rolls and are not pieced again.',
      takes: [F, take('R', 'roll length', asked.rollLength, inJob('geotextile', 'rollLength'))],
      result: given('n', 'rolls', rolls),
      gives: [[...to, 'rolls']],
    }),
    worked({
      title: `Fabric left over${which}`,
      formula: 'c = R * n - F',
      takes: [
        take('R', 'roll length', asked.rollLength, inJob('geotextile', 'rollLength')),
        take('n', 'rolls', rolls, [...to, 'rolls']),
        F,
      ],
      result: given('c', 'fabric left over', surplus),
      gives: [[...to, 'surplus']],
    }),
  ];
}

function stripsStep(
  { direction, laid }: Laying,
  asked: FabricOfJob,
  {
    to,
    dig,
    roll,
    which,
  }: { readonly to: FieldPath; readonly dig: Taken; readonly roll: Taken; readonly which: string },
): PlacedStep {
  return done({
    title: `Strips of geotextile${which}`,
    procedure: 'geotextile',
    method:
      'Lays strips along an edge of the dig, lapped at their sides, and returns the direction, the length of each strip and its pieces.',
    takes: [dig, roll, take('o', 'overlap', asked.overlap, inJob('geotextile', 'overlap'))],
    result: given('S', 'direction, length and pieces of each strip', [
      direction.azimuth,
      ...laid.map((strip) => strip.length),
      ...laid.map(({ pieces }) => pieces),
    ]),
    gives: [
      [...to, 'direction', 'azimuth'],
      ...laid.map((_, k) => [...to, 'laid', k, 'length']),
      ...laid.map((_, k) => [...to, 'laid', k, 'pieces']),
    ],
  });
}
