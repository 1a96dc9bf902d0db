import { MOST_LIFTS } from '../../build-up/lifts.js';
import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { shown } from '../../input/shown.js';
import { ringsOf } from '../../outline/ring.js';
import { wholeNumberUp } from '../../units/format-quantity.js';
import type { ReadJob } from '../schema/job-shape.js';
import { checkLayers } from './check-layers.js';
import { checkLevels } from './check-levels.js';
import { checkSite } from './check-site.js';
import { checkStrings } from './check-strings.js';
import type { Partly } from './partly.js';

/** What could be read of a job. Internal. */
export type PartJob = Partly<ReadJob>;
/** What could be read of a pavement. Internal. */
export type PartPavement = Partly<ReadJob['pavements'][number]>;

/** Faults that only the whole job shows; judges what could be read. Internal. */
export function crossChecks(reader: Reader, job: PartJob): void {
  job.pavements?.forEach((pavement, index) => {
    if (pavement === undefined) return;
    checkLayers(reader, pavement.layers, ['pavements', index, 'layers']);
    checkEdges(reader, pavement, ['pavements', index, 'edges']);
  });
  checkLifts(reader, job);
  checkSite(reader, job);
  checkLevels(reader, job);
  checkStrings(reader, job);
}

function checkEdges(reader: Reader, { edges, outline }: PartPavement, path: FieldPath): void {
  if (edges === undefined || outline === undefined) return;
  const count = ringsOf(outline).reduce((sum, { points }) => sum + points.length, 0);
  if (edges.length === count) return;
  const listed = edges.length === 1 ? '1 edge is' : `${edges.length} edges are`;
  const message = `${listed} listed for an outline of ${count}. List one for each: edge k runs from point k to the next`;
  reader.fail('COUNT_MISMATCH', path, message, { edges: count, got: edges.length });
}

/** The stone is placed in lifts of which there are not too many. */
function checkLifts(reader: Reader, { pavements, base }: PartJob): void {
  const maxLift = base?.maxLift;
  if (maxLift === undefined) return;
  const counts = (pavements ?? []).flatMap((pavement) =>
    (pavement?.layers ?? []).flatMap((layer) => {
      const isStone = layer?.kind === 'base' || layer?.kind === 'sub-base';
      if (!isStone || layer.thickness === undefined) return [];
      return [wholeNumberUp(layer.thickness, maxLift)];
    }),
  );
  const count = Math.max(0, ...counts);
  if (count <= MOST_LIFTS) return;
  const message = `makes ${count} lifts, more than ${MOST_LIFTS}. Check the digits and the unit`;
  reader.fail('OUT_OF_RANGE', ['base', 'maxLift'], message, { got: count });
}

/** An id that is not in the job, in words that name those that are. Internal. */
export function unknownId(what: string, id: string, ids: readonly string[]): string {
  const known = ids.length === 0 ? '' : `. Use ${ids.slice(0, 7).join(', ')}`;
  return `no ${what} has the id ${shown(id)}${known}`;
}
