import { capital } from '../../../capital.js';
import { digStep, soilStep } from '../../../build-up/excavation-depth.js';
import type { FieldPath } from '../../../errors.js';
import { entry } from '../../../invariant.js';
import { meanAlong } from '../../../string-line/mean-depth-along.js';
import type { Length, Volume } from '../../../units/quantity.js';
import { NO_LENGTH } from '../../../units/zero.js';
import { given } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { levelsTaken } from '../earth/ground-levels.js';
import type { LaidOut } from '../lay-out.js';
import { meanDig } from '../earth/mean-dig.js';
import { done, placeBy, take, worked, type PlacedStep } from '../placed.js';
import { areaIn } from '../plan-old-paving.js';
import { oldAreaStep } from './old-paving-steps.js';
import type { StakeDig } from '../stake-grounds.js';

/** What the working of a depth of dig is built from. Internal. */
export interface DigBasis {
  readonly job: ReadJob;
  readonly laid: LaidOut;
}

/** The working of the depth of dig. Internal. */
export function digSteps(of: DigBasis): PlacedStep[] {
  const { depth, soil } = of.laid.dig;
  const old = oldSurfaceSteps(of.laid);
  return [
    ...depthSteps(of),
    ...old,
    ...placeBy([soilStep(depth.minus(soil), depth)], { S: [['dig', 'soil']] }, { E: [DEPTH] }),
  ];
}

const DEPTH: FieldPath = ['dig', 'depth'];

function depthSteps(of: DigBasis): PlacedStep[] {
  const { dig, stack } = of.laid;
  switch (dig.basis) {
    case 'spot-heights':
      return meanSteps('Depth of dig, mean over the spot levels', of);
    case 'stake-levels':
      return meanSteps('Depth of dig, mean over the ground at the stakes', of);
    case 'along-strings':
      return alongSteps(of);
    case 'uniform':
      // any depth beyond the build-up is above finished grade
      return placeBy(
        [digStep(stack, dig.depth.minus(stack.total))],
        { E: [DEPTH] },
        {
          D: [['buildUp', 'total']],
          ...(of.laid.pavement.existingAboveFinish === undefined
            ? {}
            : { a: [['given', 'existingAboveFinish']] }),
        },
      );
  }
}

function meanSteps(title: string, { job, laid }: DigBasis): PlacedStep[] {
  const { ground, bottom, dug, dig, stack } = laid;
  const { cut, fill } = ground.measure(bottom, NO_LENGTH);
  const measured = (symbol: string, name: string, value: Volume) =>
    done({
      title: capital(name),
      procedure: 'planJob',
      method:
        'Joins the levels of the ground and of finished grade by triangles, lowers finished grade by the build-up, and returns the volume between the two inside the dig line.',
      takes: [
        take('D', 'total build-up', stack.total, ['buildUp', 'total']),
        take('A', 'area of the dig', dug.area, ['areas', 'dig']),
        ...levelsTaken(job, laid.pavement),
      ],
      result: given(symbol, name, value),
      gives: [],
    });
  return [
    measured('C', 'existing ground above the subgrade, old paving included', cut),
    measured('F', 'existing ground below the subgrade', fill),
    worked({
      title,
      formula: 'E = (C - F) / A',
      takes: [
        take('C', 'existing ground above the subgrade, old paving included', cut),
        take('F', 'existing ground below the subgrade', fill),
        take('A', 'area of the dig', dug.area, ['areas', 'dig']),
      ],
      result: given('E', 'depth of dig', dig.depth),
      gives: [DEPTH],
    }),
  ];
}

/** A stake whose dig is known, with its place in the plan. */
interface Known {
  readonly id: string;
  readonly dig: Length;
  readonly path: FieldPath;
  /** Index among the stakes of its string. */
  readonly index: number;
}

const knownOf = (stakes: readonly StakeDig[], line: number): Known[] =>
  stakes.flatMap(({ id, dig }, index) =>
    dig === null
      ? []
      : { id, dig, index, path: ['plan', 'stringLines', line, 'stakes', index, 'dig'] },
  );

