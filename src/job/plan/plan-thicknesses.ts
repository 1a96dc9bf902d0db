import { present } from '../../invariant.js';
import type { FrostBase } from '../../ground/frost/frost-base.js';
import type { FrostSupport } from '../../ground/frost/frost-support.js';
import {
  foundationThickness,
  type FoundationThickness,
} from '../../ground/frost/foundation-thickness.js';
import { sum } from '../../units/aggregate.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { given } from '../../working.js';
import { isStone, type Pavement } from '../schema/layer-kinds.js';
import type { GroundBasis } from './plan-ground.js';
import { placeBy, take, worked, type PlacedStep } from './placed.js';
import type { GovernedThickness, ThicknessRule } from './plan-of-ground.js';

interface Rules {
  readonly frost: FrostBase | null;
  readonly support: FrostSupport | null;
}

/** Each thickness with its rules and the one that governs, with the working. Internal. */
export function planThicknesses(
  { pavement, minimum }: GroundBasis,
  { frost, support }: Rules,
): { readonly plan: readonly GovernedThickness[]; readonly steps: () => readonly PlacedStep[] } {
  const thicknessOf = (isPart: (kind: { readonly kind: string }) => boolean): Length =>
    sum([NO_LENGTH, ...pavement.layers.filter(isPart).map(({ thickness }) => thickness)]);
  const foundation =
    support === null || pavement.use !== 'parking-or-residential-street'
      ? null
      : foundationThickness({ cbr: support.strength, road: 'residential-access' });
  const published = (thickness: Length): Wanted => ({
    rule: 'published',
    thickness,
    source: 'paver-tolerances',
  });
  const plan = [
    governed(
      'paver',
      thicknessOf(({ kind }) => kind === 'paver'),
      [published(minimum.paver)],
    ),
    governed(
      'bedding',
      thicknessOf(({ kind }) => kind === 'bedding'),
      [published(minimum.bedding)],
    ),
    governed(
      'base',
      sum([NO_LENGTH, ...pavement.layers.filter(isStone).map((one) => one.thickness)]),
      [
        published(minimum.publishedBase),
        ...poorGround(minimum),
        ...frostRules(frost),
        ...foundationRules(foundation),
      ],
    ),
  ];
  return {
    plan,
    steps: () => [
      ...plan.map((one, index) => plannedStep(pavement, one, index)),
      ...foundationSteps(foundation),
      ...plan.flatMap((one, index) => ruleSteps(one, index)),
    ],
  };
}

type Wanted = Omit<ThicknessRule, 'shortfall'>;

const poorGround = ({ base, adjustments }: GroundBasis['minimum']): Wanted[] =>
  adjustments.length === 0
    ? []
    : [
        {
          rule: 'poor-ground',
          thickness: base,
          // that two additions add up is common practice
          source: (adjustments.length === 1 ? adjustments[0]?.source : null) ?? 'common-practice',
        },
      ];

const frostRules = (frost: FrostBase | null): Wanted[] =>
  frost === null
    ? []
    : [
        { rule: 'frost-limited', thickness: frost.limited, source: 'frost-penetration-limit' },
        { rule: 'frost-free', thickness: frost.complete, source: 'frost-penetration-limit' },
      ];

const foundationRules = (foundation: FoundationThickness | null): Wanted[] =>
  foundation === null
    ? []
    : [{ rule: 'foundation', thickness: foundation.total, source: 'county-foundations' }];

function governed(
  part: GovernedThickness['part'],
  planned: Length,
  wanted: readonly Wanted[],
): GovernedThickness {
  const rules = wanted.map((one) => ({
    ...one,
    shortfall: one.thickness.greaterThan(planned) ? one.thickness.minus(planned) : NO_LENGTH,
  }));
  const most = rules
    .filter(({ rule }) => rule !== 'frost-free')
    .reduce<ThicknessRule | null>(
      (best, one) => (best === null || one.thickness.greaterThan(best.thickness) ? one : best),
      null,
    );
  return { part, planned, governs: present(most, 'rule').rule, rules };
}

const isPartOf = (part: GovernedThickness['part'], layer: Pavement['layers'][number]): boolean =>
  part === 'base' ? isStone(layer) : layer.kind === part;

/** What is planned, from the layers of the job. */
function plannedStep(
  { layers }: Pavement,
  { part, planned }: GovernedThickness,
  index: number,
): PlacedStep {
  const own = layers.flatMap((layer, k) => (isPartOf(part, layer) ? [{ layer, k }] : []));
  return worked({
    title: `Planned thickness of the ${part}, for the rules of the ground`,
    formula: 'p = sum(t)',
    takes: [
      take(
        't',
        `thickness of the layers of ${part}`,
        own.map(({ layer }) => layer.thickness),
        ...own.map(({ k }) => ['given', 'layers', k, 'thickness']),
      ),
    ],
    result: given('p', `planned ${part}`, planned),
    gives: [['ground', 'thicknesses', index, 'planned']],
  });
}

const foundationSteps = (foundation: FoundationThickness | null): PlacedStep[] =>
  placeBy(foundation?.working ?? [], {}, { C: [['ground', 'strength']] });

/** The fields of the minimum that a rule repeats. */
const MINIMUM_OF = { paver: 'paver', bedding: 'bedding', base: 'publishedBase' } as const;

const RULE_NAMES: Readonly<Record<ThicknessRule['rule'], string>> = {
  published: 'published minimum',
  'poor-ground': 'minimum on this ground',
  'frost-limited': 'base',
  'frost-free': 'base without frost below',
  foundation: 'capping and sub-base',
};

/** What each rule requires, and what is planned less than that. */
function ruleSteps({ part, planned, rules }: GovernedThickness, index: number): PlacedStep[] {
  return rules.flatMap(({ rule, thickness, shortfall, source }, k) => {
    const at = ['ground', 'thicknesses', index, 'rules', k];
    const from = {
      published: [['minimum', MINIMUM_OF[part]]],
      'poor-ground': [['minimum', 'base']],
    };
    const minimum = rule === 'published' || rule === 'poor-ground' ? from[rule] : [];
    const required = worked({
      title: `Thickness that the rule "${rule}" requires for the ${part}`,
      formula: 'r = m',
      takes: [take('m', RULE_NAMES[rule], thickness, ...minimum)],
      result: given('r', `required ${part}`, thickness),
      gives: [[...at, 'thickness']],
      source,
    });
    if (shortfall.isZero()) return [required];
    const short = worked({
      title: `What the planned ${part} is short of the rule "${rule}"`,
      formula: 's = r - p',
      takes: [
        take('r', `required ${part}`, thickness, [...at, 'thickness']),
        take('p', `planned ${part}`, planned, ['ground', 'thicknesses', index, 'planned']),
      ],
      result: given('s', 'shortfall', shortfall),
      gives: [[...at, 'shortfall']],
    });
    return [required, short];
  });
}
