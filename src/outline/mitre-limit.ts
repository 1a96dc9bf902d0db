/**
 * A mitre that reaches further than this many widths from the old corner is named in the result:
 * corners sharper than 11.5 degrees do. Where edges that run on almost straight move by different
 * distances, a step is put in instead of so long a wedge. A rule of this library, not of the trade.
 */
export const MITRE_LIMIT = 10;
