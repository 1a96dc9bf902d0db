import type { Length } from '../../../units/quantity.js';
import type { SheetLengths } from '../layout/lengths-of-sheet.js';
import type { SheetTape } from '../layout/tape-of-sheet.js';

/** The sag of a string as printed: `3/16`, or `under 1/16` where it is less than the tape shows. Internal. */
export function sagText(sag: Length, units: SheetLengths & Pick<SheetTape, 'tapeStep'>): string {
  const text = units.depth(sag);
  if (text !== '0' || sag.isZero()) return text;
  return `under ${units.tapeStep.replace(` ${units.depthUnit}`, '')}`;
}
