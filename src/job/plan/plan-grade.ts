import { fault, type FieldPath } from '../../errors.js';
import { turnsBackAt, type BentLine } from '../../grading/bent-line.js';
import { steepestOf } from '../../grading/fall-of.js';
import { gradeLine } from '../../grading/grade-line.js';
import type { Plane } from '../../grading/plane.js';
import { marginTo } from '../../grading/slope-limit.js';
import { entry } from '../../invariant.js';
import { chordsOf } from '../../outline/chords.js';
import { contains } from '../../outline/contains.js';
import type { Outline } from '../../outline/ring.js';
import { exactOf, fromSI, type Length, type Slope } from '../../units/quantity.js';
import { between, norm, pointFrom } from '../../units/vector.js';
import { exactVerdict } from '../../verdict.js';
import type { Step } from '../../working.js';
import { edgesShedAtBuilding } from './building-edges.js';
import {
  cornerSurface,
  lineSurface,
  planeSurface,
  type FinishSurface,
  type FixedLevel,
} from './finish-surface.js';
import { NO_LENGTH, NO_SLOPE } from '../../units/zero.js';
import { inField } from '../read/in-field.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { LevelOf } from './plan-levels.js';
import type { GradePlan, GradeStretchPlan } from './plan.js';

type Grade = NonNullable<Pavement['grade']>;

/** Finished grade of a pavement through fixed levels. Internal. */
export interface PlannedGrade {
  readonly plan: GradePlan;
  readonly surface: FinishSurface;
  /** The surface if it is a plane, else null. */
  readonly plane: Plane | null;
  readonly steps: () => readonly Step[];
}

/** Levels and limits for laying a grade. Internal. */
export interface GradeBasis {
  readonly levelOf: LevelOf;
  /** The minimum fall. */
  readonly least: Slope;
  /** The path of the pavement. */
  readonly path: FieldPath;
}

/** Lays finished grade through the fixed levels of a pavement; null if it has none. Internal. */
export function planGrade(
  pavement: Pavement,
  { levelOf, least, path }: GradeBasis,
): PlannedGrade | null {
  const { grade } = pavement;
  if (grade === undefined) return null;
  const levels = grade.levels.map((level, index): FixedLevel => ({
    name: level.name ?? `level ${index + 1}`,
    x: level.x,
    y: level.y,
    elevation: levelOf(level),
    fixed: level.fixed ?? false,
  }));
  const made = inField(
    () => makeSurface(pavement, grade, levels),
    (fault) => [...path, 'grade', ...pathInGrade(fault)],
  );
  const flattest = made.flattest;
  const plan: GradePlan = {
    kind: grade.kind,
    levels: levels.map((level) => {
      const finish = made.surface(level).elevation;
      const { name, x, y, elevation } = level;
      return { name, x, y, elevation, finish, miss: elevation.minus(finish) };
    }),
    stretches: made.stretches,
    twist: made.twist,
    downhillAzimuth: made.downhillAzimuth,
    steepest: made.steepest,
    flattest,
    verdict: exactVerdict(marginTo({ limit: 'minimum', value: least }, flattest)),
    shedAtBuilding: edgesShedAtBuilding(pavement, made.surface),
  };
  return { plan, surface: made.surface, plane: made.plane, steps: made.steps };
}

interface Made extends Pick<
  GradePlan,
  'stretches' | 'twist' | 'downhillAzimuth' | 'steepest' | 'flattest'
> {
  readonly surface: FinishSurface;
  readonly plane: Plane | null;
  readonly steps: () => readonly Step[];
}

function makeSurface(pavement: Pavement, grade: Grade, levels: readonly FixedLevel[]): Made {
  if (grade.kind === 'line') return madeLine(pavement, levels, grade.crossSlope ?? NO_SLOPE);
  if (grade.kind === 'warped') return madeWarped(levels);
  const { plane, surface } = planeSurface(levels);
  return {
    surface,
    plane,
    stretches: [],
    twist: null,
    downhillAzimuth: plane.downhillAzimuth,
    steepest: plane.slope,
    flattest: plane.slope,
    steps: () => plane.working,
  };
}

/** Path of a surface's fault in the grade: `points[1]` is one of its levels. */
const pathInGrade = ([, point]: FieldPath): FieldPath =>
  typeof point === 'number' ? ['levels', point] : ['levels'];

function madeWarped(levels: readonly FixedLevel[]): Made {
  const { warped, surface } = cornerSurface(levels);
  return {
    surface,
    plane: null,
    stretches: [],
    twist: warped.twist,
    downhillAzimuth: null,
    steepest: warped.steepest,
    flattest: warped.flattest,
    steps: () => warped.working,
  };
}

function madeLine({ outline }: Pavement, levels: readonly FixedLevel[], crossSlope: Slope): Made {
  let station: Length = NO_LENGTH;
  const points = levels.map((level, k) => {
    const run = fromSI('length', norm(between(levels[k - 1] ?? level, level)));
    station = station.plus(run);
    return { station, elevation: level.elevation };
  });
  const line = gradeLine({ points });
  const stretches = line.segments.map(({ length, rise, grade }, k): GradeStretchPlan => ({
    from: entry(levels, k).name,
    to: entry(levels, k + 1).name,
    length,
    rise,
    grade,
    crossSlope,
    fall: steepestOf(exactOf(grade), exactOf(crossSlope)),
  }));
  const falls = stretches.map(({ fall }) => fall);
  refuseTurnBack(levels);
  const { line: bent, surface } = lineSurface(levels, crossSlope);
  refuseSteps(outline, bent, levels);
  return {
    surface,
    plane: null,
    stretches,
    twist: null,
    downhillAzimuth: null,
    steepest: falls.reduce((a, b) => (a.compare(b) >= 0 ? a : b)),
    flattest: falls.reduce((a, b) => (a.compare(b) <= 0 ? a : b)),
    steps: () => line.working,
  };
}

function refuseTurnBack(levels: readonly FixedLevel[]): void {
  const back = turnsBackAt(levels);
  if (back === undefined) return;
  const message =
    'the line of levels turns straight back here. Give them in order along the paving';
  throw fault('SELF_INTERSECTION', message, {}, ['levels', back]);
}

/** Refuses paving beyond the point inside a bend where a leg of the line has no length left. */
function refuseSteps(outline: Outline, line: BentLine, levels: readonly FixedLevel[]): void {
  const { points } = chordsOf(outline, false);
  const inPaving = line.apexes.find(({ place }) =>
    contains(points, between(outline.origin, place)),
  );
  const beyond = points
    .map((point) => line.at(pointFrom(outline.origin, point)))
    .find(({ isBeyondReach }) => isBeyondReach);
  const leg = inPaving?.leg ?? beyond?.leg;
  if (leg === undefined) return;
  const [from, to] = [entry(levels, leg).name, entry(levels, leg + 1).name];
  const step = entry(line.legs, leg).rise.abs().toString();
  throw fault(
    'BEND_TOO_TIGHT',
    `the paving reaches so far inside a bend that the line from "${from}" to "${to}" has no length left there, and its rise of ${step} becomes a step. Run the line of levels closer to the inside of the bend, or split the paving in two`,
    { from, to, step },
    ['levels', leg],
  );
}
