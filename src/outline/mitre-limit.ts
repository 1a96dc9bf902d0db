/**
 * How far a mitred corner may reach from the old corner, in widths of the larger of its two
 * distances. Sharper corners (below 11.5 degrees for equal distances) are cut off square there; where
 * edges that run on almost straight move by different distances, a step is put in instead. A rule of
 * this library, not of the trade.
 */
export const MITRE_LIMIT = 10;
