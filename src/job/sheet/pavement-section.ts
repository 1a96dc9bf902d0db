import type { PavementPlan } from '../plan/plan.js';
import { entry, heading, table, wrap } from './layout.js';
import { nearbySection } from './nearby-section.js';
import { slopeText, type SheetUnits } from './units-of-sheet.js';

const USE_WORDS: Readonly<Record<PavementPlan['use'], string>> = {
  pedestrian: 'for walking',
  'residential-driveway': 'residential driveway',
  'parking-or-residential-street': 'parking or residential street',
};

const SUBGRADE_WORDS: Readonly<Record<PavementPlan['subgrade'], string>> = {
  'well-drained': 'well-drained ground',
  clay: 'clay',
  'wet-or-weak': 'wet or weak ground',
};

/** The part of the sheet about one pavement. Internal. */
export function pavementSection(plan: PavementPlan, units: SheetUnits, width: number): string[] {
  const frost = plan.frost ? ', frost' : '';
  return [
    ...heading(plan.name.toUpperCase(), width),
    ...wrap(`${USE_WORDS[plan.use]} on ${SUBGRADE_WORDS[plan.subgrade]}${frost}`, width),
    ...depthLines(plan, units, width),
    ...gradeLines(plan, units, width),
    ...digLines(plan, units, width),
    ...earthLines(plan, units, width),
    ...outlineLines(plan, units, width),
    ...nearbySection(plan, units, width),
    ...liftLines(plan, units, width),
    ...orderLines(plan, units, width),
  ];
}

function depthLines({ buildUp, stringHeight }: PavementPlan, units: SheetUnits, width: number) {
  const below = (depth: (typeof buildUp)['total']) => units.depth(stringHeight.plus(depth));
  const rows = [
    ['layer', 'thick', 'top', 'bottom'],
    ...buildUp.layers.map(({ name, thickness, top, bottom }) => [
      name,
      units.depth(thickness),
      below(top),
      below(bottom),
    ]),
  ];
  return [
    '',
    ...wrap(
      `Depths below a string ${units.depthWithUnit(stringHeight)} above finished grade (${units.depthUnit})`,
      width,
    ),
    ...table(rows, width),
    ...entry('subgrade: dig to', below(buildUp.total), width),
  ];
}

function gradeLines({ grade }: PavementPlan, units: SheetUnits, width: number): string[] {
  if (grade === null) return [];
  const levels = grade.levels.map(({ name, elevation, miss }) => [
    name,
    units.elevation(elevation),
    miss.isZero()
      ? 'met'
      : `${units.depthWithUnit(miss.abs())} ${miss.isNegative() ? 'below' : 'above'}`,
  ]);
  const stretches = grade.stretches.map(({ from, to, grade: along, fall }) => [
    along.isNegative() || along.isZero() ? `${from} to ${to}` : `${to} to ${from}`,
    `along ${slopeText(along.abs())}`,
    `in all ${slopeText(fall)}`,
  ]);
  const verdict = grade.verdict === 'pass' ? 'ok' : 'TOO FLAT';
  return [
    '',
    ...wrap(`Finished grade, ${GRADE_WORDS[grade.kind]}`, width),
    ...table([['fixed level', 'elevation', 'finish'], ...levels], width),
    ...table(stretches, width),
    ...(grade.twist === null ? [] : entry('twist', units.depthWithUnit(grade.twist.abs()), width)),
    ...entry('steepest fall', slopeText(grade.steepest), width),
    ...entry('flattest fall', `${slopeText(grade.flattest)} ${verdict}`, width),
  ];
}

const GRADE_WORDS: Readonly<Record<NonNullable<PavementPlan['grade']>['kind'], string>> = {
  line: 'straight from level to level',
  plane: 'one plane',
  warped: 'warped between four corners',
};

function digLines({ dig, oldSurface, buildUp }: PavementPlan, units: SheetUnits, width: number) {
  const isFill = dig.depth.isNegative();
  const basis = {
    surface: 'mean over the spot heights',
    measured: `mean of ${dig.measuredStakes} measured stakes`,
    uniform: 'the same all over: measure at the stakes',
  }[dig.basis];
  const old =
    oldSurface === null
      ? []
      : [
          ...entry(`old ${oldSurface.material} to strip`, units.depth(oldSurface.thickness), width),
          ...entry(
            dig.soil.isNegative() ? 'then fill' : 'then soil to dig',
            units.depth(dig.soil.abs()),
            width,
          ),
        ];
  return [
    '',
    ...wrap(`Dig below the surface now there (${units.depthUnit})`, width),
    ...entry('build-up', units.depth(buildUp.total), width),
    ...entry(isFill ? 'fill' : 'dig', units.depth(dig.depth.abs()), width),
    ...wrap(`(${basis})`, width, '    '),
    ...old,
  ];
}

