import type { Loose, LooseJob } from '../loose-job.js';

/** Finished grade of the site for dangers: 2.5 % down along x, level across. */
export const finishOf = (x: number): number => 50 - 0.025 * x;

const stake = (id: string, x: number, y: number): Loose => ({
  id,
  x: `${x} m`,
  y: `${y} m`,
  finish: `${finishOf(x)} m`,
  ground: '300 mm',
});

const LAYERS = [
  { kind: 'paver', thickness: '80 mm', material: 'paver' },
  { kind: 'bedding', thickness: '25 mm', material: 'sand' },
  { kind: 'base', thickness: '200 mm', material: 'stone' },
];

const rectangle = (west: number, east: number, north: number) => ({
  unit: 'm',
  points: [
    [west, 0],
    [east, 0],
    [east, north],
    [west, north],
  ],
});

/**
 * A drive 8 m by 4 m that runs down from a building at x = 0 (edge 4), restraints on its other edges:
 * the dig is as large as the paving, and 305 mm deep below ground that lies at finished grade. Two
 * strings, 300 mm up, 0.6 m outside: A1 to A3 at y = -0.6, B1 to B3 at y = 4.6, at x = 0, 4 and 8.
 * Nothing is wrong with it. New for each caller.
 */
export const harmlessSite = (): LooseJob => ({
  version: 1,
  name: 'Twin Yard (an invented site)',
  stringHeight: '300 mm',
  stakeTolerance: '10 mm',
  materials: {
    stones: [
      {
        id: 'stone',
        maxLift: '100 mm',
        compactedDryDensity: '2100 kg/m3',
        compactedPerLoose: 0.8,
        moisture: 0.06,
      },
    ],
    sands: [{ id: 'sand', compactedDryDensity: '1700 kg/m3', compactedPerLoose: 0.8 }],
    pavers: [{ id: 'paver', length: '200 mm', width: '100 mm', joint: '3 mm' }],
  },
  stakes: [0, 4, 8].flatMap((x, k) => [stake(`A${k + 1}`, x, -0.6), stake(`B${k + 1}`, x, 4.6)]),
  pavements: [
    {
      id: 'drive',
      name: 'Drive',
      use: 'residential-driveway',
      subgrade: 'well-drained',
      layers: LAYERS.map((layer) => ({ ...layer })),
      outline: rectangle(0, 8, 4),
      edges: ['restraint', 'restraint', 'restraint', 'building'],
    },
  ],
  stringLines: [
    { id: 'a', pavement: 'drive', stakes: ['A1', 'A2', 'A3'] },
    { id: 'b', pavement: 'drive', stakes: ['B1', 'B2', 'B3'] },
  ],
  soil: { bankDensity: '1800 kg/m3', loosePerBank: 1.3, compactedPerBank: 0.9 },
  truck: { boxVolume: '8 m3', payload: '12 t' },
});

/** A walk of 2 m by 2 m, its edge 4 along x = `west`. */
export const walkFrom = (west: number, fields: Loose = {}): LooseJob['pavements'][number] => ({
  id: 'walk',
  name: 'Walk',
  use: 'pedestrian',
  subgrade: 'well-drained',
  layers: LAYERS.map((layer) => ({ ...layer })),
  outline: rectangle(west, west + 2, 2),
  edges: ['restraint', 'restraint', 'restraint', 'restraint'],
  ...fields,
});

/** The drive of the site. */
export function driveOf({ pavements: [drive] }: LooseJob): LooseJob['pavements'][number] {
  if (drive === undefined) throw new Error('no drive');
  return drive;
}

/** Changes stakes of the site. */
export function setStakes(job: LooseJob, ids: readonly string[], fields: Loose): void {
  for (const one of job.stakes) {
    if (ids.includes(String(one['id']))) Object.assign(one, fields);
  }
}

/** Takes a field from every stake of the site. */
export function clearStakes(job: LooseJob, field: string): void {
  for (const one of job.stakes) Reflect.deleteProperty(one, field);
}

/** Lays finished grade of the drive by fixed levels x, y and elevation in metres. */
export function layGrade(
  job: LooseJob,
  kind: 'line' | 'plane' | 'warped',
  levels: readonly (readonly [number, number, number])[],
): void {
  clearStakes(job, 'finish');
  driveOf(job)['grade'] = {
    kind,
    levels: levels.map(([x, y, z]) => ({ x: `${x} m`, y: `${y} m`, elevation: `${z} m` })),
  };
}

/** Spot heights at finished grade at these x, at y = -0.6, 2 and 4.6, with what is added there. */
export const spotsAt = (
  xs: readonly number[],
  added: (x: number, y: number) => number = () => 0,
) => ({
  unit: 'm',
  points: xs.flatMap((x) =>
    [-0.6, 2, 4.6].map((y) => [x, y, Number((finishOf(x) + added(x, y)).toFixed(6))]),
  ),
});
