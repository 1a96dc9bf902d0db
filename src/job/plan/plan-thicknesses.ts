import type { FrostBase } from '../../ground/frost/frost-base.js';
import type { FrostSupport } from '../../ground/frost/frost-support.js';
import {
  foundationThickness,
  type FoundationThickness,
} from '../../ground/frost/foundation-thickness.js';
import { sum } from '../../units/aggregate.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { Step } from '../../working.js';
import { isStone } from '../schema/layer-kinds.js';
import type { GroundBasis } from './plan-ground.js';
import type { GovernedThickness, ThicknessRule } from './plan-of-ground.js';

interface Rules {
  readonly frost: FrostBase | null;
  readonly support: FrostSupport | null;
}

/** Each thickness with its rules and the one that governs, with the working. Internal. */
export function planThicknesses(
  { pavement, minimum }: GroundBasis,
  { frost, support }: Rules,
): { readonly plan: readonly GovernedThickness[]; readonly steps: () => readonly Step[] } {
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
  return { plan, steps: () => foundation?.working ?? [] };
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
  return { part, planned, governs: most?.rule ?? 'published', rules };
}
