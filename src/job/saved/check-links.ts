import { shown } from '../../input/shown.js';
import type { FieldPath } from '../../errors.js';
import type { DigRing, JobPlan, PavementPlan } from '../plan/plan.js';
import { edgesIn } from './restored.js';
import type { Reading } from './reading.js';

/**
 * Checks that the parts of a saved plan belong together: pavements, strings and stakes are those of
 * its job, in order, and every id that a part names is there. Internal.
 */
export function checkLinks(plan: JobPlan, reading: Reading): void {
  const { job, pavements, stringLines } = plan;
  sameIds(reading, ['pavements'], pavements, job.pavements);
  sameIds(reading, ['stringLines'], stringLines, job.stringLines);
  if (stringLines.length === 0) reading.fail('a plan has a string or more', ['stringLines']);
  stringLines.forEach((line, index) => {
    const at = ['stringLines', index];
    const own = job.stringLines[index];
    known(reading, [...at, 'pavement'], line.pavement, own === undefined ? [] : [own.pavement]);
    const stakes = own?.stakes.map((id) => ({ id })) ?? [];
    sameIds(reading, [...at, 'stakes'], line.stakes, stakes);
    if (line.stakes.length < 2) reading.fail('a string has two stakes or more', [...at, 'stakes']);
    line.stakes.forEach(({ ground, ...stake }, k) => {
      for (const field of ['dig', 'soil'] as const) {
        if (ground === null || stake[field] !== null) continue;
        reading.fail('missing: the ground was measured there', [...at, 'stakes', k, field]);
      }
    });
  });
  pavements.forEach((pavement, index) => {
    const { buildUp, layerKinds, edges, lifts } = pavement;
    const outline = job.pavements[index]?.outline;
    const count = outline === undefined ? edges.length : edgesIn(outline);
    const wrong = [
      [
        'layerKinds',
        layerKinds.length === buildUp.layers.length,
        `${buildUp.layers.length} layers`,
      ],
      ['edges', edges.length === count, `an outline of ${count} edges`],
      ['buildUp', buildUp.layers.length > 2, 'pavers, bedding and base'],
      ['lifts', lifts.length > 0, 'a base'],
    ] as const;
    for (const [field, fits, of] of wrong) {
      if (!fits) reading.fail(`the list does not fit ${of}`, ['pavements', index, field]);
    }
    for (const [path, { length }] of cornersOf(pavement)) {
      if (length < 2)
        reading.fail('an outline has two corners or more', ['pavements', index, ...path]);
    }
  });
  checkSources(plan, reading);
  checkJobLinks(plan, reading);
  checkMaterials(plan, reading);
}

/** Corners of each ring of a dig, by its path. */
function cornersOf({ digOutline, digHoles, top }: PavementPlan): [FieldPath, readonly unknown[]][] {
  const holes = (all: readonly DigRing[], at: FieldPath): [FieldPath, readonly unknown[]][] =>
    all.map(({ points }, k) => [[...at, k, 'points'], points]);
  const rings = holes(digHoles, ['digHoles']);
  rings.push([['digOutline'], digOutline]);
  if (top !== null)
    rings.push([['top', 'points'], top.points], ...holes(top.holes, ['top', 'holes']));
  return rings;
}

/** A plan names the source of each published figure in its working. */
function checkSources({ sources, working }: JobPlan, reading: Reading): void {
  const named = new Set(sources.map(({ id }) => id));
  working.forEach(({ given }, step) => {
    given.forEach(({ source }, index) => {
      if (source === null || named.has(source)) return;
      const message = `the plan does not name the source ${shown(source)}`;
      reading.fail(message, ['working', step, 'given', index, 'source']);
    });
  });
}

function checkJobLinks({ job }: JobPlan, reading: Reading): void {
  const pavements = job.pavements.map(({ id }) => id);
  const stakes = new Set(job.stakes.map(({ id }) => id));
  unique(reading, ['job', 'pavements'], job.pavements);
  unique(reading, ['job', 'stringLines'], job.stringLines);
  unique(reading, ['job', 'stakes'], job.stakes);
  job.stringLines.forEach((line, index) => {
    const at = ['job', 'stringLines', index];
    known(reading, [...at, 'pavement'], line.pavement, pavements);
    line.stakes.forEach((id, place) => {
      if (!stakes.has(id)) unknownId(reading, [...at, 'stakes', place], id);
    });
  });
}

function checkMaterials({ job, pavements, totals }: JobPlan, reading: Reading): void {
  const idsOf = (list: readonly { readonly id: string }[] = []) => list.map(({ id }) => id);
  const { stones, sands, pavers } = job.materials;
  const kinds = { stones: idsOf(stones), sands: idsOf(sands), pavers: idsOf(pavers) };
  const loose = [...kinds.stones, ...kinds.sands];
  (['stones', 'sands'] as const).forEach((kind) => {
    totals[kind].forEach(({ material }, index) => {
      known(reading, ['totals', kind, index, 'material'], material, kinds[kind]);
    });
  });
  totals.pavers.forEach(({ paver }, index) => {
    known(reading, ['totals', 'pavers', index, 'paver'], paver, kinds.pavers);
  });
  pavements.forEach((pavement, index) => {
    pavement.stones.forEach(({ material }, place) => {
      known(reading, ['pavements', index, 'stones', place, 'material'], material, loose);
    });
    known(reading, ['pavements', index, 'bedding', 'material'], pavement.bedding.material, loose);
  });
}

interface WithId {
  readonly id: string;
}

function sameIds(
  reading: Reading,
  path: FieldPath,
  own: readonly WithId[],
  ofJob: readonly WithId[],
): void {
  if (own.length !== ofJob.length) {
    reading.fail(`${own.length} entries, and the job of the plan has ${ofJob.length}`, path);
    return;
  }
  own.forEach(({ id }, index) => {
    if (ofJob[index]?.id !== id) unknownId(reading, [...path, index, 'id'], id);
  });
}

function unique(reading: Reading, path: FieldPath, list: readonly WithId[]): void {
  const seen = new Set<string>();
  list.forEach(({ id }, index) => {
    if (seen.has(id)) reading.fail(`${shown(id)} is used twice`, [...path, index, 'id']);
    seen.add(id);
  });
}

function known(reading: Reading, path: FieldPath, id: string, ids: readonly string[]): void {
  if (!ids.includes(id)) unknownId(reading, path, id);
}

const unknownId = (reading: Reading, path: FieldPath, id: string): void =>
  reading.fail(`the job of the plan has no ${shown(id)} here`, path);
