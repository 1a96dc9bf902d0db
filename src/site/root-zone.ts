import type { FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input.js';
import type { SourceId } from '../sources/catalogue.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { ROOT_CUT_MARKS } from '../sources/tree-rules.js';
import { max } from '../units/aggregate.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, type Area, type Length } from '../units/quantity.js';
import { divideRatios, ratioToDecimal } from '../units/ratio.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { CIRCLE, shareBeyond } from './circle-cut.js';
import { ANY_LENGTH, LENGTH } from './limits.js';

/** The rule of the ordinance where the tree stands. */
export interface RootZoneRuleInput {
  /** Radius over trunk diameter: 12 is one foot of radius to an inch of trunk. No default. */
  readonly radiusPerDiameter: number | string;
  /** The zone is never smaller than this. */
  readonly leastRadius?: LengthInput;
}

/** A straight dig past a tree, measured square to it from the middle of the trunk. */
export interface DigPastTree {
  /** Near edge of the dig, its over-dig included; negative where it lies beyond the trunk. */
  readonly near: LengthInput;
  /** Far edge, for a strip dug on both sides; left out where the dig goes on past the zone. */
  readonly far?: LengthInput;
}

/** A mark that a published source draws. */
export interface RootCutMark {
  readonly id: 'share' | 'diameters';
  readonly reached: boolean;
  readonly text: string;
  readonly source: SourceId;
}

/** What a dig cuts of a root zone. */
export interface RootCut {
  readonly area: Area;
  /** Part of the zone, 0 to 1. */
  readonly share: number;
  /** From the middle of the trunk to the dig; zero where the dig runs under it. */
  readonly distance: Length;
  /** The distance over the trunk diameter. */
  readonly diameters: number;
  readonly marks: readonly RootCutMark[];
}

/** The root zone of a tree. */
export interface RootZone extends Worked {
  readonly radius: Length;
  readonly area: Area;
  /** Three trunk diameters: no straight trench closer, by one study. */
  readonly closestTrench: Length;
  readonly cut: RootCut | null;
  readonly action: string;
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Root zone of a tree and the share of it that a straight dig cuts: `R = k D`; a line at distance d
 * cuts `A = R^2 acos(d / R) - d sqrt(R^2 - d^2)`, a strip the difference of its two edges. The cut is
 * set against two published marks: a quarter of the zone, and three trunk diameters. Angles are
 * taken to 40 digits; the rest is exact.
 *
 * @param options.trunkDiameter - at 4.5 ft (1.4 m) above ground [length]; several stems: as the
 *   ordinance counts them
 * @param options.rule - `radiusPerDiameter` 1 to 40, no default, and `leastRadius` [length]
 * @param options.dig - `near` and `far` edge of the whole dig, not of the paving [length]
 * @returns radius, area, what the dig cuts with the marks it reaches, what to do; cautions
 * @throws `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `NOT_INCREASING` and the reading codes
 * @source tree-stormwater
 * @source tree-trench-study
 * @example
 * const oak = rootZone({
 *   trunkDiameter: '16 in',
 *   rule: { radiusPerDiameter: 12 },
 *   dig: { near: '10 ft' },
 * });
 * oak.radius.to('ft').toString() //=> '16'
 * oak.cut?.share.toFixed(4) //=> '0.1298'
 * oak.cut?.marks.some(({ reached }) => reached) //=> false
 */
export function rootZone(options: {
  readonly trunkDiameter: LengthInput;
  readonly rule: RootZoneRuleInput;
  readonly dig?: DigPastTree;
}): RootZone {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const trunk = reader.quantity('length', fields['trunkDiameter'], ['trunkDiameter'], TRUNK);
  const rule = reader.object(fields['rule'], ['rule']);
  const factor = reader.number(rule['radiusPerDiameter'], ['rule', 'radiusPerDiameter'], FACTOR);
  const least =
    rule['leastRadius'] === undefined
      ? undefined
      : reader.quantity('length', rule['leastRadius'], ['rule', 'leastRadius'], LENGTH);
  const dig = fields['dig'] === undefined ? undefined : readDig(reader, fields['dig'], ['dig']);
  reader.finish();

  const byRule = trunk.times(factor);
  const radius = least === undefined ? byRule : max([byRule, least]);
  const area = radius.times(radius).times(CIRCLE);
  const cut = dig === undefined ? null : cutOf({ radius, area, trunk, dig });
  const found = {
    radius,
    area,
    closestTrench: trunk.times(ROOT_CUT_MARKS.diameters.value),
    cut,
    action: actionFor(cut),
    notes: NOTES,
    cautions: cautionsFor('trees', 'excavation'),
  };
  return withWorking(found, () => [
    {
      title: 'Radius of the root zone',
      formula: least === undefined ? 'R = k D' : 'R = max(k D, least)',
      given: [
        given('D', 'trunk diameter', trunk),
        given('k', 'radius per diameter, given', factor),
        ...(least === undefined ? [] : [given('least', 'least radius, given', least)]),
      ],
      result: given('R', 'radius', radius),
      source: 'derived',
    } satisfies Step,
    ...(dig === undefined || cut === null ? [] : [cutStep(radius, dig, cut)]),
  ]);
}

const TRUNK = Object.freeze({ sign: 'positive', most: length(10, 'm') } as const);
const FACTOR = Object.freeze({ sign: 'positive', least: 1, most: 40 } as const);
const NONE = length(0, 'm');

interface ReadDig {
  readonly near: Length;
  readonly far: Length | undefined;
}

function readDig(reader: Reader, value: unknown, path: FieldPath): ReadDig {
  const fields = reader.object(value, path);
  const near = reader.quantity('length', fields['near'], [...path, 'near'], ANY_LENGTH);
  if (fields['far'] === undefined) return { near, far: undefined };
  const far = reader.quantity('length', fields['far'], [...path, 'far'], ANY_LENGTH);
  if (far.compare(near) <= 0) {
    reader.fail('NOT_INCREASING', [...path, 'far'], 'the far edge must lie beyond the near edge');
  }
  return { near, far };
}

function cutOf(tree: {
  readonly radius: Length;
  readonly area: Area;
  readonly trunk: Length;
  readonly dig: ReadDig;
}): RootCut {
  const { radius, area, trunk, dig } = tree;
  const beyond = (edge: Length) =>
    shareBeyond(ratioToDecimal(divideRatios(exactOf(edge), exactOf(radius))));
  const share = dig.far === undefined ? beyond(dig.near) : beyond(dig.near).minus(beyond(dig.far));
  const distance = distanceTo(dig);
  const closest = trunk.times(ROOT_CUT_MARKS.diameters.value);
  return {
    area: area.times(share),
    share: share.toNumber(),
    distance,
    diameters: distance.dividedBy(trunk).toNumber(),
    marks: [
      {
        id: 'share',
        reached: share.gt(ROOT_CUT_MARKS.share.value),
        text: 'More than a quarter of the root zone would be disturbed.',
        source: ROOT_CUT_MARKS.share.source,
      },
      {
        id: 'diameters',
        reached: distance.compare(closest) < 0,
        text: 'The dig comes closer to the trunk than three trunk diameters.',
        source: ROOT_CUT_MARKS.diameters.source,
      },
    ],
  };
}

/** From the trunk to the nearest edge; none where the dig runs under the trunk. */
function distanceTo({ near, far }: ReadDig): Length {
  if (!near.isNegative()) return near;
  return far?.isNegative() === true ? far.negated() : NONE;
}

function actionFor(cut: RootCut | null): string {
  if (cut === null) return 'Fence the root zone off before machines and deliveries come.';
  if (cut.marks.some(({ reached }) => reached)) {
    return 'Stop: move the edge or ask an arborist and the authority before any root is cut.';
  }
  if (cut.share > 0) {
    return 'Roots will be cut: ask an arborist, dig by hand in the zone, and cut roots clean.';
  }
  return 'The dig stays out of the zone. Fence the zone: no machine, stone or spoil on it.';
}

const NOTES: readonly string[] = Object.freeze([
  'Ordinances differ in the factor, the least radius and the way stems are counted: use the one that holds.',
  'No stockpile, machine or spoil on the root zone: pressing the soil kills as cutting does.',
  'The marks are published rules of thumb, no promise that a tree stands or lives.',
]);

function cutStep(radius: Length, { near, far }: ReadDig, cut: RootCut): Step {
  return {
    title: 'Root zone that the dig cuts',
    formula: 'A = R^2 acos(d / R) - d sqrt(R^2 - d^2), near edge less far edge',
    given: [
      given('R', 'radius', radius),
      given('d1', 'near edge', near),
      ...(far === undefined ? [] : [given('d2', 'far edge', far)]),
    ],
    result: given('A', 'area cut', cut.area),
    source: 'derived',
  };
}