function alongSteps({ job, laid }: DigBasis): PlacedStep[] {
  const { dig, measured, pavement } = laid;
  const lines = job.stringLines.flatMap(({ pavement: id }, line) =>
    id === pavement.id ? [line] : [],
  );
  const known = measured.map((stakes, k) => knownOf(stakes, entry(lines, k)));
  const title = 'Depth of dig, mean along the strings';
  const result = given('E', 'depth of dig', dig.depth);
  const [along] = meanDig(measured)?.steps() ?? [];
  if (along?.kind === 'formula') {
    const length = entry(along.given, 0);
    const step = { ...along, title, formula: meanAlong('E'), result, source: 'derived' } as const;
    const placed = placeBy(
      [step],
      { E: [DEPTH] },
      {
        a: known.flatMap((own) => own.slice(0, -1).map(({ path }) => path)),
        b: known.flatMap((own) => own.slice(1).map(({ path }) => path)),
      },
    );
    const stretches = known.flatMap((own, k) =>
      stretchSteps(job, {
        line: entry(lines, k),
        own,
        stakes: entry(measured, k),
        name: length.name,
      }),
    );
    return [...stretches, ...placed];
  }
  const all = known.flat();
  const names = all.map(({ id }) => id).join(', ');
  const digs = all.map((one) => one.dig);
  return [
    worked({
      title,
      formula: 'E = mean(e)',
      takes: [take('e', `dig at ${names}`, digs, ...all.map(({ path }) => path))],
      result,
      gives: [DEPTH],
    }),
  ];
}

/** The length of string from each stake with a reading to the next. */
function stretchSteps(
  job: ReadJob,
  {
    line,
    own,
    stakes,
    name,
  }: {
    readonly line: number;
    readonly own: readonly Known[];
    readonly stakes: readonly StakeDig[];
    readonly name: string;
  },
): PlacedStep[] {
  const ids = entry(job.stringLines, line).stakes;
  return own.slice(1).map((to, k) => {
    const from = entry(own, k);
    const passed = ids.slice(from.index, to.index + 1).map((id) => {
      const index = job.stakes.findIndex((stake) => stake.id === id);
      return { stake: entry(job.stakes, index), index };
    });
    const along = (axis: 'x' | 'y') =>
      take(
        axis,
        `${axis} of the stakes from ${from.id} to ${to.id}`,
        passed.map(({ stake }) => stake[axis]),
        ...passed.map(({ index }) => ['job', 'stakes', index, axis]),
      );
    return worked({
      title: `Length of the string from ${from.id} to ${to.id}`,
      formula: 'L = sum(sqrt((x[i + 1] - x[i])^2 + (y[i + 1] - y[i])^2))',
      takes: [along('x'), along('y')],
      result: given('L', name, stationOf(stakes, to).minus(stationOf(stakes, from))),
      gives: [],
    });
  });
}

const stationOf = (stakes: readonly StakeDig[], { index }: Known): Length =>
  entry(stakes, index).station;

/** The mean thickness of old paving over the whole dig. */
function oldSurfaceSteps({ bottom, oldPaving, dug, dig }: LaidOut): PlacedStep[] {
  if (oldPaving.length === 0) return [];
  const pieces = oldPaving.map((one) => ({
    name: 'area of old paving in the whole dig',
    area: areaIn([{ outline: bottom, sign: 1 }], one),
    one,
  }));
  const areas = pieces.map(({ one, name, area }) =>
    oldAreaStep(one, { name, area, dig: take('A', 'area of the dig', dug.area, ['areas', 'dig']) }),
  );
  const mean = worked({
    title: 'Old surface, mean over the dig',
    formula: 'o = sum(a[i] * t[i]) / A',
    takes: [
      take(
        'a',
        'area of old paving in the whole dig',
        pieces.map(({ area }) => area),
      ),
      take(
        't',
        'thickness of old paving',
        oldPaving.map(({ thickness }) => thickness),
        ...oldPaving.map(({ path }) => ['job', ...path, 'thickness']),
      ),
      take('A', 'area of the dig', dug.area, ['areas', 'dig']),
    ],
    result: given('o', 'old surface', dig.depth.minus(dig.soil)),
    gives: [],
  });
  return [...areas, mean];
}
