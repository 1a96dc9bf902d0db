import type { Reader } from '../../input/reader.js';
import type { Job } from '../schema/schema.js';

/** Faults in lines, trees and materials that only the whole job shows. Internal. */
export function checkSite(reader: Reader, { materials, paver }: Job): void {
  if (materials?.jointSand !== undefined && paver === undefined) {
    reader.fail('REQUIRED', ['paver'], 'is missing: joint sand goes by the size of the units');
  }
  for (const name of ['base', 'bedding'] as const) {
    const pack = materials?.packs?.[name];
    if (pack === undefined) continue;
    const path = ['materials', 'packs', name];
    if (pack.volume === undefined && pack.mass === undefined) {
      reader.fail('REQUIRED', path, 'give what a pack holds: volume or mass');
    }
    if (pack.volume !== undefined && pack.mass !== undefined) {
      reader.fail('ONE_OF', [...path, 'mass'], 'give volume or mass, not both');
    }
  }
}
