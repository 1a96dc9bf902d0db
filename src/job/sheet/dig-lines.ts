import type { PavementPlan } from '../plan/plan.js';
import { digRow } from './depth-rows.js';
import { listed } from './group-warnings.js';
import { entry, wrap } from './layout.js';
import type { Sheet } from './sheet-context.js';
import type { SheetUnits } from './units-of-sheet.js';

const BASIS_WORDS: Readonly<Record<PavementPlan['dig']['basis'], string>> = {
  'spot-heights': 'on average, from spot levels',
  'stake-levels': 'on average, from ground levels at the stakes',
  'along-strings': 'on average, along the strings',
  uniform: 'one depth all over: measure at the stakes',
};

/** Depth of dig below the existing surface, and old paving piece by piece. Internal. */
export function digLines(plan: PavementPlan, { units, width }: Sheet): string[] {
  const { dig, oldPaving, buildUp } = plan;
  const row = digRow(dig, units.onTape);
  const isFill = dig.depth.isNegative();
  const old = row.old.isZero()
    ? []
    : [
        ...entry('old paving, averaged over the dig', units.depth(row.old), width),
        ...entry(
          row.soil.isNegative() ? 'fill after stripping' : 'soil to dig after stripping',
          units.depth(row.soil.abs()),
          width,
        ),
      ];
  return [
    '',
    ...wrap(`Depth of dig from existing surface (${units.depthUnit})`, width),
    ...entry('build-up, finished grade to subgrade', units.depth(buildUp.total), width),
    ...entry(isFill ? 'fill' : 'dig', units.depth(row.dig.abs()), width),
    ...wrap(`(${BASIS_WORDS[dig.basis]})`, width, '    '),
    ...old,
    ...oldPaving.flatMap(({ material, thickness, area }) =>
      entry(`strip old ${material}, ${units.area(area)}`, units.depth(thickness), width),
    ),
    ...unmeasuredLines(plan, width),
  ];
}

function unmeasuredLines({ dig }: PavementPlan, width: number): string[] {
  if (dig.measured.length === 0 || dig.unmeasured.length === 0) return [];
  const rest = dig.basis === 'spot-heights' ? 'spot levels' : 'other stakes';
  const text = `No ground reading at ${listed(dig.unmeasured)}: the depth is taken from the ${rest}.`;
  return wrap(text, width, '  ');
}

/** Cut and fill where levels of the ground give them; nothing where one depth holds. Internal. */
export function earthLines({ earth }: PavementPlan, { units, width }: Sheet): string[] {
  const { cut, fill, sides, cutArea, fillArea, deepestCut, deepestFill, uncovered } = earth;
  const slopes = sides.isZero()
    ? []
    : entry('  of this behind sloped sides', units.volume(sides), width);
  if (cutArea === null || fillArea === null) {
    return slopes.length === 0
      ? []
      : ['', 'Cut', ...entry('soil to dig, bank', units.volume(cut.volume), width), ...slopes];
  }
  return [
    '',
    'Cut and fill from levels of the ground',
    ...entry('soil to dig, bank', units.volume(cut.volume), width),
    ...slopes,
    ...entry('over', units.area(cutArea), width),
    ...placeLines('deepest dig', deepestCut, { units, width }),
    ...(uncovered.isZero()
      ? []
      : [
          ...entry('not reached by levels', units.area(uncovered), width),
          ...wrap('(counted at the average depth of the rest)', width, '    '),
        ]),
    ...doubtLines(earth, { units, width }),
    ...(fill.volume.isZero()
      ? []
      : [
          ...entry('fill, compacted', units.volume(fill.volume), width),
          ...entry('over', units.area(fillArea), width),
          ...placeLines('lowest ground, below subgrade', deepestFill, { units, width }),
        ]),
  ];
}

/** How far cut or fill is open, where it shows in print. */
function doubtLines(
  { diagonalDoubt }: PavementPlan['earth'],
  { units, width }: { readonly units: SheetUnits; readonly width: number },
): string[] {
  const printed = units.volume(diagonalDoubt);
  if (printed === units.volume(diagonalDoubt.times(0))) return [];
  return [
    ...entry('  more or less by', printed, width),
    ...wrap('(four levels on one circle can be joined along either diagonal)', width, '    '),
  ];
}

function placeLines(
  name: string,
  found: PavementPlan['earth']['deepestCut'],
  { units, width }: { readonly units: SheetUnits; readonly width: number },
): string[] {
  if (found === null) return [];
  return [
    ...entry(name, units.depthWithUnit(found.depth), width),
    ...wrap(`at x ${units.long(found.x)}, y ${units.long(found.y)}`, width, '    '),
  ];
}
