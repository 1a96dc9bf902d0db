import { list, object, optional, quantity, text } from '../input/field.js';
import { DISTANCE, ELEVATION, GRADE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import { max } from '../units/aggregate.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import {
  exactOf,
  fromSI,
  fromSIDecimal,
  type Angle,
  type Length,
  type Slope,
} from '../units/quantity.js';
import {
  absoluteRatio,
  addRatios,
  compareRatios,
  multiplyRatios,
  negateRatio,
  ratioToDecimal,
  signOfRatio,
  type Ratio,
} from '../units/ratio.js';
import { between, isZero, type PlanPoint } from '../units/vector.js';
import { NO_LENGTH, NO_SLOPE } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import {
  bentLine,
  gradeOver,
  lengthAt,
  turnsBackAt,
  type BentLeg,
  type BentLine,
} from './bent-line.js';
import { PLAN_POINT, type PlanPointInput } from './read-points.js';

/** A level that a line of grade runs through, in plan. */
export interface BentLevelInput extends PlanPointInput {
  /** What the crew calls it. Default: not named. */
  readonly name?: string;
  /** Elevation [length], up to 10 km either way. */
  readonly elevation: LengthInput;
}

/** A line of levels in plan, and the paving along it. */
export interface BentGradeOptions {
  /** Levels in order along the line, 2 to 10 000. */
  readonly levels: readonly BentLevelInput[];
  /** Slope square to the line, + rising to the left [slope], up to 1 in 1. Default: level. */
  readonly crossSlope?: SlopeInput;
  /**
   * How far the paving reaches to either side of the line [length], more than 0 and at most 100 km, for
   * the grades along its edges and the step at each bend. Default: not known.
   */
  readonly halfWidth?: LengthInput;
}

const LEVEL = shapeOf<BentLevelInput>()({
  ...PLAN_POINT,
  name: optional(text()),
  elevation: quantity(ELEVATION),
});

const OPTIONS = shapeOf<BentGradeOptions>()({
  levels: list(object(LEVEL), { of: 'levels', least: 2 }),
  crossSlope: optional(quantity(GRADE), NO_SLOPE),
  halfWidth: optional(quantity(DISTANCE)),
});

const PLACE = shapeOf<PlanPointInput>()(PLAN_POINT);

/** A stretch of the line from level to level. */
export interface BentGradeLeg {
  /** Along the line. */
  readonly length: Length;
  /** End less start. */
  readonly rise: Length;
  /** Rise over length, on the line. */
  readonly grade: Slope;
  /** The same along the left edge, from mitre to mitre; null without a half width. */
  readonly leftGrade: Slope | null;
  /** The same along the right edge. */
  readonly rightGrade: Slope | null;
}

/** A level where the line turns. */
export interface GradeBend {
  /** Index of the level. */
  readonly level: number;
  /** What the crew calls it; null if it was not named. */
  readonly name: string | null;
  /** How far the line turns, + to the left. */
  readonly turn: Angle;
  /**
   * By how much the two legs would miss each other at the half width on the inside of the bend, if each
   * were extended as a plane; null without a half width. The mitred surface takes it up.
   */
  readonly step: Length | null;
}

/** How far to the sides of the line the surface is without a step; null where nothing limits it. */
export interface GradeReach {
  /** To the left. */
  readonly left: Length | null;
  /** To the right. */
  readonly right: Length | null;
}

/** The surface along a bent line of levels at a place. */
export interface BentGradeAt {
  /** Elevation of the surface. */
  readonly elevation: Length;
  /** Index of the leg that the place belongs to. */
  readonly leg: number;
  /** From the line, + to the left. */
  readonly offset: Length;
  /** True before the first level and beyond the last, where the end grade is extended. */
  readonly extrapolated: boolean;
  /** True too far inside a bend: the surface has a step there, and the elevation is no level to build to. */
  readonly isBeyondReach: boolean;
}

/** Finished grade along a line of levels that bends in plan. */
export interface BentGrade extends Worked {
  /** From level to level. */
  readonly legs: readonly BentGradeLeg[];
  /** Levels where the line turns, in order. */
  readonly bends: readonly GradeBend[];
  /** The largest step of all bends; 0 without a bend, null without a half width. */
  readonly step: Length | null;
  /** How far to the sides the surface is without a step. */
  readonly reach: GradeReach;
  /** The steepest grade along the line and along its edges, if the half width is given; not negative. */
  readonly steepest: Slope;
  /** The flattest of these. */
  readonly flattest: Slope;
  /** Elevation at any place. Beyond the ends the end grade is extended; `at` flags it. */
  readonly elevationAt: (place: PlanPointInput) => Length;
  /** The surface at any place, with flags. */
  readonly at: (place: PlanPointInput) => BentGradeAt;
  /** What to look at, in words; empty if the line does not bend. */
  readonly notes: readonly string[];
}

