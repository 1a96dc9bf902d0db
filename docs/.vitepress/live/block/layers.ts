import { buildUp, type BuildUp, type BuildUpOptions } from 'settline/build-up';
import type { Json } from '../page/json-text.js';
import { entry, type RowsField } from './block.js';

/** The layers of the ready numbers: 12 1/4 in. */
export const LAYERS: readonly Json[] = [
  { name: 'paver', thickness: '3 1/4 in' },
  { name: 'bedding', thickness: '1 in' },
  { name: 'base', thickness: '8 in' },
];

/** The form of a list of layers. */
export const layersField: RowsField = {
  kind: 'rows',
  path: ['layers'],
  label: 'Layers, from the top down',
  one: 'layer',
  columns: [
    entry('name', 'name'),
    entry('thickness', 'compacted thickness', { hint: 'such as 8 in or 200 mm' }),
  ],
  fresh: (index) => ({ name: `layer ${index + 1}`, thickness: '4 in' }),
};

/** The layers as the library reads them. */
export const layersOf = (layers: unknown): BuildUp =>
  buildUp({ layers } as unknown as BuildUpOptions);

/** Layers that are sound, for faults of other fields. */
export const standInLayers = (): BuildUp => layersOf(LAYERS);
