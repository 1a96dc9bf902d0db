import { makeReader } from '../../input/reader.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import { ROOT_CUT_MARKS } from '../../sources/tree-rules.js';
import { max } from '../../units/aggregate.js';
import { length, type LengthInput } from '../../units/construct.js';
import type { Area, Length } from '../../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../../working.js';
import { PI } from '../../units/pi.js';
import { LENGTH } from '../limits.js';
import { readDigAtTree, rootCut, rootCutStep, type DigPastTree, type RootCut } from './root-cut.js';
import type { DrawnDigAtTree } from './root-cut-in-outline.js';

/** The rule of the ordinance where the tree stands. */
export interface RootZoneRuleInput {
  /** Radius over trunk diameter: 12 is one foot of radius to an inch of trunk. No default. */
  readonly radiusPerDiameter: number | string;
  /** The zone is never smaller than this. */
  readonly leastRadius?: LengthInput;
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
 * Root zone of a tree and the share of it that a dig cuts: `R = k D`; a line at distance d cuts
 * `A = R^2 acos(d / R) - d sqrt(R^2 - d^2)`, a strip the difference of its two edges, a drawn dig the
 * part of the circle that lies in its outline. The cut is set against two published marks: a quarter
 * of the zone, and three trunk diameters. Angles are taken to 40 digits; the share that a drawn dig
 * cuts is worked out in floats (good to 1e-12), arcs of its outline put in chords that leave them by
 * less than 1/300 000 of their radius. The rest is exact.
 *
 * @param options.trunkDiameter - at 4.5 ft (1.4 m) above ground [length]; several stems: as the
 *   ordinance counts them
 * @param options.rule - `radiusPerDiameter` 1 to 40, no default, and `leastRadius` [length]
 * @param options.dig - of the whole dig, not of the paving: `near` and `far` edge, square from the
 *   trunk [length], or its `outline` and the place `x`, `y` of the `trunk` [length], within 10 km
 * @returns radius, area, what the dig cuts with the marks it reaches, what to do; cautions
 * @throws `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `NOT_INCREASING`, `EITHER_OR`, the codes of
 *   `outlineArea` and the reading codes
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
export function rootZone(options: {
  readonly trunkDiameter: LengthInput;
  readonly rule: RootZoneRuleInput;
  readonly dig?: DigPastTree | DrawnDigAtTree;
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
  const dig =
    fields['dig'] === undefined ? undefined : readDigAtTree(reader, fields['dig'], ['dig']);
  reader.finish();

  const byRule = trunk.times(factor);
  const radius = least === undefined ? byRule : max([byRule, least]);
  const area = radius.times(radius).times(PI);
  const cut = dig === undefined ? null : rootCut(dig, { radius, area, trunk });
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
    ...(dig === undefined || cut === null ? [] : [rootCutStep(radius, dig, cut)]),
  ]);
}

const TRUNK = Object.freeze({ sign: 'positive', most: length(10, 'm') } as const);
const FACTOR = Object.freeze({ sign: 'positive', least: 1, most: 40 } as const);

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
