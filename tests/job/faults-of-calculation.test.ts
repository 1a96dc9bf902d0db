// Faults that only the calculation finds: each names a field of the job, never one of the calculation.
import { expect, test } from 'vitest';
import { pathText } from 'settline';
import { faultsOfFile } from '../job-edits.js';
import type { Loose } from '../loose-job.js';
import { slateWharfFile } from '../slate-wharf.js';

type Site = ReturnType<typeof slateWharfFile>;

const gradeOf = (job: Site, index: number): { kind: string; levels: Loose[] } =>
  job.pavements[index]?.['grade'] as { kind: string; levels: Loose[] };

test.each<[string, (job: Site) => void, string]>([
  [
    'a tree far from the dig',
    (job) => Object.assign((job['trees'] as Loose[])[0] ?? {}, { x: '100 km' }),
    'OUT_OF_RANGE trees[0]: more than 10 km from the dig',
  ],
  [
    'an outline in millimetres that are metres',
    (job) => {
      const unit = 'mm';
      const points = [
        [-60_000, 0],
        [-59_991, 0],
        [-59_991, 5],
        [-60_000, 5],
      ];
      Object.assign(job.pavements[1] ?? {}, { outline: { unit, points }, edges: undefined });
    },
    'OUT_OF_RANGE pavements[1].outline: the paving is smaller than 0.05 m2 (0.5 sq ft). Check the digits',
  ],
  [
    'a border deeper than half the paving',
    (job) => Object.assign(job.materials.pavers[0] ?? {}, { length: '9 ft' }),
    'BORDER_TOO_DEEP pavements[0].outline: at edge 1 (counted from 1) the paving has no room for a border this deep. Leave the border out there, or choose a shallower course',
  ],
  [
    'a border along an arc with a corner',
    (job) => {
      const outline = job.pavements[0]?.['outline'] as Loose;
      outline['arcs'] = [{ edge: 2, bulgeMiddleOrdinate: '2 ft' }];
    },
    'ARC_MEETS_CORNER pavements[0].outline: an arc meets the next edge at a corner where edge 2 (counted from 1) starts. A border needs a smooth join, so draw this arc as short straight edges',
  ],
  [
    'a plane through levels on one line',
    (job) => {
      gradeOf(job, 1).kind = 'plane';
      delete (gradeOf(job, 1) as unknown as Loose)['crossSlope'];
    },
    'POINTS_COLLINEAR pavements[1].grade.levels: the points',
  ],
  [
    'a level at the place of the one before',
    (job) => Object.assign(gradeOf(job, 1).levels[1] ?? {}, { x: '-28 ft' }),
    'POINTS_COINCIDE pavements[1].grade.levels[1]: this level is at the same point',
  ],
  [
    'a line of levels that turns back',
    (job) => Object.assign(gradeOf(job, 1).levels[0] ?? {}, { x: '-4 ft' }),
    'SELF_INTERSECTION pavements[1].grade.levels[1]: the line of levels turns straight back',
  ],
  [
    'rows of a level book without the distance that its rule counts by',
    (job) => Object.assign(job['levelBook'] as Loose, { rule: { k: '0.02 ft', per: '10 ft' } }),
    'REQUIRED levelBook.rows[1].distance: missing',
  ],
  [
    'a row after the end of a set-up',
    (job) => {
      const row = (job['levelBook'] as { rows: Loose[] }).rows[3];
      delete row?.['back'];
    },
    'BOOK_ROW levelBook.rows[4]: the foresight before it ended the set-up',
  ],
])('%s', (_name, change, fault) => {
  const job = slateWharfFile();
  change(job);
  const [first] = faultsOfFile(job);
  expect(`${first?.code} ${pathText(first?.path ?? [])}: ${first?.message}`).toContain(fault);
});
