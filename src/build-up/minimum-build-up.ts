import { choice, flag, optional } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { SOURCES, statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import {
  BASE_ADJUSTMENT,
  MINIMUM_THICKNESS,
  PAVEMENT_USES,
  SUBGRADES,
  type BaseAdjustmentReason,
  type PavementUse,
  type Subgrade,
  type TwoEditions,
} from '../sources/minimum-thickness.js';
import { sum } from '../units/aggregate.js';
import { length } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { formulaStep, given, published, type Step, withWorking, type Worked } from '../working.js';

/** Use of a pavement and the soil below it. */
export interface MinimumBuildUpOptions {
  /** Traffic on it. */
  readonly use: PavementUse;
  /** Soil below it. */
  readonly subgrade: Subgrade;
  /** True if frost reaches below the base. Default: false. */
  readonly frost?: boolean;
  /** Inches, or the rounded millimetres of the table. Default: `in`. */
  readonly edition?: 'in' | 'mm';
}

const OPTIONS = shapeOf<MinimumBuildUpOptions>()({
  use: choice(PAVEMENT_USES),
  subgrade: choice(SUBGRADES),
  frost: optional(flag, false),
  edition: optional(choice(['in', 'mm']), 'in'),
});

/** Base added on top of the published minimum, and why. */
export interface BaseAdjustment {
  /** Why it is added. */
  readonly reason: BaseAdjustmentReason;
  /** How much base is added. */
  readonly added: Length;
  /** Where the figure is printed; `common-practice` where no source was found. */
  readonly source: SourceId;
  /** How far the figure can be traced. */
  readonly status: SourceStatus;
}

/** Minimum thicknesses for a use and a subgrade. */
export interface MinimumBuildUp extends Cautioned, Worked {
  /** Minimum thickness of the pavers. */
  readonly paver: Length;
  /** Minimum thickness of the bedding. */
  readonly bedding: Length;
  /** Published minimum with the adjustments added. */
  readonly base: Length;
  /** The published minimum alone. */
  readonly publishedBase: Length;
  /** What was added to the published minimum; empty on well-drained ground without frost. */
  readonly adjustments: readonly BaseAdjustment[];
  /** A sentence for each adjustment, and what to doubt about them. */
  readonly notes: readonly string[];
  /** Where the figures are printed. */
  readonly sources: readonly SourceId[];
}

const REASON_TEXT: Readonly<Record<BaseAdjustmentReason, string>> = {
  clay: 'clay subgrade',
  'wet-or-weak': 'wet or weak subgrade',
  frost: 'frost',
};

/**
 * Minimum compacted thicknesses by use, with base added for poor ground: published table plus
 * adjustments by reason and use. Each names its source: frost under walks and drives, wet or weak
 * ground under walks and drives. Clay, and all that is added under streets, is common practice, no
 * source; so is adding one to the other.
 *
 * @param options - see {@link MinimumBuildUpOptions}
 * @returns paver, bedding and base [length], the published base alone, the adjustments with their
 *   status, notes, sources and cautions
 * @throws `UNKNOWN_CHOICE`, `REQUIRED`, `WRONG_TYPE`
 * @source paver-tolerances
 * @source frost-base-page
 * @source wet-base-clause
 * @source common-practice
 * @example
 * const least = minimumBuildUp({ use: 'residential-driveway', subgrade: 'clay' });
 * least.publishedBase.to('in').toString() //=> '6'
 * least.base.to('in').toString() //=> '8'
 */
export function minimumBuildUp(options: MinimumBuildUpOptions): MinimumBuildUp {
  const { use, subgrade, frost, edition } = readOptions(options, OPTIONS);
  const read = (figure: TwoEditions): Length => length(figure[edition].value, edition);
  const printed = MINIMUM_THICKNESS[use];
  const reasons: BaseAdjustmentReason[] = [];
  if (subgrade !== 'well-drained') reasons.push(subgrade);
  if (frost) reasons.push('frost');
  const adjustments = reasons.map((reason) => {
    const figure = BASE_ADJUSTMENT[reason][use];
    const { source } = figure[edition];
    return { reason, added: read(figure), source, status: statusOf(source) };
  });
  const publishedBase = read(printed.base);
  const base = sum([publishedBase, ...adjustments.map(({ added }) => added)]);
  const sources = new Set<SourceId>([
    'paver-tolerances',
    ...adjustments.map(({ source }) => source),
    sumSource(adjustments),
  ]);
  const fieldsOut = {
    paver: read(printed.paver),
    bedding: read(printed.bedding),
    base,
    publishedBase,
    adjustments,
    notes: notesFor(adjustments),
    sources: [...sources],
    cautions: cautionsFor('structure'),
  };
  return withWorking(fieldsOut, () => showWorking(publishedBase, adjustments, base));
}

/** Each addition has its source; that two of them add up is common practice. */
const sumSource = ([first, ...others]: readonly BaseAdjustment[]): SourceId =>
  others.length > 0 ? 'common-practice' : (first?.source ?? 'paver-tolerances');

const notesFor = (adjustments: readonly BaseAdjustment[]): string[] =>
  adjustments.map(
    ({ reason, source }) =>
      `Base added for ${REASON_TEXT[reason]} ${originOf(source)}. Have the subgrade checked before you rely on it.`,
  );

/** Where an addition comes from, in words. */
function originOf(source: SourceId): string {
  if (source === 'common-practice') return 'is common practice, not a published figure';
  const who =
    source === 'wet-base-clause'
      ? 'the upper end of what the trade association'
      : 'what one trade page';
  return `is ${who} prints (${SOURCES[source].title})`;
}

function showWorking(
  publishedBase: Length,
  adjustments: readonly BaseAdjustment[],
  base: Length,
): Step[] {
  const added = adjustments.map(({ reason, added: value, source }, index) =>
    published(`a${index + 1}`, `added for ${REASON_TEXT[reason]}`, value, source),
  );
  return [
    formulaStep({
      title: 'Minimum base',
      formula: ['b = p', ...added.map(({ symbol }) => symbol)].join(' + '),
      given: [
        published('p', 'published minimum base', publishedBase, 'paver-tolerances'),
        ...added,
      ],
      result: given('b', 'base', base),
      source: sumSource(adjustments),
    }),
  ];
}