/**
 * Finished grade along a line of levels that bends in plan, as a crew screeds it: at each bend a mitre
 * line halves the corner, and each leg runs from mitre to mitre. At offset w from the line (+ left) a leg
 * of length L is `L(w) = L - w (tan(a/2) + tan(b/2))` long, where a and b are the turns at its ends
 * (+ left). Along that length it rises evenly from level to level, and the cross slope comes on top:
 * `z = z1 + (s - w tan(a/2)) / L(w) x rise + k w`. Both legs give the same elevation all along a mitre,
 * so there is no step: the inside of the bend is steeper than the line and the outside flatter.
 *
 * Legs extended as planes would meet on the mitre only if one rose toward the bend as the other falls
 * from it; else they miss each other by `|g1 + g2| tan(turn/2) x offset`. The cross slope makes no step.
 * Exact, but that lengths of slanted legs are taken to 40 digits.
 *
 * @param options - see {@link BentGradeOptions}
 * @returns legs with their grades, bends with the step that the mitre takes up, how far the surface
 *   reaches; `elevationAt({ x, y })` [length]; `at`, which adds leg, offset and flags
 * @throws `TOO_FEW`, `POINTS_COINCIDE`, `SELF_INTERSECTION` where the line turns straight back,
 *   `BEND_TOO_TIGHT` where the half width leaves a leg no length on the inside of a bend, `OUT_OF_RANGE`
 *   and the reading codes
 * @source derived
 * @example
 * const walk = bentGrade({
 *   levels: [
 *     { x: '0 m', y: '0 m', elevation: '30.00 m' },
 *     { x: '10 m', y: '0 m', elevation: '29.80 m' },
 *     { x: '10 m', y: '8 m', elevation: '29.64 m' },
 *   ],
 *   crossSlope: '1%',
 *   halfWidth: '1.5 m',
 * });
 * walk.step?.to('mm').toString() //=> '60'
 * walk.elevationAt({ x: '8.5 m', y: '1.5 m' }).to('m').toString() //=> '29.815'
 * walk.legs[0]?.leftGrade?.to('percent').toFixed(2) //=> '-2.35'
 */
export function bentGrade(options: BentGradeOptions): BentGrade {
  const { levels, crossSlope, halfWidth } = readOptions(options, OPTIONS, checkLine);
  const line = bentLine(levels, crossSlope);
  const width = halfWidth === undefined ? null : exactOf(halfWidth);
  const legs = line.legs.map((leg) => legWith(leg, width));
  const bends = bendsOf(line, levels, width);
  const grades = legs.flatMap(({ grade, leftGrade, rightGrade }) =>
    [grade, leftGrade, rightGrade].flatMap((one) => (one === null ? [] : [one.abs()])),
  );
  const at = (place: PlanPointInput): BentGradeAt =>
    Object.freeze(line.at(readOptions(place, PLACE)));
  const result = {
    legs,
    bends,
    step: width === null ? null : max([NO_LENGTH, ...bends.map(({ step }) => step ?? NO_LENGTH)]),
    reach: { left: reachOf(line, 1), right: reachOf(line, -1) },
    steepest: max(grades),
    flattest: grades.reduce((a, b) => (b.compare(a) < 0 ? b : a)),
    elevationAt: (place: PlanPointInput) => at(place).elevation,
    at,
    notes: bends.length === 0 ? [] : [NOTE],
  };
  return withWorking(result, () => stepsOf(line, bends, width));
}

const NOTE =
  'The line bends. Set a stake on each mitre line at both edges: the inside of a bend is steeper than the line, the outside flatter.';

