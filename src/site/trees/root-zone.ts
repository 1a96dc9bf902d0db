import { number, object, optional, quantity } from '../../input/field.js';
import { ROOT_ZONE_FACTOR, TRUNK, ZONE } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { ROOT_CUT_MARKS } from '../../sources/tree-rules.js';
import { max } from '../../units/aggregate.js';
import type { LengthInput } from '../../units/construct.js';
import { PI } from '../../units/pi.js';
import type { Area, Length } from '../../units/quantity.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../../working.js';
import { digAtTree, digFrom, type DigAtTreeInput } from './read-dig-at-tree.js';
import { rootCut, type RootCut } from './root-cut.js';

/** The rule of the local ordinance. */
export interface RootZoneRuleInput {
  /** Radius over trunk diameter, 1 to 40: 12 is one foot of radius to an inch of trunk. No default. */
  readonly radiusPerDiameter: number | string;
  /** Minimum radius of the zone [length], more than 0 and at most 100 m. Optional. */
  readonly minimumRadius?: LengthInput;
}

/** A tree, the rule for its root zone, and a dig near it. */
export interface RootZoneOptions {
  /**
   * Trunk diameter at 4.5 ft (1.4 m) above ground [length], more than 0 and at most 20 m. Count several
   * stems as the ordinance does.
   */
  readonly trunkDiameter: LengthInput;
  /** The rule of the ordinance. */
  readonly rule: RootZoneRuleInput;
  /** The whole dig, not the paving. Default: no dig. */
  readonly dig?: DigAtTreeInput;
}

const RULE = shapeOf<RootZoneRuleInput>()({
  radiusPerDiameter: number(ROOT_ZONE_FACTOR),
  minimumRadius: optional(quantity(ZONE)),
});

const OPTIONS = shapeOf<RootZoneOptions>()({
  trunkDiameter: quantity(TRUNK),
  rule: object(RULE),
  dig: optional(digAtTree),
});

/** The root zone of a tree. */
export interface RootZone extends Cautioned, Worked {
  /** Radius of the zone, from the middle of the trunk. */
  readonly radius: Length;
  /** Area of the zone. */
  readonly area: Area;
  /** Three trunk diameters: by one study, no straight trench closer than this. */
  readonly closestTrench: Length;
  /** The cut of the dig; null if no dig is given. */
  readonly cut: RootCut | null;
  /** What to do next. */
  readonly note: string;
  /** What the figures do not cover. */
  readonly notes: readonly string[];
}

/**
 * Root zone of a tree and the share of it that a dig cuts: `R = k D`; a line at distance d cuts
 * `A = R^2 acos(d / R) - d sqrt(R^2 - d^2)`, a strip the difference of its two edges, a drawn dig
 * the part of the circle that is in its outline. The cut is compared with two published limits: a
 * quarter of the zone, and three trunk diameters. Angles are taken to 40 digits; the share that a
 * drawn dig cuts is worked out in floats (good to 1e-12), with arcs of its outline as chords,
 * within 1/300 000 of their radius. The rest is exact.
 *
 * @param options - see {@link RootZoneOptions}
 * @returns radius, area, what the dig cuts with the marks it reaches, what to do; cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `NOT_INCREASING`, the codes
 *   of `outlineArea` and the reading codes
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
 * oak.cut?.marks.some(({ isReached }) => isReached) //=> false
 * const drawn = rootZone({
 *   trunkDiameter: '16 in',
 *   rule: { radiusPerDiameter: 12 },
 *   dig: {
 *     outline: { unit: 'ft', points: [[0, 0], [40, 0], [40, 12], [0, 12]] },
 *     trunk: { x: '20 ft', y: '-10 ft' },
 *   },
 * });
 * drawn.cut?.share.toFixed(4) //=> '0.1298'
 */
export function rootZone(options: RootZoneOptions): RootZone {
  const { trunkDiameter: trunk, rule, dig: readDig } = readOptions(options, OPTIONS);
  const byRule = trunk.times(rule.radiusPerDiameter);
  const radius = rule.minimumRadius === undefined ? byRule : max([byRule, rule.minimumRadius]);
  const area = radius.times(radius).times(PI);
  const dig = readDig === undefined ? null : digFrom(readDig);
  const cut = dig === null ? null : rootCut(dig, { radius, area, trunk });
  const found = {
    radius,
    area,
    closestTrench: trunk.times(ROOT_CUT_MARKS.diameters.value),
    cut,
    note: noteFor(cut),
    notes: NOTES,
    cautions: cautionsFor('trees', 'excavation'),
  };
  return withWorking(found, () => [
    radiusStep(trunk, rule, radius),
    ...(dig === null || cut === null ? [] : dig.steps(radius, cut.area)),
  ]);
}

function radiusStep(
  trunk: Length,
  { radiusPerDiameter, minimumRadius }: Values<typeof RULE>,
  radius: Length,
): Step {
  return derivedStep({
    title: 'Radius of the root zone',
    formula: minimumRadius === undefined ? 'R = k * D' : 'R = max(k * D, R0)',
    given: [
      given('D', 'trunk diameter', trunk),
      given('k', 'radius per diameter, given', radiusPerDiameter),
      ...(minimumRadius === undefined ? [] : [given('R0', 'minimum radius, given', minimumRadius)]),
    ],
    result: given('R', 'radius', radius),
  });
}

function noteFor(cut: RootCut | null): string {
  if (cut === null) return 'Fence off the root zone before machines and deliveries come.';
  if (cut.marks.some(({ isReached }) => isReached)) {
    return 'Stop. Move the edge, or ask an arborist and the authority before any root is cut.';
  }
  if (cut.share > 0) {
    return 'The dig cuts roots. Ask an arborist, dig by hand in the zone, and cut roots clean.';
  }
  return 'The dig stays out of the zone. Fence it off: no machine, stone or spoil on it.';
}

const NOTES: readonly string[] = Object.freeze([
  'Ordinances differ in the factor, the minimum radius and the way stems are counted. Use the one that applies.',
  'Keep stockpiles, machines and spoil off the root zone. Compacted soil kills roots just as cutting does.',
  'The limits are published rules of thumb. They do not guarantee that a tree stays up or lives.',
]);
