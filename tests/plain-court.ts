import { readJob, type JobInput } from 'settline/job';
import { cedarCourtFile } from './cedar-court.js';
import type { LooseJob } from './loose-job.js';

/** Finished grade at the strings of the plain court, in feet: 2 % down along x, level across. */
export const plainFinish = (x: number) => 99.9 - 0.02 * x;

const stakes = (letter: string, y: number, grounds: readonly string[]) =>
  grounds.map((ground, k) => ({
    id: `${letter}${k + 1}`,
    x: `${12 * k} ft`,
    y: `${y} ft`,
    finish: `${plainFinish(12 * k).toFixed(2)} ft`,
    ground,
  }));

/**
 * The built-in site with a plain court, for checks by pencil: 36 ft by 14 ft against a building at
 * x = 0, 12 1/4 in of layers, the dig 12 in outside the paving: x from 0 to 37, y from -1 to 15. The
 * strings are 18 in up, the grounds 18 in below them in the plain mean; nothing to strip.
 */
export const plainCourtJob = (): JobInput => readJob(plainCourtFile());

/** Its file; new for each caller. */
export function plainCourtFile(): LooseJob {
  const job = cedarCourtFile();
  const [court, terrace] = job.pavements;
  const [, , garden] = job.stringLines;
  if (court === undefined || terrace === undefined || garden === undefined) throw new Error('gone');
  delete job['oldPaving'];
  const plain: typeof court = {
    ...court,
    layers: [
      { kind: 'paver', thickness: '3 1/4 in', material: 'paver' },
      { kind: 'bedding', thickness: '1 in', material: 'sand' },
      { kind: 'base', thickness: '8 in', material: 'stone' },
    ],
    outline: {
      unit: 'ft',
      points: [
        [0, 0],
        [36, 0],
        [36, 14],
        [0, 14],
      ],
    },
    edges: ['open', 'open', 'open', 'building'],
  };
  delete plain['crossSlope'];
  return {
    ...job,
    edgeRestraintWidth: '4 in',
    workingRoom: '0 in',
    stakes: [
      ...stakes('K', -2, ['17 1/2 in', '18 in', '18 1/4 in', '17 3/4 in']),
      ...stakes('F', 16, ['17 3/4 in', '18 1/2 in', '18 1/4 in', '18 in']),
      ...job.stakes.filter(({ id }) => garden.stakes.includes(id)),
    ],
    pavements: [plain, terrace],
    stringLines: [
      { id: 'kerb', pavement: 'court', stakes: ['K1', 'K2', 'K3', 'K4'] },
      { id: 'fence', pavement: 'court', stakes: ['F1', 'F2', 'F3', 'F4'] },
      garden,
    ],
  };
}

/** The plain court alone, without the terrace. */
export function plainCourtAlone(): LooseJob {
  const job = plainCourtFile();
  job.pavements.splice(1);
  job.stringLines.splice(2);
  job.stakes.splice(8);
  return job;
}
