import { choice, float } from '../../input/field.js';
import { BEARING } from '../../input/ground-ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { FROST_GROUPS, FROST_SUPPORT, type FrostGroup } from '../../sources/frost-figures.js';
import { formulaStep, given, published, withWorking, type Worked } from '../../working.js';

/** The frost group of a subgrade, and its strength out of the thaw. */
export interface FrostSupportOptions {
  /** Frost group; see {@link frostSusceptibility}. */
  readonly group: FrostGroup;
  /** Bearing ratio of the subgrade in percent, more than 0 and at most 200. */
  readonly cbr: number | string;
}

const OPTIONS = shapeOf<FrostSupportOptions>()({
  group: choice(FROST_GROUPS),
  cbr: float(BEARING),
});

/** The strength of a subgrade to design with where it freezes. */
export interface FrostSupport extends Cautioned, Worked {
  /** Support index of the group; null for soil that is not frost-susceptible. */
  readonly index: number | null;
  /** Strength to design with, in place of the bearing ratio: the smaller of the two. */
  readonly strength: number;
  /** Which of the two it is. */
  readonly governs: 'cbr' | 'frost';
}

/**
 * Strength of a subgrade to design with where it freezes, by the rule of reduced strength: the
 * smaller of its bearing ratio and the support index of its frost group, which is used in place of
 * the ratio though no test measures it. Put it into `foundationThickness`, or into `modulusFromCbr`.
 *
 * @param options - see {@link FrostSupportOptions}
 * @returns index, strength in percent, which governs, cautions
 * @throws `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading
 *   codes
 * @source frost-support
 * @source frost-support-rule
 * @example
 * const silt = frostSupport({ group: 'F4', cbr: 8 });
 * silt.strength //=> 3.5
 * silt.governs //=> 'frost'
 * frostSupport({ group: 'F4', cbr: 2 }).governs //=> 'cbr'
 */
export function frostSupport(options: FrostSupportOptions): FrostSupport {
  const { group, cbr } = readOptions(options, OPTIONS);
  const index = group === 'NFS' || group === 'PFS' ? null : Number(FROST_SUPPORT[group].value);
  const isFrost = index !== null && index < cbr;
  const strength = isFrost ? index : cbr;
  const found = {
    index,
    strength,
    governs: isFrost ? 'frost' : 'cbr',
    cautions: cautionsFor('ground', 'pavement-design'),
  } as const;
  return withWorking(found, () => [
    formulaStep({
      title: 'Strength of the subgrade through the thaw',
      formula: index === null ? 's = C' : 's = min(C, f)',
      given: [
        given('C', 'bearing ratio in percent', cbr),
        ...(index === null
          ? []
          : [published('f', `support index of group ${group}`, index, 'frost-support')]),
      ],
      result: given('s', 'strength', strength),
      source: 'frost-support-rule',
    }),
  ]);
}
