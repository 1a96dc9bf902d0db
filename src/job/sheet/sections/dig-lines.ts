import { listed } from '../../listed.js';
import type { PavementPlan } from '../../plan/plan.js';
import { digRow } from './depth-rows.js';
import { entry, paragraph, subheading, type SheetLine } from '../layout/sheet-lines.js';
import type { Sheet } from '../layout/sheet-context.js';
import type { SheetUnits } from '../layout/units-of-sheet.js';

const BASIS_WORDS: Readonly<Record<PavementPlan['dig']['basis'], string>> = {
  'spot-heights': 'on average, from spot levels',
  'stake-levels': 'on average, from ground levels at the stakes',
  'along-strings': 'on average, along the strings',
  uniform: 'one depth for the whole dig: measure at the stakes',
};

/** Depth of dig below the existing surface, and old paving piece by piece. Internal. */
export function digLines(plan: PavementPlan, { units }: Sheet): SheetLine[] {
  const { dig, oldPaving, buildUp } = plan;
  const row = digRow(dig, units.onTape);
  const isFill = dig.depth.isNegative();
  const old = row.old.isZero()
    ? []
    : [
        ...entry('old paving, averaged over the dig', units.depth(row.old)),
        ...entry(
          row.soil.isNegative() ? 'fill after stripping' : 'soil to dig after stripping',
          units.depth(row.soil.abs()),
        ),
      ];
  return [
    ...subheading(`Depth of dig from existing surface (${units.depthUnit})`),
    ...entry('build-up, finished grade to subgrade', units.depth(buildUp.total)),
    ...entry(isFill ? 'fill' : 'dig', units.depth(row.dig.abs())),
    ...paragraph(`(${BASIS_WORDS[dig.basis]})`, '    '),
    ...old,
    ...oldPaving.flatMap(({ material, thickness, area }) =>
      entry(`strip old ${material}, ${units.area(area)}`, units.depth(thickness)),
    ),
    ...unmeasuredLines(plan),
  ];
}

function unmeasuredLines({ dig }: PavementPlan): SheetLine[] {
  if (dig.measured.length === 0 || dig.unmeasured.length === 0) return [];
  const rest = dig.basis === 'spot-heights' ? 'spot levels' : 'other stakes';
  const text = `No ground reading at ${listed(dig.unmeasured)}: the depth is taken from the ${rest}.`;
  return paragraph(text, '  ');
}

/** Cut and fill where levels of the ground give them; nothing where one depth holds. Internal. */
export function earthLines({ earth }: PavementPlan, { units }: Sheet): SheetLine[] {
  const { cut, fill, sides, cutArea, fillArea, deepestCut, deepestFill, uncovered } = earth;
  const slopes = sides.isZero() ? [] : entry('  of this behind sloped sides', units.volume(sides));
  if (cutArea === null || fillArea === null) {
    return slopes.length === 0
      ? []
      : [...subheading('Cut'), ...entry('soil to dig, bank', units.volume(cut.volume)), ...slopes];
  }
  return [
    ...subheading('Cut and fill from levels of the ground'),
    ...entry('soil to dig, bank', units.volume(cut.volume)),
    ...slopes,
    ...entry('over', units.area(cutArea)),
    ...placeLines('deepest dig', deepestCut, { units }),
    ...(uncovered.isZero()
      ? []
      : [
          ...entry('outside the ground levels', units.area(uncovered)),
          ...paragraph('(counted at the average depth of the rest)', '    '),
        ]),
    ...doubtLines(earth, { units }),
    ...(fill.volume.isZero()
      ? []
      : [
          ...entry('fill, compacted', units.volume(fill.volume)),
          ...entry('over', units.area(fillArea)),
          ...placeLines('lowest ground, below subgrade', deepestFill, { units }),
        ]),
  ];
}

/** How far cut or fill is open, where it shows in print. */
function doubtLines(
  { diagonalDoubt }: PavementPlan['earth'],
  { units }: { readonly units: SheetUnits },
): SheetLine[] {
  const printed = units.volume(diagonalDoubt);
  if (printed === units.volume(diagonalDoubt.times(0))) return [];
  return [
    ...entry('  more or less by', printed),
    ...paragraph('(four levels on one circle can be joined along either diagonal)', '    '),
  ];
}

function placeLines(
  name: string,
  found: PavementPlan['earth']['deepestCut'],
  { units }: { readonly units: SheetUnits },
): SheetLine[] {
  if (found === null) return [];
  return [
    ...entry(name, units.depthWithUnit(found.depth)),
    ...paragraph(`at x ${units.long(found.x)}, y ${units.long(found.y)}`, '    '),
  ];
}
