import type { Reader } from '../../input/reader.js';
import { isLeftOut } from '../../input/shape.js';
import type { PartJob } from './cross-checks.js';

/** Faults in supplies that only the whole job shows. Internal. */
export function checkSite(reader: Reader, job: PartJob): void {
  const { materials } = job;
  if (materials?.jointSand !== undefined && isLeftOut(job, 'paver')) {
    const message = 'missing. Joint sand is worked out from the size of the pavers';
    reader.fail('REQUIRED', ['paver'], message);
  }
  for (const name of ['base', 'bedding'] as const) {
    const pack = materials?.packs?.[name];
    if (pack === undefined) continue;
    const path = ['materials', 'packs', name];
    const isNothing = isLeftOut(pack, 'volume') && isLeftOut(pack, 'mass');
    if (isNothing) reader.fail('REQUIRED', path, 'give volume or mass: what a pack holds');
    if (pack.volume !== undefined && pack.mass !== undefined) {
      reader.fail('CONFLICTING_FIELDS', [...path, 'mass'], 'give volume or mass, not both', {
        choices: 'volume, mass',
      });
    }
  }
}
