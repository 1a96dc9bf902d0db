import { fault } from '../../errors.js';
import type { BaseAdjustment, MinimumBuildUp } from '../../build-up/minimum-build-up.js';
import type { FrostBase } from '../../ground/frost/frost-base.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import { custom, optional } from '../../input/field.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import type { SourceId } from '../../sources/catalogue.js';
import { isLength } from '../../units/is-length.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import {
  checkWidth,
  DRAW_FIELDS,
  drawStyle,
  type DrawOptions,
  type DrawStyle,
} from '../draw-options.js';
import { frameDrawing } from '../frame/frame-drawing.js';
import { grainRules, SAND, FROST, SOIL, STONE, SUB_BASE } from '../frame/grain-hatches.js';
import { PAVER, type Hatch } from '../frame/hatches.js';
import type { LegendEntry } from '../frame/legend.js';
import { LIFT_RULES } from '../frame/rules.js';
import { GROUND_TEXTS } from './ground-texts.js';
import { strataPicture, type Level, type Strata, type Stratum } from './strata.js';

/** How minimum layers are drawn. */
export interface DrawMinimumBuildUpOptions extends DrawOptions {
  /** The result of `frostBase`, to show how deep a base against frost would go. Default: not shown. */
  readonly frost?: Pick<FrostBase, 'limited' | 'complete'>;
}

type BaseAgainstFrost = NonNullable<DrawMinimumBuildUpOptions['frost']>;

const OPTIONS = shapeOf<DrawMinimumBuildUpOptions>()({
  ...DRAW_FIELDS,
  frost: optional(
    custom<BaseAgainstFrost>((reader, value, path) => {
      if (isFrostBase(value)) return value;
      const message = `must be the result of frostBase(), got ${shown(value)}`;
      reader.fail('WRONG_TYPE', path, message, { got: shown(value) });
      return { limited: NO_LENGTH, complete: NO_LENGTH };
    }),
  ),
});

/**
 * Draws minimum layers to scale: pavers, bedding, the published base and what is added to it, each with
 * its thickness and where it is from. With `frost`, two lines show how deep the base would go that limits
 * frost in the subgrade, and the base that keeps it out.
 *
 * @param minimum - the result of `minimumBuildUp`; not changed
 * @param options - see {@link DrawMinimumBuildUpOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `WRONG_TYPE`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `REQUIRED`, `UNKNOWN_FIELD`,
 *   `NOT_FINITE`
 * @example
 * const least = minimumBuildUp({ use: 'residential-driveway', subgrade: 'clay', frost: true });
 * const svg = drawMinimumBuildUp(least, { system: 'us' });
 * svg.includes('base for clay: 2 in, common practice') //=> true
 */
export function drawMinimumBuildUp(
  minimum: MinimumBuildUp,
  options: DrawMinimumBuildUpOptions,
): string {
  requireMinimum(minimum);
  const { frost, ...read } = readOptions(options, OPTIONS, checkWidth);
  const style = drawStyle(read, GROUND_TEXTS);
  const { label, units } = style;
  const parts = partsOf(minimum, style);
  const rules = frost === undefined ? [] : frostRules(minimum, frost, style);
  const strata = strataOf(parts, rules, style);
  const told = { limited: '', free: '' };
  if (frost !== undefined) {
    told.limited = units.depthWithUnit(frost.limited);
    told.free = units.depthWithUnit(frost.complete);
  }
  return frameDrawing(
    {
      kind: 'minimum',
      rules: [...grainRules(HATCHES), ...(frost === undefined ? [] : LIFT_RULES)],
      title: label('build-up-title'),
      notes: [
        `${label(units.isUs ? 'depths-us' : 'depths-metric')} ${label('ground-from-surface')} ${label('ground-to-scale')}`,
        label('build-up-note'),
      ],
      description: [
        label('describe-build-up', {
          layers: parts.map(({ words }) => words).join('; '),
          depth: units.depthWithUnit(totalOf(minimum)),
        }),
        ...(frost === undefined ? [] : [label('describe-rules', told)]),
      ].join(' '),
      legend: [
        ...parts.map(({ hatch, words }) => ({ sample: { hatch }, text: words })),
        ...rules.map(({ level, words }) => ({ sample: { line: level.line }, text: words })),
      ] satisfies LegendEntry[],
      draw: (top) => strataPicture(strata, top, style),
    },
    style,
  );
}

const totalOf = ({ paver, bedding, base }: MinimumBuildUp): Length =>
  paver.plus(bedding).plus(base);

/** A band of the layers, with where its thickness is from. */
interface Part {
  readonly name: string;
  readonly hatch: Hatch;
  readonly thickness: Length;
  readonly words: string;
}

