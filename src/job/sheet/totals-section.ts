import { volume } from '../../units/construct.js';
import { wholePacks } from '../../volumes/whole-packs.js';
import type { JobTotals, StreamPlan } from '../plan.js';
import { entry, heading, wrap } from './layout.js';
import type { SheetUnits } from './units-of-sheet.js';

/** The part of the sheet about orders and loads. Internal. */
export function totalsSection(totals: JobTotals, units: SheetUnits, width: number): string[] {
  return [
    ...heading('ORDER AND CART AWAY', width),
    ...stream('Base stone', totals.base, units, width, true),
    ...stream('Bedding sand', totals.bedding, units, width, true),
    ...(totals.pavers === null ? [] : ['', ...entry('Pavers to order', `${totals.pavers}`, width)]),
    ...optional('Old asphalt', totals.asphalt, units, width),
    ...optional('Old concrete', totals.concrete, units, width),
    ...optional('Soil', totals.spoil, units, width),
  ];
}

const optional = (name: string, part: StreamPlan | null, units: SheetUnits, width: number) =>
  part === null ? [] : stream(name, part, units, width, false);

function stream(
  name: string,
  part: StreamPlan,
  units: SheetUnits,
  width: number,
  isOrdered: boolean,
): string[] {
  const { count, limitedBy } = part.loads;
  const limit = limitedBy === 'mass' ? 'payload' : 'box';
  const lines = [
    '',
    ...wrap(name, width),
    ...entry('loose', units.volume(part.loose.volume), width),
    ...entry('weight', units.mass(part.mass), width),
  ];
  if (isOrdered) {
    const { unit, name: packs } = units.orderVolume;
    const order = wholePacks({ volume: part.loose.volume, pack: volume(1, unit) });
    lines.push(...entry(`order in ${packs}`, `${order.count} ${unit}`, width));
  }
  lines.push(...entry(`loads (the ${limit} decides)`, `${count}`, width));
  return lines;
}
