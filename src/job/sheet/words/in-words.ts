import { formatQuantity } from '../../../units/format-quantity.js';
import type { Slope } from '../../../units/quantity.js';

/** A printed measure in the marks of a sheet: `sq ft` for `ft2`. Internal. */
export const inWords = (text: string): string =>
  text
    .replace(/ ft2$/, ' sq ft')
    .replace(/ yd3$/, ' cu yd')
    .replace(/\/yd3$/, ' per cu yd')
    .replace(/ gal-us$/, ' gal')
    .replace(/ gal-us\/min$/, ' gal/min');

/** A share as printed on every sheet. Internal. */
export const percentText = (share: number): string => `${(share * 100).toFixed(1)}%`;

/** A share that is more than nothing, and reads so. Internal. */
export const someShare = (share: number): string =>
  share < 0.0005 ? 'under 0.1%' : percentText(share);

/** A slope as printed on every sheet. Internal. */
export const slopeText = (slope: Slope): string =>
  formatQuantity(slope, { as: 'percent', places: 1 });