function earthLines({ earthwork }: PavementPlan, units: SheetUnits, width: number): string[] {
  if (earthwork === null) return [];
  const { cut, fill, cutArea, fillArea, deepestCut, deepestFill, uniformOff } = earthwork;
  const place = (name: string, found: typeof deepestCut) =>
    found === null
      ? []
      : [
          ...entry(name, units.depthWithUnit(found.depth), width),
          ...wrap(`at x ${units.long(found.x)}, y ${units.long(found.y)}`, width, '    '),
        ];
  const over = uniformOff.isNegative() ? 'too little' : 'too much';
  return [
    '',
    'Earth by spot heights',
    ...entry('cut, in the bank', units.volume(cut.volume), width),
    ...entry('over', units.area(cutArea), width),
    ...place('deepest cut', deepestCut),
    ...(fill.volume.isZero()
      ? []
      : [
          ...entry('fill, in place', units.volume(fill.volume), width),
          ...entry('over', units.area(fillArea), width),
          ...place('deepest fill', deepestFill),
        ]),
    ...entry('one depth all over says', `${units.volume(uniformOff.abs())} ${over}`, width),
  ];
}

function outlineLines({ edges, areas }: PavementPlan, units: SheetUnits, width: number) {
  const rows = [
    ['edge', 'long', 'base out', 'dig out'],
    ...edges.map(({ edge, kind, length, base, dig }) => [
      `${edge + 1} ${kind}`,
      units.long(length),
      units.depth(base),
      units.depth(dig),
    ]),
  ];
  return [
    '',
    ...wrap(`Mark the dig out from the paving (${units.depthUnit})`, width),
    ...table(rows, width),
    ...entry('paving', units.area(areas.paving), width),
    ...entry('base', units.area(areas.base), width),
    ...entry('dig', units.area(areas.dig), width),
  ];
}

function liftLines({ lifts }: PavementPlan, units: SheetUnits, width: number) {
  const rows = [
    ['lift', 'spread', 'compact', 'loose top', 'top'],
    ...lifts.map(({ lift, loose, compacted, looseBelowString, belowString }) => [
      `${lift}`,
      units.depth(loose),
      units.depth(compacted),
      units.depth(looseBelowString),
      units.depth(belowString),
    ]),
  ];
  return [
    '',
    ...wrap(`Base in lifts, lowest first; tops below the same string (${units.depthUnit})`, width),
    ...table(rows, width),
  ];
}

function orderLines(plan: PavementPlan, units: SheetUnits, width: number) {
  const { base, bedding, pavers, spoil, oldSurface } = plan;
  const lines = [
    '',
    'Quantities',
    ...entry('base, compacted', units.volume(base.compacted.volume), width),
    ...entry('base, loose', units.volume(base.loose.volume), width),
    ...entry('base, delivered', units.mass(base.deliveredMass), width),
    ...entry('bedding, compacted', units.volume(bedding.compacted.volume), width),
    ...entry('bedding, loose', units.volume(bedding.loose.volume), width),
    ...entry('bedding, delivered', units.mass(bedding.deliveredMass), width),
  ];
  if (pavers !== null) {
    lines.push(...entry('pavers to fill / to order', `${pavers.whole} / ${pavers.order}`, width));
    if (pavers.cut !== null) lines.push(...entry('of these cut', `${pavers.cut}`, width));
    if (pavers.border > 0) lines.push(...entry('for the border', `${pavers.border}`, width));
  }
  if (oldSurface !== null) {
    lines.push(
      ...entry(`old ${oldSurface.material}, in place`, units.volume(oldSurface.inPlace), width),
      ...entry(`old ${oldSurface.material}, weight`, units.mass(oldSurface.mass), width),
    );
  }
  lines.push(
    ...entry('soil, in the bank', units.volume(spoil.bank.volume), width),
    ...entry('soil, loose', units.volume(spoil.loose.volume), width),
  );
  return lines;
}
