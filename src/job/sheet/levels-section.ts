import type { Length } from '../../units/quantity.js';
import type { JobPlan, LevellingPlan } from '../plan/plan.js';
import { entry, heading, table, wrap } from './layout.js';
import type { SheetUnits } from './units-of-sheet.js';

/** The part of the sheet about the instrument and the level book; nothing where there is neither. Internal. */
export function levelsSection(
  { levelBook, levelling }: JobPlan,
  units: SheetUnits,
  width: number,
): string[] {
  if (levelBook === null && levelling === null) return [];
  return [
    ...heading(`LEVELS (${units.levelUnit})`, width),
    ...(levelling === null ? [] : instrumentLines(levelling, units, width)),
    ...(levelBook === null ? [] : bookLines(levelBook, units, width)),
  ];
}

function instrumentLines(levelling: LevellingPlan, units: SheetUnits, width: number): string[] {
  const { closing } = levelling;
  const lines = [
    ...entry(levelling.benchmark, units.level(levelling.elevation), width),
    ...entry('backsight', units.level(levelling.backsight), width),
    ...entry('height of instrument', units.level(levelling.instrumentHeight), width),
  ];
  if (closing === null) {
    const ask = 'Read the benchmark again before you pack up.';
    return [...lines, ...wrap(ask, width, '  ')];
  }
  const verdict = closing.verdict === 'pass' ? 'ok' : 'MOVED';
  const drift = `${units.depthWithUnit(closing.drift.abs())} off, ${verdict}`;
  return [...lines, ...entry('benchmark read again', drift, width)];
}

function bookLines(
  { rows, misclosure, allowable, adjustment, note }: NonNullable<JobPlan['levelBook']>,
  units: SheetUnits,
  width: number,
): string[] {
  const body = rows.map(({ point, rise, fall, elevation, adjusted }) => [
    point,
    signed(rise ?? fall?.negated(), units),
    units.level(elevation),
    ...(adjustment === 'none' ? [] : [units.level(adjusted)]),
  ]);
  const head = ['point', 'rise', 'level', ...(adjustment === 'none' ? [] : ['adjusted'])];
  const closes = misclosure === null ? [] : entry('misclosure', units.level(misclosure), width);
  const allowed = allowable === null ? [] : entry('allowable', units.level(allowable), width);
  return [
    '',
    'Level book',
    ...table([head, ...body], width),
    ...closes,
    ...allowed,
    ...wrap(note, width, '  '),
  ];
}

const signed = (rise: Length | undefined, units: SheetUnits): string =>
  rise === undefined ? '' : units.level(rise);
