import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { isLeftOut } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type { Length } from '../../units/quantity.js';
import type { ReadJob } from '../schema/job-shape.js';
import { heightOf } from '../schema/string-height.js';
import type { PartJob } from './part-job.js';
import { requireId } from './unknown-id.js';
import { areFarApart, farApart } from './far-apart.js';
import type { Partly } from './partly.js';

type PartString = Partly<ReadJob['stringLines'][number]>;
type PartStake = Partly<ReadJob['stakes'][number]>;

/** Checks that strings name a pavement and stakes of the job, and that their stakes are apart. Internal. */
export function checkStrings(reader: Reader, job: PartJob): void {
  const strings = job.stringLines ?? [];
  const stakes = new Map(job.stakes?.map((stake) => [stake?.id, stake] as const));
  strings.forEach((line, index) => {
    if (line === undefined) return;
    const path = ['stringLines', index];
    checkPavement(reader, line, { job, path: [...path, 'pavement'] });
    if (job.stakes === undefined) return;
    checkNames(reader, line, { job, stakes, path: [...path, 'stakes'] });
    const own = (line.stakes ?? []).map((id) => stakes.get(id));
    checkPlaces(reader, own, [...path, 'stakes']);
    checkReach(reader, own, [...path, 'stakes']);
  });
  checkGrounds(reader, job);
}

/** Checks that a string names each of its stakes once, and only stakes of the job. */
function checkNames(
  reader: Reader,
  { stakes: names = [] }: PartString,
  {
    job,
    stakes,
    path,
  }: {
    readonly job: PartJob;
    readonly stakes: ReadonlyMap<string | undefined, PartStake | undefined>;
    readonly path: FieldPath;
  },
): void {
  const first = new Map<string, number>();
  names.forEach((id, index) => {
    if (id === undefined) return;
    const earlier = first.get(id);
    if (earlier !== undefined) {
      const message = `${shown(id)} is already stake ${earlier + 1} of this string`;
      reader.fail('DUPLICATE_ID', [...path, index], message, { id, earlier });
    } else first.set(id, index);
    if (stakes.has(id) || stakes.has(undefined)) return;
    requireId(reader, [...path, index], { what: 'stake', id, ids: idsOf(job.stakes) });
  });
}

const idsOf = (
  entries: readonly ({ readonly id?: string | undefined } | undefined)[] = [],
): readonly (string | undefined)[] => entries.map((one) => one?.id);

function checkPavement(
  reader: Reader,
  { pavement }: PartString,
  { job, path }: { readonly job: PartJob; readonly path: FieldPath },
): void {
  if (pavement === undefined || job.pavements === undefined) return;
  const ids = idsOf(job.pavements);
  if (ids.length > 0) requireId(reader, path, { what: 'pavement', id: pavement, ids });
}

/** Checks distances: a stake far from its neighbours is one fault, not one for each stake after it. */
function checkReach(
  reader: Reader,
  stakes: readonly (PartStake | undefined)[],
  path: FieldPath,
): void {
  const far = stakes.findIndex((stake, k) => k > 0 && areFarApart(stakes[k - 1], stake));
  if (far > 0) reader.fail('OUT_OF_RANGE', [...path, far], farApart('stake'));
}

function checkPlaces(
  reader: Reader,
  stakes: readonly (PartStake | undefined)[],
  path: FieldPath,
): void {
  if (stakes.length < 2) return;
  const isSame = (a: PartStake | undefined, b: PartStake | undefined): boolean =>
    a?.x !== undefined &&
    b?.x !== undefined &&
    a.y !== undefined &&
    b.y !== undefined &&
    a.id !== b.id &&
    a.x.equals(b.x) &&
    a.y.equals(b.y);
  const repeated = stakes.findIndex(
    (stake, index) => index > 0 && isSame(stake, stakes[index - 1]),
  );
  if (repeated > 0) {
    const message =
      'this stake is at the same point as the one before it. Check the coordinates of both';
    reader.fail('POINTS_COINCIDE', [...path, repeated], message);
  } else if (isSame(stakes[0], stakes.at(-1))) {
    reader.fail(
      'POINTS_COINCIDE',
      path,
      'the string starts and ends at the same point. Leave out the last stake',
    );
  }
}

/** Checks that a reading of the ground is measured from exactly one string. */
function checkGrounds(reader: Reader, job: PartJob): void {
  const { stakes = [], stringLines } = job;
  if (stringLines === undefined || stringLines.includes(undefined)) return;
  const heights = new Map<string, Map<string, Length>>();
  for (const line of stringLines) {
    const height = line === undefined ? undefined : heightOf(job, line);
    if (line?.id === undefined || line.stakes === undefined || height === undefined) return;
    for (const stake of line.stakes) {
      if (stake === undefined) continue;
      const own = heights.get(stake) ?? new Map<string, Length>();
      heights.set(stake, own.set(line.id, height));
    }
  }
  stakes.forEach((stake, index) => {
    if (stake?.id !== undefined) {
      checkGround(reader, stake, { own: heights.get(stake.id), path: ['stakes', index] });
    }
  });
}

function checkGround(
  reader: Reader,
  stake: PartStake,
  {
    own = new Map(),
    path,
  }: { readonly own?: ReadonlyMap<string, Length> | undefined; readonly path: FieldPath },
): void {
  const { ground, groundFrom } = stake;
  for (const name of ['groundFrom', 'groundOn'] as const) {
    if (stake[name] === undefined || !isLeftOut(stake, 'ground')) continue;
    reader.fail('REQUIRED', [...path, 'ground'], `missing. Give the reading, or leave out ${name}`);
  }
  if (stake.finishAt !== undefined && isLeftOut(stake, 'finish')) {
    reader.fail('REQUIRED', [...path, 'finish'], 'missing. Give the level, or leave out finishAt');
  }
  if (groundFrom !== undefined) {
    const named = { what: 'string of this stake', id: groundFrom, ids: [...own.keys()] };
    requireId(reader, [...path, 'groundFrom'], named);
    return;
  }
  if (ground === undefined || !isLeftOut(stake, 'groundFrom')) return;
  const [first, ...rest] = [...own.values()];
  if (first === undefined || rest.every((height) => height.equals(first))) return;
  const ids = [...own.keys()].join(', ');
  const message = `missing. The stake serves strings of different heights. Name the one that ground was measured from: ${ids}`;
  reader.fail('REQUIRED', [...path, 'groundFrom'], message);
}
