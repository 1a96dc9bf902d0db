import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { shown } from '../../input/shown.js';
import type { ReadJob } from '../schema/job-shape.js';
import { unknownId, type PartJob } from './cross-checks.js';
import { areFarApart, farApart } from './far-apart.js';
import type { Partly } from './partly.js';

type PartString = Partly<ReadJob['stringLines'][number]>;

/** Strings serve a pavement of the job, and their stakes are apart. Internal. */
export function checkStrings(reader: Reader, job: PartJob): void {
  const strings = job.stringLines ?? [];
  checkStakeIds(reader, strings);
  strings.forEach((line, index) => {
    if (line === undefined) return;
    checkPavement(reader, line, { job, path: ['stringLines', index, 'pavement'] });
    checkPlaces(reader, line, ['stringLines', index, 'stakes']);
    checkReach(reader, line, ['stringLines', index, 'stakes']);
  });
}

/** No stake id is used twice, on one string or on two. */
function checkStakeIds(reader: Reader, strings: readonly (PartString | undefined)[]): void {
  const first = new Map<string, string>();
  strings.forEach((line, index) => {
    line?.stakes?.forEach((stake, k) => {
      if (stake?.id === undefined) return;
      const earlier = first.get(stake.id);
      if (earlier === undefined) first.set(stake.id, `stringLines[${index}].stakes[${k}]`);
      else {
        const path = ['stringLines', index, 'stakes', k, 'id'];
        const message = `${shown(stake.id)} is already used by ${earlier}. Give each stake its own id`;
        reader.fail('DUPLICATE_ID', path, message, { id: stake.id, earlier });
      }
    });
  });
}

function checkPavement(
  reader: Reader,
  { pavement }: PartString,
  { job, path }: { readonly job: PartJob; readonly path: FieldPath },
): void {
  if (pavement === undefined || job.pavements === undefined) return;
  const ids = job.pavements.map((one) => one?.id);
  // a pavement whose id could not be read may be the one that is meant
  if (ids.length === 0 || ids.includes(pavement) || ids.includes(undefined)) return;
  const known = ids.filter((id) => id !== undefined);
  reader.fail('UNKNOWN_ID', path, unknownId('pavement', pavement, known), { id: pavement });
}

/** A stake far from its neighbours is one fault, not one for each stake after it. */
function checkReach(reader: Reader, { stakes = [] }: PartString, path: FieldPath): void {
  const far = stakes.findIndex((stake, k) => k > 0 && areFarApart(stakes[k - 1], stake));
  if (far > 0) reader.fail('OUT_OF_RANGE', [...path, far], farApart('stake'));
}

function checkPlaces(reader: Reader, { stakes = [] }: PartString, path: FieldPath): void {
  if (stakes.length < 2) return;
  const isSame = (a: (typeof stakes)[number], b: (typeof stakes)[number]): boolean =>
    a?.x !== undefined &&
    b?.x !== undefined &&
    a.y !== undefined &&
    b.y !== undefined &&
    a.x.equals(b.x) &&
    a.y.equals(b.y);
  const repeated = stakes.findIndex(
    (stake, index) => index > 0 && isSame(stake, stakes[index - 1]),
  );
  if (repeated > 0) {
    const message = 'this stake is at the same point as the one before it';
    reader.fail('POINTS_COINCIDE', [...path, repeated], message);
  } else if (isSame(stakes[0], stakes.at(-1))) {
    reader.fail('POINTS_COINCIDE', path, 'the string begins and ends at the same point');
  }
}
