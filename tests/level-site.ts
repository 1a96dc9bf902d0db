import type { Loose, LooseJob } from './loose-job.js';

type Points = readonly (readonly [x: number, y: number])[];

/** Layers of 400 mm: 80 of pavers, 20 of bedding and a base. */
export const layersOn = (base = '300 mm', stone = 'stone'): Loose[] => [
  { kind: 'paver', thickness: '80 mm' },
  { kind: 'bedding', thickness: '20 mm', material: 'sand' },
  { kind: 'base', thickness: base, material: stone },
];

/** A pavement of those layers, all its edges open unless the fields say otherwise. */
export const pavementOn = (points: Points, { id, ...fields }: Loose & { readonly id: string }) => ({
  id,
  use: 'pedestrian',
  subgrade: 'well-drained',
  layers: layersOn(),
  outline: { unit: 'm', points },
  edges: points.map(() => 'open'),
  ...fields,
});

/** The corners of a rectangle, from its south-west corner round by the east. */
export const rectangle = (west: number, south: number, east: number, north: number): Points => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];

/**
 * A site in metres for checks by pencil: the ground lies at finished grade all over, so digs are as
 * deep as their layers. Open edges have the base as far out as it is thick, and 200 mm to work in.
 */
export const levelSite = (
  pavements: readonly ReturnType<typeof pavementOn>[],
  fields: Loose = {},
): LooseJob => ({
  version: 1,
  name: 'Level Croft (an invented site)',
  stringHeight: '300 mm',
  stakeTolerance: '10 mm',
  workingRoom: '200 mm',
  materials: {
    stones: [
      { id: 'stone', maxLift: '100 mm', compactedDryDensity: '2.1 t/m3', compactedPerLoose: 0.8 },
    ],
    sands: [{ id: 'sand', compactedDryDensity: '1.7 t/m3', compactedPerLoose: 0.8 }],
    pavers: [{ id: 'block', length: '200 mm', width: '100 mm', joint: '3 mm' }],
  },
  stakes: [
    { id: 'S1', x: '-9 m', y: '-9 m' },
    { id: 'S2', x: '30 m', y: '-9 m' },
  ],
  pavements: [...pavements],
  stringLines: [{ id: 'south', pavement: pavements[0]?.id, stakes: ['S1', 'S2'] }],
  soil: { bankDensity: '1.8 t/m3', loosePerBank: 1.25, compactedPerBank: 0.9 },
  truck: { boxVolume: '8 m3', payload: '12 t' },
  ...fields,
});
