import { checkPlant } from '../../ground/compaction/plant.js';
import { isLeftOut } from '../../input/shape.js';
import type { Reader } from '../../input/reader.js';
import type { PartJob } from './part-job.js';
import { requireId } from './unknown-id.js';

/** Checks the machine, the stones that are named, and that the ground thaws. Internal. */
export function checkGround(reader: Reader, { ground, materials }: PartJob): void {
  if (ground === undefined) return;
  const { plant, optimum, frost } = ground;
  if (plant !== undefined) {
    // a measure that could not be read is not missing as well
    const raw = {
      plateArea: isLeftOut(plant, 'plateArea') ? undefined : true,
      drumWidth: isLeftOut(plant, 'drumWidth') ? undefined : true,
    };
    checkPlant(reader, plant, ['ground', 'plant'], raw);
  }
  const ids = (materials?.stones ?? []).map((stone) => stone?.id);
  optimum?.forEach((one, index) => {
    if (one?.stone === undefined || materials?.stones === undefined) return;
    const path = ['ground', 'optimum', index, 'stone'];
    requireId(reader, path, { what: 'stone', id: one.stone, ids });
  });
  const mean = frost?.meanAnnual;
  if (mean?.unit === 'F' && mean.value?.lt(32) === true) {
    const message = 'below freezing all year: permafrost. This plan is for ground that thaws';
    reader.fail('OUT_OF_RANGE', ['ground', 'frost', 'meanAnnual', 'value'], message);
  }
  if (mean?.unit === 'C' && mean.value?.gt(60) === true) {
    const message = 'over 60 degrees C. Is that Fahrenheit?';
    reader.fail('OUT_OF_RANGE', ['ground', 'frost', 'meanAnnual', 'value'], message);
  }
}
