import type { Length } from '../../../units/quantity.js';
import type { JobPlan, LevellingPlan } from '../../plan/plan.js';
import {
  entry,
  heading,
  paragraph,
  subheading,
  table,
  type SheetLine,
} from '../layout/sheet-lines.js';
import type { SheetUnits } from '../layout/units-of-sheet.js';

/** The part of the sheet about the instrument and the level book; nothing where there is neither. Internal. */
export function levelsSection({ levelBook, levelling }: JobPlan, units: SheetUnits): SheetLine[] {
  if (levelBook === null && levelling === null) return [];
  return [
    ...heading(`LEVELS (${units.levelUnit})`),
    ...(levelling === null ? [] : instrumentLines(levelling, units)),
    ...(levelBook === null ? [] : bookLines(levelBook, units)),
  ];
}

function instrumentLines(levelling: LevellingPlan, units: SheetUnits): SheetLine[] {
  const { closing } = levelling;
  const lines = [
    ...entry(levelling.benchmark, units.level(levelling.elevation)),
    ...entry('backsight', units.level(levelling.backsight)),
    ...entry('height of instrument', units.level(levelling.instrumentHeight)),
  ];
  if (closing === null) {
    const ask = 'Read the benchmark again before you pack up.';
    return [...lines, ...paragraph(ask, '  ')];
  }
  const verdict = closing.verdict === 'pass' ? 'ok' : 'MOVED';
  const drift = `${units.depthWithUnit(closing.drift.abs())} off, ${verdict}`;
  return [...lines, ...entry('benchmark read again', drift)];
}

function bookLines(
  { rows, misclosure, allowable, adjustment, note }: NonNullable<JobPlan['levelBook']>,
  units: SheetUnits,
): SheetLine[] {
  const body = rows.map(({ point, rise, fall, elevation, adjusted }) => [
    point,
    signed(rise ?? fall?.negated(), units),
    units.level(elevation),
    ...(adjustment === 'none' ? [] : [units.level(adjusted)]),
  ]);
  const head = ['point', 'rise', 'level', ...(adjustment === 'none' ? [] : ['adjusted'])];
  const closes = misclosure === null ? [] : entry('misclosure', units.level(misclosure));
  const allowed = allowable === null ? [] : entry('allowable', units.level(allowable));
  return [
    ...subheading('Level book'),
    ...table(body, head),
    ...closes,
    ...allowed,
    ...paragraph(note, '  '),
  ];
}

const signed = (rise: Length | undefined, units: SheetUnits): string =>
  rise === undefined ? '' : units.level(rise);
