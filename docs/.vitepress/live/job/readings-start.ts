import type { JobPlan } from 'settline/job';
import { formatFor, type UnitSystem } from 'settline/units';

/** Readings to start with: the subgrade at every stake of the first string, as planned. */
export function readingsStart(plan: JobPlan, system: UnitSystem): string {
  const [line] = plan.stringLines;
  const subgrade = line?.surfaces.find(({ surface }) => surface === 'subgrade');
  const planned = subgrade === undefined ? '' : formatFor(subgrade.belowString, system);
  const readings = (line?.stakes ?? []).map(({ id }) => ({
    stake: id,
    string: line?.id ?? '',
    surface: 'subgrade',
    belowString: planned,
  }));
  const [over, under] = system === 'us' ? ['1/4 in', '3/4 in'] : ['6 mm', '20 mm'];
  const rows = readings.map((reading) => `    ${JSON.stringify(reading)}`).join(',\n');
  const tolerance = JSON.stringify({ over, under });
  return `{\n  "readings": [\n${rows}\n  ],\n  "tolerances": { "subgrade": ${tolerance} }\n}`;
}