const HATCH_OF = { clay: SUB_BASE, 'wet-or-weak': SUB_BASE, frost: FROST } as const;
const HATCHES = [PAVER, SAND, STONE, SUB_BASE, FROST, SOIL];

const ORIGINS = {
  'common-practice': 'origin-practice',
  'frost-base-page': 'origin-page',
  'wet-base-clause': 'origin-association',
} as const;

/** Where a thickness is from: the published minimum unless it is added. */
const originKey = (
  source: SourceId,
): 'origin-published' | (typeof ORIGINS)[keyof typeof ORIGINS] =>
  isAddition(source) ? ORIGINS[source] : 'origin-published';

const isAddition = (source: SourceId): source is keyof typeof ORIGINS =>
  Object.hasOwn(ORIGINS, source);

/** What is added stands below the published base. */
function partsOf(minimum: MinimumBuildUp, style: DrawStyle): Part[] {
  const { label, units } = style;
  const { paver, bedding, publishedBase, adjustments } = minimum;
  const part = (
    name: string,
    hatch: Hatch,
    thickness: Length,
    source: BaseAdjustment['source'],
  ): Part => {
    const values = { part: name, thickness: units.depthWithUnit(thickness) };
    const words = `${label('build-up-part', values)}, ${label(originKey(source))}`;
    return { name, hatch, thickness, words };
  };
  return [
    part(label('build-up-paver'), PAVER, paver, 'paver-tolerances'),
    part(label('build-up-bedding'), SAND, bedding, 'paver-tolerances'),
    part(label('build-up-published'), STONE, publishedBase, 'paver-tolerances'),
    ...adjustments.map(({ reason, added, source }) =>
      part(label(`build-up-${reason}`), HATCH_OF[reason], added, source),
    ),
  ];
}

/** A rule for the base: where its foot would be. */
interface Rule {
  readonly level: Level;
  readonly words: string;
}

function frostRules(
  { paver, bedding }: MinimumBuildUp,
  { limited, complete }: BaseAgainstFrost,
  { label, units }: DrawStyle,
): Rule[] {
  const above = paver.plus(bedding);
  const rule = (key: 'limited' | 'free', thickness: Length, line: string): Rule => {
    const foot = above.plus(thickness);
    const name = label(`build-up-${key}`);
    return {
      level: { name, depth: foot.toNumber('m'), figure: units.depth(foot), line },
      words: label(`build-up-${key}-line`, { thickness: units.depthWithUnit(thickness) }),
    };
  };
  return [rule('limited', limited, 'string'), rule('free', complete, 'old')];
}

/** The picture ends this much below the deepest line. */
const BELOW = 1.1;

function strataOf(parts: readonly Part[], rules: readonly Rule[], style: DrawStyle): Strata {
  const { label, units } = style;
  let top: Length = NO_LENGTH;
  const strata: Stratum[] = parts.map(({ name, hatch, thickness }) => {
    const from = top.toNumber('m');
    top = top.plus(thickness);
    return { name, hatch, top: from, bottom: top.toNumber('m'), figure: units.depth(thickness) };
  });
  const total = top.toNumber('m');
  const lowest = Math.max(total, ...rules.map(({ level }) => level.depth)) * BELOW;
  return {
    strata: [
      ...strata,
      { name: label('subgrade'), hatch: SOIL, top: total, bottom: lowest, figure: '' },
    ],
    levels: [
      { name: label('surface'), depth: 0, figure: units.depth(NO_LENGTH), line: 'finish' },
      { name: label('subgrade'), depth: total, figure: units.depth(top), line: 'edge' },
      ...rules.map(({ level }) => level),
    ],
    lowest,
    goesOn: true,
    reach: { depth: total, text: label('build-up-dig', { depth: units.depthWithUnit(top) }) },
  };
}

/**
 * Refuses what is no minimum build-up.
 *
 * @throws `WRONG_TYPE`
 */
function requireMinimum(value: unknown): asserts value is MinimumBuildUp {
  if (isMinimum(value)) return;
  const message = `pass the result of minimumBuildUp(), got ${shown(value)}`;
  throw fault('WRONG_TYPE', message, { got: shown(value) });
}

function isMinimum(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const { paver, bedding, base, publishedBase, adjustments } = value;
  return (
    [paver, bedding, base, publishedBase].every(isLength) &&
    Array.isArray(adjustments) &&
    adjustments.every(isAdjustment)
  );
}

function isAdjustment(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const { reason, added, source } = value;
  return (
    typeof reason === 'string' &&
    Object.hasOwn(HATCH_OF, reason) &&
    typeof source === 'string' &&
    isLength(added)
  );
}

const isFrostBase = (value: unknown): value is BaseAgainstFrost =>
  isPlain(value) && isLength(value['limited']) && isLength(value['complete']);
