import type { Reader } from '../../input/reader.js';
import { checkBetween } from './check-between.js';
import { checkEdges } from './check-edges.js';
import { checkElevations } from './check-elevations.js';
import { checkGround } from './check-ground.js';
import { checkLayers } from './check-layers.js';
import { checkLevels } from './check-levels.js';
import { checkMaterials, checkMaterialsOf } from './check-materials.js';
import { checkOldPaving } from './check-old-paving.js';
import { checkStrings } from './check-strings.js';
import { checkUtilities } from './check-utilities.js';
import type { PartJob } from './part-job.js';

/** Finds faults between parts of the job, as far as these could be read; `input` is the job as given. Internal. */
export function crossChecks(reader: Reader, job: PartJob, input: unknown): void {
  job.pavements?.forEach((pavement, index) => {
    if (pavement === undefined) return;
    checkLayers(reader, pavement.layers, ['pavements', index, 'layers']);
    checkEdges(reader, pavement, ['pavements', index]);
    checkMaterialsOf(reader, job, { pavement, path: ['pavements', index] });
    checkBetween(reader, job, { pavement, path: ['pavements', index, 'betweenStrings'] });
  });
  checkMaterials(reader, job);
  checkGround(reader, job);
  checkOldPaving(reader, job);
  checkLevels(reader, job);
  checkStrings(reader, job);
  checkUtilities(reader, job);
  checkElevations(reader, job, input);
}
