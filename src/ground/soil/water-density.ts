import { density } from '../../units/construct.js';

/** Density of water that soil holds, by common practice. Internal. */
export const WATER = density(1000, 'kg/m3');
