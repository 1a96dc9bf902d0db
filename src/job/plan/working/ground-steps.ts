import type { CompactionMethod } from '../../../ground/compaction/compaction-method.js';
import type { FrostSupport } from '../../../ground/frost/frost-support.js';
import type { LiftWater } from '../../../ground/soil/lift-water.js';
import type { PeakRunoff } from '../../../ground/water/peak-runoff.js';
import type { FieldPath } from '../../../errors.js';
import { given, procedureStep, type StepInput } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import type { LiftPlan } from '../plan.js';
import { place, placeBy, type PlacedStep } from '../placed.js';
import type { PavementGroundPlan } from '../plan-of-ground.js';

type Ground = NonNullable<ReadJob['ground']>;

const JOB = ['job', 'ground'] as const;

/** The working of the strength through the thaw. Internal. */
export const supportSteps = (support: FrostSupport | null): PlacedStep[] =>
  placeBy(support?.working ?? [], { s: [['ground', 'strength']] }, { C: [[...JOB, 'cbr']] });

/** The working of the runoff in the storm. Internal. */
export const runoffSteps = (runoff: PeakRunoff | null, { storm }: Ground): PlacedStep[] =>
  placeBy(
    runoff?.working ?? [],
    { Q: [['ground', 'runoff']] },
    {
      A: [['areas', 'paving']],
      p: [[...JOB, 'storm', 'depth']],
      t: [[...JOB, 'storm', 'time']],
      ...(storm?.coefficient === undefined ? {} : { C: [[...JOB, 'storm', 'coefficient']] }),
    },
  );

/** The working of the water of each lift. Internal. */
export function waterSteps(
  { ground, materials }: ReadJob,
  waters: readonly (LiftWater | null)[],
  stones: readonly (string | undefined)[],
): PlacedStep[] {
  return waters.flatMap((water, index) => {
    const stone = materials.stones.findIndex(({ id }) => id === stones[index]);
    const optimum = ground?.optimum?.findIndex((one) => one.stone === stones[index]) ?? -1;
    const own: FieldPath = [...JOB, 'optimum', optimum];
    const material: FieldPath = ['job', 'materials', 'stones', stone];
    const ofDay = ground?.optimum?.[optimum]?.moisture !== undefined;
    const isKnown = ofDay || materials.stones[stone]?.moisture !== undefined;
    return placeBy(
      water?.working ?? [],
      { V: [['ground', 'lifts', index, 'water']] },
      {
        A: [['areas', 'ownBase']],
        t: [['lifts', index, 'compacted']],
        d: [[...material, 'compactedDryDensity']],
        w2: [[...own, 'optimumMoisture']],
        ...(isKnown ? { w1: [[...(ofDay ? own : material), 'moisture']] } : {}),
      },
    );
  });
}

/** The working of the passes of each lift, and of the thickest lift of the machine. Internal. */
export function methodSteps(
  plant: Ground['plant'],
  methods: readonly (CompactionMethod | null)[],
  {
    lifts,
    thickest,
  }: { readonly lifts: readonly LiftPlan[]; readonly thickest: PavementGroundPlan['thickestLift'] },
): PlacedStep[] {
  if (plant === undefined) return [];
  const of = (field: string): readonly FieldPath[] => [[...JOB, 'plant', field]];
  const { plateArea, drumWidth, fill } = plant;
  const machine: readonly StepInput[] = [
    given('m', 'mass of the machine', plant.mass),
    ...(plateArea === undefined ? [] : [given('p', 'area of its plate', plateArea)]),
    ...(drumWidth === undefined ? [] : [given('p', 'width of its drum', drumWidth)]),
    ...(fill === undefined ? [] : [given('f', 'fill', fill)]),
  ];
  const takes = {
    m: of('mass'),
    ...(plateArea === undefined ? {} : { p: of('plateArea') }),
    ...(drumWidth === undefined ? {} : { p: of('drumWidth') }),
    ...(fill === undefined ? {} : { f: of('fill') }),
  };
  const source = 'reinstatement-lifts';
  const passes = methods.flatMap((method, index) => {
    const lift = lifts[index];
    const count = method?.passes ?? null;
    if (lift === undefined || count === null) return [];
    const step = procedureStep({
      title: `Passes of lift ${lift.lift}`,
      procedure: 'compactionMethod',
      method: 'finds the row of the lift for the class of the machine in the table of the method',
      given: [...machine, given('l', 'compacted thickness of the lift', lift.compacted)],
      result: given('P', 'passes', count),
      source,
    });
    return [
      place(step, [['ground', 'lifts', index, 'passes']], {
        ...takes,
        l: [['lifts', index, 'compacted']],
      }),
    ];
  });
  if (thickest === null) return passes;
  const step = procedureStep({
    title: 'Thickest lift of the machine',
    procedure: 'compactionMethod',
    method: 'finds the last row for the class of the machine in the table of the method',
    given: machine,
    result: given('L', 'thickest lift of the machine', thickest),
    source,
  });
  return [...passes, place(step, [['ground', 'thickestLift']], takes)];
}
