import { known } from '../../invariant.js';
import { choice, float } from '../../input/field.js';
import { BEARING } from '../../input/ground-ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { referenceQuantity } from '../../reference-quantity.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import {
  COUNTY_FOUNDATIONS,
  FOUNDATION_ROADS,
  type FoundationRoad,
} from '../../sources/foundations.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import {
  formulaStep,
  given,
  published,
  procedureStep,
  withWorking,
  type Worked,
} from '../../working.js';

/** Strength of the ground, and the road on it. */
export interface FoundationThicknessOptions {
  /** Bearing ratio in percent, or the strength of {@link frostSupport}; more than 0, at most 200. */
  readonly cbr: number | string;
  /** Kind of road. */
  readonly road: FoundationRoad;
}

const OPTIONS = shapeOf<FoundationThicknessOptions>()({
  cbr: float(BEARING),
  road: choice(FOUNDATION_ROADS),
});

/** Stone that one county puts under roads on such ground. */
export interface FoundationThickness extends Cautioned, Worked {
  /** Thickness of capping; 0 where none is printed. */
  readonly capping: Length;
  /** Thickness of sub-base. */
  readonly subBase: Length;
  /** Both together. */
  readonly total: Length;
  /** Bearing ratio from which the row holds. */
  readonly rowFrom: number;
  /** True below 2%: the county asks for a submitted design. */
  readonly needsDesign: boolean;
  /** What that means, in words. */
  readonly note: string;
}

const NOTE =
  'A table of one county for the foundation of roads under asphalt, not for drives of pavers. It shows how fast weak ground asks for more stone.';

/**
 * Capping and sub-base of one county under roads by the strength of the ground. A strength between
 * two rows takes the weaker one. Below 2% the county asks for a submitted design.
 *
 * @param options - see {@link FoundationThicknessOptions}
 * @returns thicknesses [length], whether a design is needed, cautions
 * @throws `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading
 *   codes
 * @source county-foundations
 * @example
 * const weak = foundationThickness({ cbr: '3.5', road: 'shared-surface' });
 * weak.capping.to('mm').toString() //=> '250'
 * weak.total.to('mm').toString() //=> '500'
 */
export function foundationThickness(options: FoundationThicknessOptions): FoundationThickness {
  const { cbr, road } = readOptions(options, OPTIONS);
  const { rows, subBase: subBases, designBelow } = COUNTY_FOUNDATIONS;
  const row = known(
    [...rows].reverse().find(({ from }) => isInRow(cbr, Number(from.value))),
    'row',
  );
  const printed = row.capping[road];
  const capping = printed === null ? NO_LENGTH : referenceQuantity('length', printed);
  const subBase = referenceQuantity('length', subBases[road]);
  const found = {
    capping,
    subBase,
    total: capping.plus(subBase),
    rowFrom: Number(row.from.value),
    needsDesign: cbr < Number(designBelow.value),
    note: NOTE,
    cautions: cautionsFor('ground', 'structure'),
  };
  return withWorking(found, () => [
    procedureStep({
      title: 'Capping, from the table',
      procedure: 'foundationThickness',
      method:
        'finds the last row of the table that the strength reaches, and the column of the road',
      given: [
        given('C', 'strength in percent', cbr),
        published('r', 'road', road, 'county-foundations'),
      ],
      result: given('k', 'capping', capping),
      source: 'county-foundations',
    }),
    formulaStep({
      title: 'Stone under the road',
      formula: 'T = k + b',
      given: [
        given('k', 'capping', capping),
        published('b', 'sub-base', subBase, 'county-foundations'),
      ],
      result: given('T', 'capping and sub-base', found.total),
      source: 'county-foundations',
    }),
  ]);
}

/** The last row is for more than 15%; the others hold from their figure. */
const isInRow = (cbr: number, from: number): boolean => (from === 15 ? cbr > from : cbr >= from);
