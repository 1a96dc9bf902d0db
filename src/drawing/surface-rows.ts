import { entry, lastOf } from '../invariant.js';
import { tapeOfSheet } from '../job/sheet/layout/tape-of-sheet.js';
import type { LayerKind } from '../job/schema/pavement-input.js';
import type { PavementPlan } from '../job/plan/plan.js';
import { layerRows, liftRows } from '../job/sheet/sections/depth-rows.js';
import type { Length } from '../units/quantity.js';
import type { DrawStyle } from './draw-options.js';
import { SAND, STONE, SUB_BASE } from './frame/grain-hatches.js';
import { PAVER, type Hatch } from './frame/hatches.js';
import { shownName } from './svg/escape-text.js';
import { fitText } from './svg/text-width.js';

/** A surface below a string, with its depth as the sheet prints it. Internal. */
export interface SurfaceRow {
  readonly kind: 'finish' | 'layer' | 'lift' | 'subgrade';
  readonly name: string;
  /** Below the string [m]. */
  readonly depth: number;
  readonly figure: string;
}

/** A layer below a string, with its thickness as the sheet prints it. Internal. */
export interface LayerMark {
  readonly name: string;
  readonly layer: LayerKind;
  readonly hatch: Hatch;
  /** Below the string [m]. */
  readonly top: number;
  readonly bottom: number;
  readonly figure: string;
}

const HATCH_OF: Readonly<Record<LayerKind, Hatch>> = {
  paver: PAVER,
  bedding: SAND,
  base: STONE,
  'sub-base': SUB_BASE,
};

/** The hatches that layers have. Internal. */
export const LAYER_HATCHES: readonly Hatch[] = [PAVER, SAND, STONE, SUB_BASE];

/** Longest name that a label shows, in type sizes. */
const LONGEST_NAME = 14;

/** A name as a label shows it: on one line, cut if it is long. Internal. */
export const labelName = (name: string, longest = LONGEST_NAME): string =>
  shownName(fitText(name, 1, longest));

/** The layers of a pavement below a string. Internal. */
export const layerMarks = (
  { buildUp, layerKinds }: PavementPlan,
  height: Length,
  { units, system }: DrawStyle,
): LayerMark[] =>
  layerRows(buildUp, height, tapeOfSheet(system).onTape).map(({ name, thickness }, index) => {
    const layer = layerKinds[index] ?? 'base';
    const of = buildUp.layers[index];
    return {
      name: labelName(name),
      layer,
      hatch: HATCH_OF[layer],
      top: of === undefined ? 0 : height.plus(of.top).toNumber('m'),
      bottom: of === undefined ? 0 : height.plus(of.bottom).toNumber('m'),
      figure: units.depth(thickness),
    };
  });

/** The surfaces of a pavement below a string, from finished grade down. Internal. */
export function surfaceRows(
  pavement: PavementPlan,
  height: Length,
  style: DrawStyle,
): SurfaceRow[] {
  const { units, label } = style;
  const { onTape } = tapeOfSheet(style.system);
  const { buildUp, lifts } = pavement;
  const printed = layerRows(buildUp, height, onTape);
  const layers = buildUp.layers.map(({ name, top }, index): SurfaceRow => ({
    kind: index === 0 ? 'finish' : 'layer',
    name: index === 0 ? label('finish') : label('layer-top', { layer: labelName(name) }),
    depth: height.plus(top).toNumber('m'),
    figure: units.depth(entry(printed, index).top),
  }));
  const placed = liftRows(lifts, { height, total: buildUp.total, tape: onTape });
  const tops = lifts.flatMap(({ lift, belowFinish }, index): SurfaceRow[] =>
    buildUp.layers.some(({ top }) => top.equals(belowFinish))
      ? []
      : [
          {
            kind: 'lift',
            name: label('lift-top', { lift: `${lift}` }),
            depth: height.plus(belowFinish).toNumber('m'),
            figure: units.depth(entry(placed, index).compactedTop),
          },
        ],
  );
  const bottom = lastOf(printed).bottom;
  return [
    ...[...layers, ...tops].sort((a, b) => a.depth - b.depth),
    {
      kind: 'subgrade',
      name: label('subgrade'),
      depth: height.plus(buildUp.total).toNumber('m'),
      figure: units.depth(bottom),
    },
  ];
}
