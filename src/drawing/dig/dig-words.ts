import { tapeOfSheet } from '../../job/sheet/layout/tape-of-sheet.js';
import type { Length } from '../../units/quantity.js';
import type { DrawStyle } from '../draw-options.js';
import { labelName } from '../surface-rows.js';
import { digRow } from '../../job/sheet/sections/depth-rows.js';
import type { DigScene } from './dig-part.js';

/** Units, and what the depths come from. Internal. */
export function digNotes(of: DigScene, style: DrawStyle): string[] {
  const { label, units } = style;
  return [
    label(units.isUs ? 'dig-below-surface-us' : 'dig-below-surface-metric'),
    basisWords(of, style),
    label('caution-dig'),
  ];
}

/** Where the dig is deepest, and how figures stand. Internal. */
export function digRemarks(
  of: DigScene,
  steps: { readonly x: Length; readonly y: Length },
  style: DrawStyle,
): string[] {
  const { label, units } = style;
  const uncovered = !of.pavement.plan.earth.uncovered.isZero();
  return [
    ...deepestWords(of, style),
    ...(of.depthAt !== null
      ? [label('dig-grid', { x: units.long(steps.x), y: units.long(steps.y) })]
      : []),
    ...(uncovered ? [label('not-reached')] : []),
  ];
}

/** The one depth that holds, as the sheet prints it. Internal. */
export const evenDepth = ({ pavement: { plan } }: DigScene, { system }: DrawStyle): Length =>
  digRow(plan.dig, tapeOfSheet(system).onTape).dig;

function basisWords(of: DigScene, style: DrawStyle): string {
  const { label, units } = style;
  const { dig } = of.pavement.plan;
  if (dig.basis === 'spot-heights') return label('dig-from-spots');
  if (dig.basis === 'stake-levels') return label('dig-from-stakes');
  const row = evenDepth(of, style);
  const depth = units.depthWithUnit(row.abs());
  if (row.isNegative()) return label('one-depth-fill', { depth });
  return label(dig.basis === 'along-strings' ? 'dig-along-strings' : 'dig-uniform', { depth });
}

function deepestWords({ pavement }: DigScene, { label, units }: DrawStyle): string[] {
  const { deepestCut, deepestFill } = pavement.plan.earth;
  const told = (key: 'deepest-at' | 'lowest-at', found: typeof deepestCut): string[] =>
    found === null
      ? []
      : [
          label(key, {
            depth: units.depthWithUnit(found.depth),
            x: units.long(found.x),
            y: units.long(found.y),
          }),
        ];
  return [...told('deepest-at', deepestCut), ...told('lowest-at', deepestFill)];
}

/** The main figures in words. Internal. */
export const describeDig = (of: DigScene, style: DrawStyle): string =>
  style.label('describe-depths', {
    pavement: labelName(of.pavement.plan.name),
    basis: basisWords(of, style),
    deepest: deepestWords(of, style).join(' '),
  });
