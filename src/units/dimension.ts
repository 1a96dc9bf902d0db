import type { Dimension } from './catalogue.js';

/** Which kind of quantity a product is: `PRODUCTS.area.length` is a volume. */
export const PRODUCTS = Object.freeze({
  length: { length: 'area', area: 'volume', slope: 'length', 'line-weight': 'force' },
  area: { length: 'volume', pressure: 'force' },
  volume: { density: 'mass' },
  mass: {},
  density: { volume: 'mass' },
  force: {},
  'line-weight': { length: 'force' },
  pressure: { area: 'force' },
  slope: { length: 'length' },
  angle: {},
  time: { speed: 'length', flow: 'volume' },
  speed: { time: 'length' },
  flow: { time: 'volume' },
} as const satisfies Record<Dimension, Partial<Record<Dimension, Dimension>>>);

/** Which kind of quantity a quotient is: `QUOTIENTS.volume.area` is a length. */
export const QUOTIENTS = Object.freeze({
  length: { slope: 'length', time: 'speed', speed: 'time' },
  area: { length: 'length' },
  volume: { length: 'area', area: 'length', time: 'flow', flow: 'time' },
  mass: { volume: 'density', density: 'volume' },
  density: {},
  force: { area: 'pressure', pressure: 'area', length: 'line-weight', 'line-weight': 'length' },
  'line-weight': {},
  pressure: {},
  slope: {},
  angle: {},
  time: {},
  speed: {},
  flow: {},
} as const satisfies Record<Dimension, Partial<Record<Dimension, Dimension>>>);

type Table = typeof PRODUCTS | typeof QUOTIENTS;

/** The kinds of quantity that D has a product with. */
export type Factor<D extends Dimension> = keyof (typeof PRODUCTS)[D] & Dimension;

/** The kind of quantity of a product. */
export type Product<D extends Dimension, E extends Factor<D>> = Entry<typeof PRODUCTS, D, E>;

/** The kinds of quantity that D can be divided by, besides its own. */
export type Divisor<D extends Dimension> = keyof (typeof QUOTIENTS)[D] & Dimension;

/** The kind of quantity of a quotient. */
export type Quotient<D extends Dimension, E extends Divisor<D>> = Entry<typeof QUOTIENTS, D, E>;

type Entry<T extends Table, D extends Dimension, E> = E extends keyof T[D]
  ? Extract<T[D][E], Dimension>
  : never;

/** Looks up a product or quotient at run time. */
export function combined(table: Table, first: Dimension, second: Dimension): Dimension | undefined {
  const row: Partial<Record<Dimension, Dimension>> = table[first];
  return row[second];
}