const checkLine: Check<typeof OPTIONS> = (reader, { levels, crossSlope, halfWidth }, path) => {
  if (levels === undefined) return;
  const before = reader.faults();
  checkPoints(reader, levels, path);
  if (reader.faults() > before || halfWidth === undefined) return;
  const { legs } = bentLine(levels, crossSlope ?? NO_SLOPE);
  const width = exactOf(halfWidth);
  const index = legs.findIndex(
    (leg) =>
      signOfRatio(lengthAt(leg, width)) <= 0 || signOfRatio(lengthAt(leg, negateRatio(width))) <= 0,
  );
  if (index < 0) return;
  const message = `at this half width nothing is left of the leg from level ${index} to level ${index + 1} on the inside of its bend (the first level is level 0). Run the line of levels nearer to the inside, or make two pavings of it`;
  reader.fail('BEND_TOO_TIGHT', [...path, 'halfWidth'], message, { leg: index });
};

function checkPoints(
  reader: Reader,
  levels: readonly PlanPoint[],
  path: readonly (string | number)[],
) {
  const before = reader.faults();
  levels.forEach((level, k) => {
    const last = levels[k - 1];
    if (last === undefined || !isZero(between(last, level))) return;
    const message = 'is the same point as the one before it. Remove one of them';
    reader.fail('POINTS_COINCIDE', [...path, 'levels', k], message, { earlier: k - 1 });
  });
  const back = reader.faults() > before ? undefined : turnsBackAt(levels);
  if (back === undefined) return;
  const message = 'the line turns straight back here. Give the levels in order along the paving';
  reader.fail('SELF_INTERSECTION', [...path, 'levels', back], message);
}

function legWith(leg: BentLeg, width: Ratio | null): BentGradeLeg {
  const gradeAt = (offset: Ratio | null) =>
    offset === null ? null : gradeOver(leg.rise, lengthAt(leg, offset));
  return {
    length: fromSI('length', leg.length),
    rise: leg.rise,
    grade: gradeOver(leg.rise, leg.length),
    leftGrade: gradeAt(width),
    rightGrade: gradeAt(width === null ? null : negateRatio(width)),
  };
}

function bendsOf(
  { legs }: BentLine,
  levels: readonly { readonly name?: string | undefined }[],
  width: Ratio | null,
): GradeBend[] {
  return legs.slice(1).flatMap((leg, k) => {
    const before = legs[k];
    const half = leg.half.start;
    if (before === undefined || signOfRatio(half) === 0) return [];
    const level = k + 1;
    const turn = new Decimal40(Decimal40.atan(ratioToDecimal(half)).times(2));
    const grades = addRatios(
      exactOf(gradeOver(before.rise, before.length)),
      exactOf(gradeOver(leg.rise, leg.length)),
    );
    const step = (reach: Ratio) =>
      fromSI('length', absoluteRatio(multiplyRatios(multiplyRatios(grades, half), reach)));
    return [
      {
        level,
        name: levels[level]?.name ?? null,
        turn: fromSIDecimal('angle', turn),
        step: width === null ? null : step(width),
      },
    ];
  });
}

/** The nearest place on one side where a leg has no length left. */
function reachOf({ apexes }: BentLine, side: 1 | -1): Length | null {
  const offsets = apexes
    .filter(({ offset }) => signOfRatio(offset) === side)
    .map(({ offset }) => absoluteRatio(offset));
  const [first, ...rest] = offsets;
  if (first === undefined) return null;
  return fromSI(
    'length',
    rest.reduce((a, b) => (compareRatios(b, a) < 0 ? b : a), first),
  );
}

function stepsOf({ legs }: BentLine, bends: readonly GradeBend[], width: Ratio | null): Step[] {
  const alongLine = legs.map(({ rise, length }, k): Step =>
    derivedStep({
      title: `Grade of leg ${k}`,
      formula: 'g = dz / L',
      given: [given('dz', 'rise', rise), given('L', 'length', fromSI('length', length))],
      result: given('g', 'grade (+ rising)', gradeOver(rise, length)),
    }),
  );
  const steps = bends.flatMap(({ level, turn, step }): Step[] => {
    const [before, after] = [legs[level - 1], legs[level]];
    if (step === null || width === null || before === undefined || after === undefined) return [];
    return [
      derivedStep({
        title: `Step that the mitre takes up at level ${level}`,
        formula: 'e = abs((g1 + g2) * tan(turn / 2)) * w',
        given: [
          given('g1', 'grade before', gradeOver(before.rise, before.length)),
          given('g2', 'grade after', gradeOver(after.rise, after.length)),
          given('turn', 'turn of the line', turn),
          given('w', 'half width', fromSI('length', width)),
        ],
        result: given('e', 'step', step),
      }),
    ];
  });
  return [...alongLine, ...steps];
}
